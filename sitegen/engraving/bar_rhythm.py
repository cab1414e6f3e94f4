"""The written rhythm of one voice in one bar, worked out once for all bars that sound alike."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache
from math import lcm
from typing import NamedTuple

from sitegen.engraving.beams import Beam, beam_groups
from sitegen.engraving.hierarchy import Cell, beats_of, metrical_cells
from sitegen.engraving.rhythm import Stretch, Written, write_bar
from sitegen.score.chart import Bar, Event
from sitegen.score.meter import Meter

# Into how many ticks a quarter falls where that is fine enough: bars of different charts are
# only known to be alike on one grid.
_USUAL_GRID = 48


class Sounding(NamedTuple):
    """What an event does in a bar, from `start` to `end` in ticks from the meter's first beat.

    `struck` marks a stroke without length; `came_on` and `goes_on` say that the event has begun
    before the bar and lasts beyond it.
    """

    start: int
    end: int
    is_rest: bool
    struck: bool
    came_on: bool
    goes_on: bool


@dataclass(frozen=True)
class WrittenRhythm:
    """The written values of a bar and its beams; the `source` of a piece counts within the bar."""

    pieces: tuple[Written, ...]
    beams: tuple[Beam, ...]


class Rhythms:
    """The rhythms of one voice, bar by bar."""

    def __init__(self, bars: Sequence[Bar], events: Sequence[Event]) -> None:
        self._grid = _grid(bars, events)
        self._onsets = [self._ticks(event.onset) for event in events]
        lengths = [self._ticks(event.duration) for event in events]
        self._ends = [on + length for on, length in zip(self._onsets, lengths, strict=True)]
        self._looks = [(not event.notes, _dies_away(event)) for event in events]

    def _ticks(self, time: Fraction) -> int:
        return time.numerator * (self._grid // time.denominator)

    def written(self, bars: Sequence[Bar]) -> Iterator[tuple[int, WrittenRhythm]]:
        """Yield the place of the first event that sounds in each bar, and what is written."""
        first = 0
        for bar in bars:
            start, end = self._ticks(bar.start), self._ticks(bar.start + bar.length)
            while first < len(self._ends) and self._ends[first] <= start:
                first += 1
            behind = first
            while behind < len(self._onsets) and self._onsets[behind] < end:
                behind += 1
            shift = self._ticks(bar.skipped) - start
            inside = tuple(self._sounding(n, start, end, shift) for n in range(first, behind))
            yield first, write_rhythm(bar.meter, self._grid, inside)

    def _sounding(self, number: int, start: int, end: int, shift: int) -> Sounding:
        on, off = self._onsets[number], self._ends[number]
        came_on, goes_on = on < start, off > end
        cut = ((start if came_on else on) + shift, (end if goes_on else off) + shift)
        return Sounding(*cut, *self._looks[number], came_on, goes_on)


def _grid(bars: Sequence[Bar], events: Sequence[Event]) -> int:
    """Return into how many ticks a quarter falls so that everything begins and ends on one."""
    times = {time.denominator for bar in bars for time in (bar.start, bar.length, bar.skipped)}
    times |= {time.denominator for event in events for time in (event.onset, event.duration)}
    return lcm(_USUAL_GRID, *times)


def _dies_away(event: Event) -> bool:
    """Return whether an event is a stroke without length: drums but for a roll, dead notes."""
    return bool(event.notes) and all(
        note.dead or (note.drum is not None and not note.roll) for note in event.notes
    )


@lru_cache(maxsize=2048)
def write_rhythm(meter: Meter, grid: int, soundings: tuple[Sounding, ...]) -> WrittenRhythm:
    """Return what is written in a bar of `meter`; `grid` is the number of ticks in a quarter."""
    cell = metrical_cells(meter)
    stretches = tuple(
        stretch
        for source, sounding in enumerate(soundings)
        for stretch in _stretches(cell, sounding, source, grid)
    )
    pieces = tuple(
        _let_die(piece) if soundings[piece.source].struck else piece
        for piece in write_bar(cell, stretches)
    )
    return WrittenRhythm(pieces, beam_groups(cell, pieces))


def _stretches(cell: Cell, sounding: Sounding, source: int, grid: int) -> list[Stretch]:
    whole = Stretch(
        start=Fraction(sounding.start, grid),
        end=Fraction(sounding.end, grid),
        source=source,
        is_rest=sounding.is_rest,
        goes_on=sounding.goes_on,
        came_on=sounding.came_on,
    )
    return _struck(cell, whole) if sounding.struck else [whole]


def _let_die(piece: Written) -> Written:
    """Return a piece of a stroke with silence in place of what would be tied on."""
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
