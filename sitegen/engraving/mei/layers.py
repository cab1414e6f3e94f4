"""One bar of one voice as a `layer`: beams, tuplets and what they hold."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby
from typing import TypeVar
from xml.etree.ElementTree import Element

from sitegen.engraving.copyist import WrittenBar, WrittenEvent
from sitegen.engraving.mei.element import child, put
from sitegen.engraving.tuplets import Tuplet

_Key = TypeVar("_Key")
WriteEvent = Callable[[Element, WrittenEvent], None]


@dataclass(frozen=True)
class _Placed:
    """A written event with the number of its beam in the bar, None when it has a flag."""

    written: WrittenEvent
    beam: int | None

    @property
    def tuplet(self) -> Tuplet | None:
        return self.written.piece.tuplet


def write_events(
    layer: Element, bar: WrittenBar, write: WriteEvent, *, rhythm: bool = True
) -> None:
    """Write the bar's events into `layer`, each by `write`, inside its beams and tuplets.

    A tuplet that holds whole beams stands outside them; one inside a beam stands inside.
    Without `rhythm` there are no beams, and tuplets do their work unseen.
    """
    placed = _placed(bar, beamed=rhythm)
    for tuplet, run in _runs(placed, key=lambda event: _wide_tuplet(event, placed)):
        home = _tuplet(layer, tuplet, seen=rhythm)
        for beam, inside in _runs(run, key=lambda event: event.beam):
            holder = home if beam is None else child(home, "beam")
            for inner, events in _runs(inside, key=lambda event: event.tuplet):
                narrow = None if inner == tuplet else inner
                innermost = _tuplet(holder, narrow, seen=rhythm)
                for event in events:
                    write(innermost, event.written)


def _placed(bar: WrittenBar, *, beamed: bool) -> list[_Placed]:
    beams: list[int | None] = [None] * len(bar.events)
    for number, beam in enumerate(bar.beams if beamed else ()):
        beams[beam.start : beam.end] = [number] * (beam.end - beam.start)
    return [_Placed(written, beam) for written, beam in zip(bar.events, beams, strict=True)]


def _wide_tuplet(event: _Placed, placed: list[_Placed]) -> Tuplet | None:
    """Return the event's tuplet unless a beam reaches beyond it."""
    if event.tuplet is None:
        return None
    beams = {other.beam for other in placed if other.tuplet == event.tuplet} - {None}
    reached = {other.tuplet for other in placed if other.beam in beams}
    return event.tuplet if reached <= {event.tuplet} else None


def _tuplet(home: Element, tuplet: Tuplet | None, *, seen: bool) -> Element:
    """Return a new `tuplet` element in `home`, or `home` itself where there is no tuplet."""
    if tuplet is None:
        return home
    element = child(home, "tuplet", num=tuplet.count, numbase=tuplet.time_of, num_format="count")
    if not seen:
        put(element, num_visible="false", bracket_visible="false")
    return element


def _runs(
    events: Iterable[_Placed], key: Callable[[_Placed], _Key]
) -> Iterator[tuple[_Key, list[_Placed]]]:
    return ((value, list(run)) for value, run in groupby(events, key=key))
