"""Every note of a chart against its chord and key; every chord against the key."""

from fractions import Fraction

from sitegen.analysis.reading import ChordReading, NoteReading
from sitegen.harmony import degree, key_degree, role, roman_line, root_motion
from sitegen.score.chart import Bar, Chart, ChordEvent, Event, Part
from sitegen.score.chord import Chord, NoChord
from sitegen.score.ids import ids_at, note_id


def name_notes(chart: Chart) -> tuple[NoteReading, ...]:
    """Return a reading of every sounding note: part by part, each part in order of time.

    A note is named against the chord that sounds when it starts.
    """
    return tuple(reading for part in chart.parts for reading in _name_part(chart, part))


def name_chords(chart: Chart) -> tuple[ChordReading, ...]:
    """Return a reading of every chord; roots are compared across N.C., which has none.

    Numerals are those of the chart's progression, each chord read with the next in view.
    """
    chords = [event.chord for event in chart.chords]
    numerals = roman_line(chords, chart.key) if chart.key else ("",) * len(chords)
    readings = []
    before: Chord | None = None
    for event, numeral in zip(chart.chords, numerals, strict=True):
        readings.append(_name_chord(chart, event, numeral, before))
        if isinstance(event.chord, Chord):
            before = event.chord
    return tuple(readings)


def _name_chord(
    chart: Chart, event: ChordEvent, numeral: str, before: Chord | None
) -> ChordReading:
    bar, beat = chart.beat_of(event.onset)
    chord = event.chord
    motion = root_motion(before, chord) if before and isinstance(chord, Chord) else ""
    return ChordReading(
        bar.number, beat, event.onset, event.duration, chord, roman=numeral, root_motion=motion
    )


def _name_part(chart: Chart, part: Part) -> list[NoteReading]:
    readings = []
    for number, voice in enumerate(part.voices):
        places = [chart.beat_of(event.onset) for event in voice]
        ids = ids_at(part, number, places)
        for event, place, name in zip(voice, places, ids, strict=True):
            readings += _name_event(chart, (part.name, number), event, place, name)
    return sorted(readings, key=lambda reading: reading.onset)


def _name_event(
    chart: Chart, voice: tuple[str, int], event: Event, place: tuple[Bar, Fraction], name: str
) -> list[NoteReading]:
    bar, beat = place
    where = (*voice, bar.number, beat, event.onset, event.duration)
    chord = chart.chord_at(event.onset) or NoChord()
    return [
        NoteReading(*where, note, id=note_id(name, event, index))
        if note.pitch is None
        else NoteReading(
            *where,
            note,
            degree=degree(note.pitch, chord),
            key_degree=key_degree(note.pitch, chart.key) if chart.key else "",
            role=role(note.pitch, chord),
            id=note_id(name, event, index),
        )
        for index, note in enumerate(event.notes)
    ]
