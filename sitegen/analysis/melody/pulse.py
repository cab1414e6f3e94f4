"""The time of a chart in whole numbers: ticks, bar lines and felt beats."""

from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import lcm

from sitegen.analysis.reading import NoteReading
from sitegen.score.chart import Bar, Chart


@dataclass(frozen=True)
class Pulse:
    """Where the bars and the felt beats of a chart start, in ticks from the start of the chart.

    A quarter note has `ticks` ticks, as many as make every onset and length a whole number. A
    felt beat is a beat group of the meter: a quarter in 4/4, a dotted quarter in 6/8, 2+2+3
    eighths in 7/8. `bars` and `beats` end with the end of the chart. For each of the `written`
    bars `wholes` has the length of a whole bar of its meter, `skips` what passes of it before the
    bar starts (a pickup on 4 in 4/4 skips three beats).
    """

    ticks: int
    written: tuple[Bar, ...]
    bars: tuple[int, ...]
    wholes: tuple[int, ...]
    skips: tuple[int, ...]
    beats: tuple[int, ...]

    def at(self, time: Fraction) -> int:
        """Return a time or length in quarter notes in ticks; it has to be one that is whole."""
        return time.numerator * (self.ticks // time.denominator)

    def bar_index(self, tick: int) -> int:
        """Return which written bar holds `tick`, from 0; the last for whatever lies past it."""
        return min(max(bisect_right(self.bars, tick) - 1, 0), len(self.written) - 1)

    def beat_around(self, tick: int) -> tuple[int, int]:
        """Return the start of the felt beat that `tick` lies in, and that of the next one."""
        after = min(bisect_right(self.beats, tick), len(self.beats) - 1)
        return self.beats[max(after - 1, 0)], self.beats[after]


def find_pulse(chart: Chart, notes: Iterable[NoteReading]) -> Pulse:
    """Return the bars and felt beats of a chart of a bar or more, in ticks that suit `notes`."""
    meters = {bar.meter for bar in chart.bars}
    times = [time for bar in chart.bars for time in (bar.start, bar.length, bar.skipped)]
    times += [remark.onset for remark in chart.sections] + [meter.beat for meter in meters]
    denominators = {time.denominator for time in times}
    for note in notes:
        denominators |= {note.onset.denominator, note.duration.denominator}
    ticks = lcm(*denominators)
    bars = _ticks((*(bar.start for bar in chart.bars), chart.length), ticks)
    skips = _ticks([bar.skipped for bar in chart.bars], ticks)
    lengths = {meter: meter.count * _tick(meter.beat, ticks) for meter in meters}
    wholes = tuple(lengths[bar.meter] for bar in chart.bars)
    return Pulse(ticks, chart.bars, bars, wholes, skips, _beats(chart, ticks, bars, skips))


def _beats(
    chart: Chart, ticks: int, bars: tuple[int, ...], skips: tuple[int, ...]
) -> tuple[int, ...]:
    meters = {bar.meter for bar in chart.bars}
    groups = {meter: _ticks(meter.group_starts, ticks) for meter in meters}
    beats = [
        start - skipped + at
        for bar, (start, end), skipped in zip(chart.bars, pairwise(bars), skips, strict=True)
        for at in groups[bar.meter]
        if start <= start - skipped + at < end
    ]
    return (*beats, bars[-1])


def _tick(time: Fraction, ticks: int) -> int:
    return time.numerator * (ticks // time.denominator)


def _ticks(times: Iterable[Fraction], ticks: int) -> tuple[int, ...]:
    return tuple(_tick(time, ticks) for time in times)
