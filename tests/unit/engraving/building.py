"""Builders that make charts from short lines of text."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any

from sitegen.analysis.reading import ChartReading, ChordReading, NoteReading
from sitegen.score.chart import Bar, Chart, ChordEvent, Event, Note, Part, Syllable
from sitegen.score.chord import Chord
from sitegen.score.drums import KIT
from sitegen.score.ids import event_ids, note_id
from sitegen.score.instrument import STANDARD, TUNINGS, Fretted, Instrument
from sitegen.score.meter import Meter
from sitegen.score.pitch import Pitch, PitchName
from sitegen.score.role import Role
from sitegen.source import Span

SPAN = Span(1, 1, 1, 2)


def bars(meter: str, count: int, pickup: Fraction = Fraction(0)) -> tuple[Bar, ...]:
    """Return `count` full bars after a pickup of so many quarter notes."""
    read = Meter.read(meter)
    made: list[Bar] = []
    start = Fraction(0)
    if pickup:
        made.append(Bar(0, read, start, pickup, SPAN, skipped=read.length - pickup))
        start += pickup
    for number in range(1, count + 1):
        made.append(Bar(number, read, start, read.length, SPAN))
        start += read.length
    return tuple(made)


def melody(text: str) -> tuple[Event, ...]:
    """Return events from `F5:3/2 Ab5:1 r:2 C4,E4:1`, pitches and lengths in quarter notes."""
    events: list[Event] = []
    onset = Fraction(0)
    for item in text.split():
        names, length = item.split(":")
        pitches = [] if names == "r" else [Pitch.read(name) for name in names.split(",")]
        notes = tuple(Note(SPAN, pitch=pitch, fingered=pitch) for pitch in pitches)
        events.append(Event(onset, Fraction(length), notes, SPAN))
        onset += Fraction(length)
    return tuple(events)


def sung(events: tuple[Event, ...], words: str, verse: int = 1) -> tuple[Event, ...]:
    """Return events with words dealt out to their notes: `wa-` joins, `_` holds."""
    waiting = words.split()
    done: list[Event] = []
    for event in events:
        if event.notes and waiting:
            word = waiting.pop(0)
            held = word == "_"
            syllable = Syllable(
                "" if held else word.rstrip("-"), verse, SPAN, word.endswith("-"), held
            )
            event = replace(event, syllables=(*event.syllables, syllable))  # noqa: PLW2901
        done.append(event)
    return tuple(done)


def tab(fretted: Fretted, text: str, **changes: dict[str, Any]) -> tuple[Event, ...]:
    """Return events from `4.2,5.2:1/2 r:1 6.x:1`: string and fret, and a length in quarters.

    `changes` sets fields of the first note of an event: `n3={"joins": "slide"}`.
    """
    events: list[Event] = []
    onset = Fraction(0)
    for number, item in enumerate(text.split()):
        names, length = item.split(":")
        notes = tuple(_stopped(fretted, name) for name in names.split(",")) if names != "r" else ()
        if f"n{number}" in changes:
            notes = (replace(notes[0], **changes[f"n{number}"]), *notes[1:])
        events.append(Event(onset, Fraction(length), notes, SPAN))
        onset += Fraction(length)
    return tuple(events)


_SHARPS = ("C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B")


def _stopped(fretted: Fretted, text: str) -> Note:
    string, fret = text.split(".")
    if fret == "x":
        return Note(SPAN, string=int(string), dead=True)
    midi = fretted.sounding(int(string), int(fret))
    pitch = Pitch.of(PitchName.read(_SHARPS[midi % 12]), midi)
    return Note(SPAN, pitch=pitch, fingered=pitch, string=int(string), fret=int(fret))


def struck(text: str) -> tuple[Event, ...]:
    """Return drum events from `HH,SD!:1/2 r:1`.

    After a label: `!` accent, `(` ghost, `o` open, `f` flam, `z` roll.
    """
    events: list[Event] = []
    onset = Fraction(0)
    for item in text.split():
        names, length = item.split(":")
        notes = tuple(
            Note(
                SPAN,
                drum=KIT[name[:2]],
                accent="!" in name,
                ghost="(" in name,
                opened="o" in name[2:],
                flam="f" in name[2:],
                roll="z" in name[2:],
            )
            for name in names.split(",")
            if name != "r"
        )
        events.append(Event(onset, Fraction(length), notes, SPAN))
        onset += Fraction(length)
    return tuple(events)


def changes(*items: str) -> tuple[ChordEvent, ...]:
    """Return chord events one after the other from `4 Eb sus2` or `2 G - B`.

    A length in quarters, the root, the quality (`-` for none), perhaps a bass.
    """
    events: list[ChordEvent] = []
    onset = Fraction(0)
    for item in items:
        length, root, quality, *bass = item.split()
        name = PitchName.read(root)
        foot = PitchName.read(bass[0]) if bass else name
        symbol = Chord(name, quality.removeprefix("-"), (), (), foot)
        events.append(ChordEvent(onset, Fraction(length), symbol, SPAN))
        onset += Fraction(length)
    return tuple(events)


def reading(
    chart: Chart, degrees: Sequence[tuple[str, Role | None]] = (), roman: Sequence[str] = ()
) -> ChartReading:
    """Return a reading with these degrees for the notes of the first part, and numerals."""
    first = chart.parts[0] if chart.parts else None
    sounding = [
        (event, note, note_id(name, event, index))
        for event, name in (_events(chart, first) if first else ())
        for index, note in enumerate(event.notes)
        if note.pitch
    ]
    notes = tuple(
        NoteReading(
            part=first.name if first else "",
            voice=1,
            bar=chart.bar_at(event.onset).number,
            beat=chart.beat_of(event.onset)[1],
            onset=event.onset,
            duration=event.duration,
            note=note,
            degree=degree,
            role=role,
            id=identity,
        )
        for (event, note, identity), (degree, role) in zip(sounding, degrees, strict=False)
    )
    chords = tuple(
        ChordReading(
            bar=chart.bar_at(event.onset).number,
            beat=chart.beat_of(event.onset)[1],
            onset=event.onset,
            duration=event.duration,
            chord=event.chord,
            roman=numeral,
        )
        for event, numeral in zip(chart.chords, roman, strict=False)
    )
    return ChartReading(chart, notes, chords)


def _events(chart: Chart, part: Part) -> list[tuple[Event, str]]:
    """Return the events of a part by onset with their ids."""
    named = (
        pair
        for number, voice in enumerate(part.voices)
        for pair in zip(voice, event_ids(chart, part, number), strict=True)
    )
    return sorted(named, key=lambda pair: pair[0].onset)


GUITAR = Fretted(STANDARD["guitar", 6], STANDARD["guitar", 6])
LOW_GUITAR = Fretted(TUNINGS["guitar", "half-step down", 6], STANDARD["guitar", 6])
BASS = Fretted(STANDARD["bass", 4], STANDARD["bass", 4])
TONE, TENSION, OUTSIDE = Role.CHORD_TONE, Role.TENSION, Role.NON_CHORD_TONE


def voice_part(events: tuple[Event, ...], name: str = "voice", **fields: Any) -> Part:  # noqa: ANN401
    """Return a sung or played part on one staff."""
    return Part(name, Instrument(name), (events,), ("staff",), **fields)


def fretted_part(
    events: tuple[Event, ...],
    fretted: Fretted = GUITAR,
    name: str = "guitar",
    **fields: Any,  # noqa: ANN401
) -> Part:
    """Return a fretted part on a staff and in tablature."""
    shows = fields.pop("shows", ("staff", "tab"))
    return Part(name, Instrument(name, fretted), (events,), shows, **fields)
