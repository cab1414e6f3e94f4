"""Every note of a chart against its chord and key; every chord against the key."""

from sitegen.analysis.reading import ChordReading, NoteReading
from sitegen.harmony import degree, key_degree, role, roman, root_motion
from sitegen.score.chart import Chart, ChordEvent, Event, Note, Part
from sitegen.score.chord import Chord, NoChord
from sitegen.score.interval import Interval
from sitegen.score.pitch import Pitch


def name_notes(chart: Chart) -> tuple[NoteReading, ...]:
    """Return a reading of every sounding note: part by part, each part in order of time.

    A note is named against the chord that sounds when it starts.
    """
    return tuple(reading for part in chart.parts for reading in _name_part(chart, part))


def name_chords(chart: Chart) -> tuple[ChordReading, ...]:
    """Return a reading of every chord; roots are compared across N.C., which has none."""
    readings = []
    before: Chord | None = None
    for event in chart.chords:
        readings.append(_name_chord(chart, event, before))
        if isinstance(event.chord, Chord):
            before = event.chord
    return tuple(readings)


def _name_chord(chart: Chart, event: ChordEvent, before: Chord | None) -> ChordReading:
    bar, beat = chart.beat_of(event.onset)
    chord = event.chord
    numeral = motion = ""
    if isinstance(chord, Chord):
        numeral = roman(chord, chart.key) if chart.key else ""
        motion = root_motion(before, chord) if before else ""
    return ChordReading(
        bar.number, beat, event.onset, event.duration, chord, roman=numeral, root_motion=motion
    )


def _name_part(chart: Chart, part: Part) -> list[NoteReading]:
    readings: list[NoteReading] = []
    top: Pitch | None = None
    for index, voice in enumerate(part.voices):
        for event in voice:
            readings.extend(_name_note(chart, part, index, event, n, top) for n in event.notes)
            pitches = [note.pitch for note in event.notes if note.pitch is not None]
            top = pitches[-1] if pitches else top
    readings.sort(key=lambda reading: reading.onset)
    return readings


def _name_note(
    chart: Chart, part: Part, voice: int, event: Event, note: Note, before: Pitch | None
) -> NoteReading:
    bar, beat = chart.beat_of(event.onset)
    chord = chart.chord_at(event.onset)
    against = chord if isinstance(chord, Chord) and note.pitch is not None else NoChord()
    names = {"degrees": "", "key degrees": "", "intervals": "", "none": ""}
    if note.pitch is not None:
        names["degrees"] = degree(note.pitch, against)
        names["key degrees"] = key_degree(note.pitch, chart.key) if chart.key else ""
        names["intervals"] = _step(before, note.pitch) if before is not None else ""
    return NoteReading(
        part=part.name,
        voice=voice,
        bar=bar.number,
        beat=beat,
        onset=event.onset,
        duration=event.duration,
        note=note,
        degree=names["degrees"],
        key_degree=names["key degrees"],
        interval=names["intervals"],
        label=names[chart.label],
        role=role(note.pitch, against) if note.pitch is not None else None,
    )


def _step(before: Pitch, after: Pitch) -> str:
    """Return the melodic interval with its direction: +M2, -m3, P1."""
    name = Interval.between(before, after).name
    if name.startswith("-") or before == after:
        return name
    return f"+{name}"
