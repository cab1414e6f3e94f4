"""Every note of a chart against its chord and key; every chord against the key."""

from collections.abc import Callable

from sitegen.analysis.reading import ChordReading, NoteReading
from sitegen.harmony import degree, key_degree, role, roman_line, root_motion
from sitegen.score.chart import Chart, ChordEvent, Part
from sitegen.score.chord import Chord, NoChord
from sitegen.score.ids import ids_at, note_id
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch
from sitegen.score.role import Role

_Named = tuple[str, str, Role | None]
_UNNAMED: _Named = ("", "", None)
_NO_CHORD = NoChord()


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
    name_pitch = _namer(chart.key)
    for number, voice in enumerate(part.voices):
        places = [chart.beat_of(event.onset) for event in voice]
        ids = ids_at(part, number, places)
        for event, (bar, beat), name in zip(voice, places, ids, strict=True):
            where = (part.name, number, bar.number, beat, event.onset, event.duration)
            chord = chart.chord_at(event.onset) or _NO_CHORD
            for index, note in enumerate(event.notes):
                named = _UNNAMED if note.pitch is None else name_pitch(note.pitch, chord)
                readings.append(NoteReading(*where, note, *named, note_id(name, event, index)))
    return sorted(readings, key=lambda reading: reading.onset)


def _namer(key: Key | None) -> Callable[[Pitch, Chord | NoChord], _Named]:
    """Return what names pitches over chords in a key, each pitch over a chord but once.

    Chords are told apart by identity, which costs less than comparing their members.
    """
    named: dict[tuple[Pitch, int], _Named] = {}

    def name(pitch: Pitch, chord: Chord | NoChord) -> _Named:
        known = named.get((pitch, id(chord)))
        if known is None:
            in_key = key_degree(pitch, key) if key else ""
            known = degree(pitch, chord), in_key, role(pitch, chord)
            named[pitch, id(chord)] = known
        return known

    return name
