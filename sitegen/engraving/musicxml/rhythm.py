"""Written values: durations, note types, tuplets and beams of one voice in one bar."""

from collections.abc import Sequence
from dataclasses import dataclass
from xml.etree.ElementTree import Element

from sitegen.engraving.copyist import WrittenBar, WrittenEvent
from sitegen.engraving.musicxml.element import child, ticks
from sitegen.engraving.tuplets import Tuplet
from sitegen.engraving.values import value_of

# The standard has no name for anything shorter; such a note has its duration alone.
_TYPES = {
    1: "whole",
    2: "half",
    4: "quarter",
    8: "eighth",
    16: "16th",
    32: "32nd",
    64: "64th",
    128: "128th",
    256: "256th",
    512: "512th",
    1024: "1024th",
}
_MOST_BEAMS = 8


@dataclass(frozen=True)
class Placed:
    """A written event in its bar.

    `beams` are the states of its beams from the first level on ("begin", "forward hook", ...);
    `opens` and `closes` say that its tuplet begins or ends with it.
    """

    written: WrittenEvent
    voice: int
    beams: tuple[str, ...] = ()
    opens: bool = False
    closes: bool = False

    @property
    def tuplet(self) -> Tuplet | None:
        """The tuplet that the event belongs to."""
        return self.written.piece.tuplet


def place_events(bar: WrittenBar, voice: int) -> tuple[Placed, ...]:
    """Return the events of a voice's bar with their beams and tuplets."""
    events = bar.events
    beams: dict[int, tuple[str, ...]] = {}
    for beam in bar.beams:
        beams |= _beam_states(events, range(beam.start, beam.end))
    tuplets = [None, *(event.piece.tuplet for event in events), None]
    return tuple(
        Placed(
            event,
            voice,
            beams.get(number, ()),
            opens=here is not None and here != tuplets[number],
            closes=here is not None and here != tuplets[number + 2],
        )
        for number, event in enumerate(events)
        for here in [event.piece.tuplet]
    )


def _beam_states(events: Sequence[WrittenEvent], run: range) -> dict[int, tuple[str, ...]]:
    """Return the states of the notes under one beam by their number; rests have none."""
    depths = [0 if events[n].piece.is_rest else _flags(events[n]) for n in run]
    notes = [n for n, depth in enumerate(depths) if depth]
    return {
        run[n]: tuple(_state(depths, notes, n, level) for level in range(1, depths[n] + 1))
        for n in notes
    }


def _flags(event: WrittenEvent) -> int:
    return min(event.piece.value.dur.bit_length() - 3, _MOST_BEAMS)


def _state(depths: list[int], notes: list[int], n: int, level: int) -> str:
    """Return the state of a beam's level at a note; the first level runs on over rests."""
    if level == 1:
        before, after = n > notes[0], n < notes[-1]
    else:
        before = n > 0 and depths[n - 1] >= level
        after = n + 1 < len(depths) and depths[n + 1] >= level
    if before and after:
        return "continue"
    if before or after:
        return "end" if before else "begin"
    return "forward hook" if n == notes[0] else "backward hook"


def write_duration(note: Element, placed: Placed, divisions: int) -> None:
    """Write how long the event sounds."""
    child(note, "duration", ticks(placed.written.piece.length, divisions))


def write_value(note: Element, placed: Placed) -> None:
    """Write the voice, the note value and its dots."""
    child(note, "voice", placed.voice)
    value = placed.written.piece.value
    if value.dur in _TYPES:
        child(note, "type", _TYPES[value.dur])
        for _ in range(value.dots):
            child(note, "dot")


def write_ratio(note: Element, placed: Placed) -> None:
    """Write so many notes in the time of so many, for an event of a tuplet."""
    if placed.tuplet is not None:
        ratio = child(note, "time-modification")
        child(ratio, "actual-notes", placed.tuplet.count)
        child(ratio, "normal-notes", placed.tuplet.time_of)


def write_beams(note: Element, placed: Placed) -> None:
    """Write the beams of an event."""
    for level, state in enumerate(placed.beams, start=1):
        child(note, "beam", state, number=level)


def write_tuplet(notations: Element, placed: Placed) -> None:
    """Write where the tuplet's bracket begins and ends."""
    tuplet = placed.tuplet
    if tuplet is not None and placed.opens:
        bracket = child(notations, "tuplet", type="start", number=1)
        for name, count in (("actual", tuplet.count), ("normal", tuplet.time_of)):
            portion = child(bracket, f"tuplet-{name}")
            child(portion, "tuplet-number", count)
            unit = value_of(tuplet.unit)
            if unit is not None and unit.dur in _TYPES:
                child(portion, "tuplet-type", _TYPES[unit.dur])
    if placed.closes:
        child(notations, "tuplet", type="stop", number=1)
