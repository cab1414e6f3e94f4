"""Every note of a chart against its chord and key; every chord against the key."""

from dataclasses import replace

from sitegen.analysis.reading import ChordReading, NoteReading
from sitegen.harmony import degree, key_degree, role, roman, root_motion
from sitegen.score.chart import Chart, ChordEvent, Event, Note, Part
from sitegen.score.chord import Chord, NoChord


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
    readings = [
        _name_note(chart, part, index, event, note)
        for index, voice in enumerate(part.voices)
        for event in voice
        for note in event.notes
    ]
    return sorted(readings, key=lambda reading: reading.onset)


def _name_note(chart: Chart, part: Part, voice: int, event: Event, note: Note) -> NoteReading:
    bar, beat = chart.beat_of(event.onset)
    reading = NoteReading(part.name, voice, bar.number, beat, event.onset, event.duration, note)
    if note.pitch is None:
        return reading
    chord = chart.chord_at(event.onset) or NoChord()
    return replace(
        reading,
        degree=degree(note.pitch, chord),
        key_degree=key_degree(note.pitch, chart.key) if chart.key else "",
        role=role(note.pitch, chord),
    )
