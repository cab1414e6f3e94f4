"""A chart as a copyist lays it out: every event cut at the bar lines into written values."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from sitegen.engraving.bar_rhythm import Rhythms
from sitegen.engraving.beams import Beam
from sitegen.engraving.rhythm import Written
from sitegen.score.chart import Bar, Chart, Event, Part
from sitegen.score.ids import UnusedIds, event_ids, note_id, place_slug, voice_slug


@dataclass(frozen=True)
class WrittenEvent:
    """One written note, chord or rest with its name in the file; `id` is stable over builds.

    `number` is the place of its event in the voice.
    """

    id: str
    piece: Written
    event: Event
    number: int

    @cached_property
    def note_ids(self) -> tuple[str, ...]:
        """The ids of the event's notes."""
        return tuple(note_id(self.id, self.event, n) for n in range(len(self.event.notes)))


@dataclass(frozen=True)
class WrittenBar:
    """One bar of one voice."""

    bar: Bar
    events: tuple[WrittenEvent, ...]
    beams: tuple[Beam, ...]

    @cached_property
    def is_silent(self) -> bool:
        """True when nothing sounds in it."""
        return all(event.piece.is_rest for event in self.events)

    def opening(self) -> Iterator[WrittenEvent]:
        """Yield the first written note of every event that sounds from here on."""
        return (each for each in self.events if each.piece.opens and not each.piece.is_rest)

    @property
    def is_full(self) -> bool:
        """True when the bar holds all the time of its meter."""
        return self.bar.length == self.bar.meter.length


@dataclass(frozen=True)
class WrittenVoice:
    """One voice of a part over the whole chart; `ids` are those of its events."""

    part: Part
    number: int
    bars: tuple[WrittenBar, ...]
    ids: tuple[str, ...]

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

    def named(self, part: Part) -> "WrittenVoice":
        """Return the voice with the events of `part`: the same but for the names of pitches."""
        events = part.voices[self.number - 1]
        bars = tuple(
            WrittenBar(
                bar.bar,
                tuple(
                    WrittenEvent(written.id, written.piece, events[written.number], written.number)
                    for written in bar.events
                ),
                bar.beams,
            )
            for bar in self.bars
        )
        return WrittenVoice(part, self.number, bars, self.ids)


def lay_out(chart: Chart, part: Part) -> tuple[WrittenVoice, ...]:
    """Return the written voices of a part."""
    return tuple(_voice(chart, part, number) for number in range(len(part.voices)))


def _voice(chart: Chart, part: Part, number: int) -> WrittenVoice:
    ids = event_ids(chart, part, number)
    return WrittenVoice(part, number + 1, _bars(chart, part, number, ids), ids)


def _bars(
    chart: Chart, part: Part, voice: int, opening: tuple[str, ...]
) -> tuple[WrittenBar, ...]:
    events, name, ids = part.voices[voice], voice_slug(part, voice), UnusedIds(opening)
    rhythms = Rhythms(chart.bars, events).written(chart.bars)
    bars = []
    for bar, (first, rhythm) in zip(chart.bars, rhythms, strict=True):
        written = tuple(
            WrittenEvent(
                opening[first + piece.source]
                if piece.opens
                else ids.unused(f"{name}-{place_slug(bar, 1 + piece.start / bar.meter.beat)}"),
                piece,
                events[first + piece.source],
                first + piece.source,
            )
            for piece in rhythm.pieces
        )
        bars.append(WrittenBar(bar, written, rhythm.beams))
    return tuple(bars)
