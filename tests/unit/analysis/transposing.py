"""A chart moved by an interval: every pitch, chord and the key; all else as it was."""

from dataclasses import replace

from msgspec import structs

from sitegen.score.chart import Chart, ChordEvent, Event, Note, Part
from sitegen.score.chord import Chord, NoChord
from sitegen.score.interval import Interval
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch


def transpose_chart(chart: Chart, interval: Interval) -> Chart:
    """Return the chart with its pitches, fingered ones too, chords and key an interval higher.

    Drums, strings and frets stay; frets no longer give the pitches of a fretted part.
    """
    return replace(
        chart,
        key=Key(interval.above_name(chart.key.tonic), chart.key.mode) if chart.key else None,
        parts=tuple(_part(part, interval) for part in chart.parts),
        chords=tuple(_chord_event(event, interval) for event in chart.chords),
    )


def _part(part: Part, interval: Interval) -> Part:
    voices = tuple(tuple(_event(e, interval) for e in voice) for voice in part.voices)
    return replace(part, voices=voices)


def _event(event: Event, interval: Interval) -> Event:
    return replace(event, notes=tuple(_note(note, interval) for note in event.notes))


def _note(note: Note, interval: Interval) -> Note:
    return replace(
        note, pitch=_pitch(note.pitch, interval), fingered=_pitch(note.fingered, interval)
    )


def _pitch(pitch: Pitch | None, interval: Interval) -> Pitch | None:
    return None if pitch is None else interval.above(pitch)


def _chord_event(event: ChordEvent, interval: Interval) -> ChordEvent:
    return structs.replace(event, chord=transpose_chord(event.chord, interval))


def transpose_chord(chord: Chord | NoChord, interval: Interval) -> Chord | NoChord:
    """Return the chord an interval higher; N.C. stays what it is."""
    if isinstance(chord, NoChord):
        return chord
    return replace(
        chord,
        root=interval.above_name(chord.root),
        bass=interval.above_name(chord.bass),
        members=tuple(interval.above_name(name) for name in chord.members),
        written="",
    )
