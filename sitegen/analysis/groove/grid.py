"""A chart's time in whole ticks, so that rhythms are compared as integers."""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from math import lcm

from sitegen.score.chart import Chart
from sitegen.score.meter import Meter
from sitegen.score.metrical_weight import beat_level, metrical_weight

_DOZEN = 12


class MeterGrid:
    """A meter in ticks; offsets count from where its bar starts.

    `count` is the length of a counted beat and `length` of the bar, `beats` the offsets of the
    felt beats (see `beat_level`) and `strong` of those that weigh more than the weakest.
    `swung` is the length of the beats that can swing, 0 where none can: the counts of a meter
    in quarters, the four beats of 12/8.
    """

    def __init__(self, meter: Meter, count: int) -> None:
        self.meter = meter
        self.count = count
        self.length = count * meter.count
        self._weights: dict[int, int] = {}
        level = beat_level(meter)
        counts = range(0, self.length, count)
        self.beats = tuple(offset for offset in counts if self.weight(offset) >= level)
        self.strong = tuple(o for o in self.beats if o == 0 or self.weight(o) > level)
        self.is_felt_as_counted = self.beats == tuple(counts)
        dozen = meter.is_compound and meter.count == _DOZEN
        in_quarters = self.is_felt_as_counted and meter.unit == 4  # noqa: PLR2004
        self.swung = self.length // len(self.beats) if dozen or in_quarters else 0

    def weight(self, offset: int) -> int:
        """Return the metrical weight of a place: 0 for the downbeat, less for all others."""
        found = self._weights.get(offset)
        if found is None:
            place = Fraction(offset, self.count) * self.meter.beat
            found = self._weights[offset] = metrical_weight(self.meter, place)
        return found


@dataclass(frozen=True, eq=False)
class GridBar:
    """One bar in ticks; `origin` is where its meter starts, before `start` in a pickup.

    `is_whole` is False for a pickup and for a bar cut short by a repeat.
    """

    number: int
    meter: MeterGrid
    origin: int
    start: int
    end: int
    is_whole: bool


@dataclass(frozen=True)
class Grid:
    """The bars of a chart in ticks, `ticks` of them to a quarter note."""

    ticks: int
    bars: tuple[GridBar, ...]


def lay_grid(chart: Chart, onsets: Iterable[Fraction]) -> Grid:
    """Return the grid on which all bars and all `onsets` are whole."""
    places = {onset.denominator for onset in onsets}
    meters: dict[Meter, MeterGrid] = {}
    for bar in chart.bars:
        places |= {bar.start.denominator, bar.length.denominator, bar.skipped.denominator}
        places.add(max(bar.meter.unit // 4, 1))
    ticks = lcm(*places)
    bars = []
    for bar in chart.bars:
        meter = meters.get(bar.meter)
        if meter is None:
            meter = meters[bar.meter] = meter_grid(bar.meter, 4 * ticks // bar.meter.unit)
        start, length = to_ticks(bar.start, ticks), to_ticks(bar.length, ticks)
        whole = bar.number > 0 and length == meter.length
        origin = start - to_ticks(bar.skipped, ticks)
        bars.append(GridBar(bar.number, meter, origin, start, start + length, whole))
    return Grid(ticks, tuple(bars))


def to_ticks(time: Fraction, ticks: int) -> int:
    """Return a time in quarter notes as whole ticks."""
    return time.numerator * ticks // time.denominator


@lru_cache(maxsize=64)
def meter_grid(meter: Meter, count: int) -> MeterGrid:
    """Return a meter in ticks, `count` to a counted beat."""
    return MeterGrid(meter, count)
