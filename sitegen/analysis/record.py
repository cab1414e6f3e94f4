"""A chart's findings in the public form of `sitegen explain --json`, version 1."""

from sitegen.analysis.reading import ChartReading, ChordReading, NoteReading
from sitegen.score.chart import beat_text


def chart_record(reading: ChartReading) -> dict[str, object]:
    """Return the entry of a chart of notes or chords, its facts left out.

    Beats are text ("2", "2 1/2"), durations exact text in quarter notes ("1/2"), names carry
    ♭ ♯; `bars` counts the bars without a pickup, which is bar 0. Drum hits have no pitch: their
    `drum` names them and `midi` is the General MIDI number.
    """
    chart = reading.chart
    return {
        "id": chart.id,
        "kind": chart.kind,
        "title": chart.title,
        "key": None if chart.key is None else str(chart.key),
        "meter": str(chart.bars[0].meter),
        "bars": chart.bar_count,
        "chords": [_chord(chord) for chord in reading.chords],
        "notes": [_note(note) for note in reading.notes],
    }


def _chord(reading: ChordReading) -> dict[str, object]:
    chord = reading.chord
    return {
        "bar": reading.bar,
        "beat": beat_text(reading.beat),
        "symbol": str(chord),
        "root": None if chord.root is None else str(chord.root),
        "bass": None if chord.bass is None else str(chord.bass),
        "pitch_classes": list(chord.pitch_classes),
        "roman": reading.roman or None,
        "root_motion": reading.root_motion or None,
        "duration": str(reading.duration),
    }


def _note(reading: NoteReading) -> dict[str, object]:
    note = reading.note
    return {
        "id": reading.id,
        "part": reading.part,
        "bar": reading.bar,
        "beat": beat_text(reading.beat),
        "pitch": None if note.pitch is None else str(note.pitch),
        "midi": note.midi,
        "fingered": None if note.fingered is None else str(note.fingered),
        "degree": reading.degree or None,
        "key_degree": reading.key_degree or None,
        "role": None if reading.role is None else reading.role.value,
        "embellishment": reading.embellishment or None,
        "duration": str(reading.duration),
        "string": note.string,
        "fret": note.fret,
        "drum": None if note.drum is None else note.drum.name,
    }
