"""A line: the onsets of one part, or of one drum, as one rhythm."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from sitegen.analysis.groove.grid import Grid, GridBar, MeterGrid, to_ticks
from sitegen.analysis.reading import NoteReading, Place

Offsets = tuple[int, ...]
Struck = dict[int, list[NoteReading]]


@dataclass(frozen=True)
class Pattern:
    """The rhythm of most bars: the first bar that has it, and its offsets there."""

    bar: GridBar
    offsets: Offsets

    @property
    def meter(self) -> MeterGrid:
        """The meter of its bars."""
        return self.bar.meter

    @property
    def ticks(self) -> tuple[int, ...]:
        """Its onsets in the first bar that has it."""
        return tuple(self.bar.origin + offset for offset in self.offsets)


@dataclass(frozen=True)
class Line:
    """One rhythm.

    `struck` holds the notes of every onset by tick, in order of time; notes struck together
    are one onset, and so are hammered, dead and ghosted ones. `name` is what a sentence calls
    the line, `prefix` starts the paths of its facts.
    """

    name: str
    prefix: str
    grid: Grid
    struck: Struck

    @property
    def plain_name(self) -> str:
        """The name without its article."""
        return self.name.removeprefix("the ")

    @cached_property
    def bars(self) -> tuple[Offsets, ...]:
        """For each bar of the grid the offsets of its onsets from where its meter starts."""
        filled: list[list[int]] = [[] for _ in self.grid.bars]
        bars, last, index = self.grid.bars, len(self.grid.bars) - 1, 0
        for tick in self.struck:
            while index < last and tick >= bars[index].end:
                index += 1
            filled[index].append(tick - bars[index].origin)
        return tuple(map(tuple, filled))

    @cached_property
    def played(self) -> tuple[tuple[GridBar, Offsets], ...]:
        """The whole bars in which the line has an onset, each with its offsets."""
        pairs = zip(self.grid.bars, self.bars, strict=True)
        return tuple((bar, offsets) for bar, offsets in pairs if offsets and bar.is_whole)

    @cached_property
    def pattern(self) -> Pattern | None:
        """The rhythm that comes back most; None where none does. A single bar is its own."""
        counted = Counter([(bar.meter, offsets) for bar, offsets in self.played])
        if not counted:
            return None
        # `max` takes the first of those that are equal.
        (meter, offsets), count = max(counted.items(), key=lambda item: item[1])
        if count == 1 and len(self.played) > 1:
            return None
        first = next(bar for bar, own in self.played if own == offsets and bar.meter is meter)
        return Pattern(first, offsets)

    def places(self, ticks: Iterable[int]) -> tuple[Place, ...]:
        """Return where some of the onsets stand."""
        known = self._places
        for tick in (ticks := tuple(ticks)):
            if tick not in known:
                notes = self.struck[tick]
                ids = tuple([note.id for note in notes if note.id])
                known[tick] = Place(notes[0].bar, notes[0].beat, ids)
        return tuple([known[tick] for tick in ticks])

    @cached_property
    def _places(self) -> dict[int, Place]:
        return {}


def strike(notes: Iterable[NoteReading], ticks: int) -> Struck:
    """Return the notes by the tick of their onset, in order of time."""
    struck: Struck = {}
    for note in notes:
        tick = to_ticks(note.onset, ticks)
        if tick in struck:
            struck[tick].append(note)
        else:
            struck[tick] = [note]
    return struck
