"""A chart as a copyist lays it out: every event cut at the bar lines into written values."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from sitegen.engraving.beams import Beam, beam_groups
from sitegen.engraving.hierarchy import Cell, beats_of, metrical_cells
from sitegen.engraving.rhythm import Stretch, Written, write_bar
from sitegen.score.chart import Bar, Chart, Event, Part
from sitegen.score.ids import UnusedIds, event_ids, note_id, place_slug, voice_slug


@dataclass(frozen=True)
class WrittenEvent:
    """One written note, chord or rest with its name in the file; `id` is stable over builds."""

    id: str
    piece: Written
    event: Event
    number: int

    def note_id(self, index: int) -> str:
        """Return the id of one of the event's notes."""
        return note_id(self.id, self.event, index)


@dataclass(frozen=True)
class WrittenBar:
    """One bar of one voice. `full` says that it holds all the time of its meter."""

    bar: Bar
    cell: Cell
    events: tuple[WrittenEvent, ...]
    beams: tuple[Beam, ...]

    @property
    def is_silent(self) -> bool:
        """True when nothing sounds in it."""
        return all(event.piece.is_rest for event in self.events)

    @property
    def is_full(self) -> bool:
        """True when the bar holds all the time of its meter."""
        return self.bar.length == self.bar.meter.length


@dataclass(frozen=True)
class WrittenVoice:
    """One voice of a part over the whole chart."""

    part: Part
    number: int
    bars: tuple[WrittenBar, ...]

    @cached_property
    def _by_event(self) -> dict[int, tuple[WrittenEvent, ...]]:
        found: dict[int, tuple[WrittenEvent, ...]] = {}
        for written in self.events():
            found[written.number] = (*found.get(written.number, ()), written)
        return found

    def events(self) -> Iterator[WrittenEvent]:
        """Yield everything written, in order."""
        for bar in self.bars:
            yield from bar.events

    def written(self, number: int) -> tuple[WrittenEvent, ...]:
        """Return what is written for the voice's event `number`: several when it is tied."""
        return self._by_event.get(number, ())


def lay_out(chart: Chart, part: Part) -> tuple[WrittenVoice, ...]:
    """Return the written voices of a part."""
    return tuple(
        WrittenVoice(part, number + 1, _bars(chart, part, number))
        for number in range(len(part.voices))
    )


def _bars(chart: Chart, part: Part, voice: int) -> tuple[WrittenBar, ...]:
    events = part.voices[voice]
    name = voice_slug(part, voice)
    opening = event_ids(chart, part, voice)
    ids = UnusedIds(opening)
    bars = []
    for bar in chart.bars:
        cell = metrical_cells(bar.meter)
        written_out = write_bar(cell, _stretches(bar, cell, events))
        pieces = [_let_die(piece, events[piece.source]) for piece in written_out]
        written = tuple(
            WrittenEvent(
                opening[piece.source]
                if piece.opens
                else ids.unused(f"{name}-{place_slug(bar, 1 + piece.start / bar.meter.beat)}"),
                piece,
                events[piece.source],
                piece.source,
            )
            for piece in pieces
        )
        bars.append(WrittenBar(bar, cell, written, beam_groups(cell, pieces)))
    return tuple(bars)


def _stretches(bar: Bar, cell: Cell, events: tuple[Event, ...]) -> tuple[Stretch, ...]:
    shift = bar.skipped - bar.start
    stretches: list[Stretch] = []
    first = bisect_right(events, bar.start, key=lambda event: event.end)
    last = bisect_left(events, bar.end, key=lambda event: event.onset)
    for number in range(first, last):
        event = events[number]
        whole = Stretch(
            start=max(event.onset, bar.start) + shift,
            end=min(event.end, bar.end) + shift,
            source=number,
            is_rest=not event.notes,
            goes_on=event.end > bar.end,
            came_on=event.onset < bar.start,
        )
        stretches.extend(_struck(cell, whole) if _dies_away(event) else [whole])
    return tuple(stretches)


def _dies_away(event: Event) -> bool:
    """Return whether an event is a stroke without length: drums but for a roll, dead notes."""
    strokes = [note.dead or (note.drum is not None and not note.roll) for note in event.notes]
    return bool(strokes) and all(strokes)


def _let_die(piece: Written, event: Event) -> Written:
    """Return a piece with silence in place of a stroke that would be tied on."""
    if not _dies_away(event):
        return piece
    return replace(piece, is_rest=not piece.opens or piece.is_rest, tied=False)


def _struck(cell: Cell, stretch: Stretch) -> list[Stretch]:
    """Return a stroke up to the end of its beat, then rests: a stroke is never tied."""
    if stretch.came_on:
        return [replace(stretch, is_rest=True)]
    beat = next(beat for beat in beats_of(cell) if beat.start <= stretch.start < beat.end)
    if stretch.end <= beat.end:
        return [replace(stretch, goes_on=False)]
    return [
        replace(stretch, end=beat.end, goes_on=False),
        replace(stretch, start=beat.end, is_rest=True, came_on=True),
    ]
