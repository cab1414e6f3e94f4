"""The time of a whole `notation` block: its bars one after another, and each system's columns."""

import re
from bisect import bisect_right
from dataclasses import dataclass, field, replace
from fractions import Fraction
from functools import cached_property
from operator import itemgetter

from sitegen.charts.directions import close_endings, read_direction
from sitegen.charts.grid.count import (
    Column,
    CountedBar,
    bar_columns,
    read_count_row,
    report_lead,
)
from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.rows import Row, System, is_bare_count
from sitegen.score.chart import Bar
from sitegen.score.meter import MOST_BEATS, Meter

# More than any chart of one song shows at once; engraving takes seconds at this length.
MOST_BARS = 250


@dataclass(frozen=True)
class SystemTime:
    """The time of one system: from `start` to `end`, with its columns in order.

    `bar_lines` maps the column of each bar line to the onset there; `bars` are the indices of
    its bars in the block. What stands in a column of `unread` is under a count that was reported.
    """

    rows: System
    count: Row
    start: Fraction
    end: Fraction
    columns: tuple[Column, ...]
    bar_lines: dict[int, Fraction]
    bars: range
    unread: frozenset[int] = frozenset()

    def onset_at(self, column: int) -> Fraction | None:
        """Return the onset of what starts in `column`, None between two counts."""
        return self._onsets.get(column)

    @cached_property
    def _onsets(self) -> dict[int, Fraction]:
        return {count.column: count.onset for count in self.columns}

    def around(self, column: int) -> tuple[Column | None, Column | None]:
        """Return the counts before and after `column`."""
        index = bisect_right(self.columns, column, key=itemgetter(0))
        before = self.columns[index - 1] if index else None
        after = self.columns[index] if index < len(self.columns) else None
        return before, after

    def nearest(self, column: int) -> Column:
        """Return the count that `column` lies nearest to, the one before it where both are."""
        near = (count for count in self.around(column) if count is not None)
        return min(near, key=lambda count: abs(count.column - column))

    def end_after(self, column: int) -> Fraction:
        """Return the onset of the first count to the right of `column`, or the system's end."""
        _, after = self.around(column)
        return after.onset if after else self.end


@dataclass
class Timeline:
    """The bars of a block in order and the time of each of its systems."""

    bars: list[Bar] = field(default_factory=list)
    systems: list[SystemTime] = field(default_factory=list)
    meter: Meter | None = None
    """The meter that goes on; None after one that could not be read."""
    doubtful: set[int] = field(default_factory=set)
    """The indices of bars whose count or meter was reported: their lengths are not judged."""

    @property
    def end(self) -> Fraction:
        """The onset after the last bar."""
        return self.bars[-1].end if self.bars else Fraction(0)

    @property
    def cuts(self) -> frozenset[Fraction]:
        """The onsets over which no sound is held: after each repeat sign."""
        return frozenset(bar.end for bar in self.bars if bar.repeat_end)


@dataclass(frozen=True)
class Opening:
    """The meter and number of the first bar; `meter` is None where its line was reported."""

    meter: Meter | None
    number: int


def read_timeline(systems: tuple[System, ...], opening: Opening, faults: Faults) -> Timeline:
    """Return the time of the block; a system without a count row is reported and left out.

    Where the meter is not known, a bar is as long as it is counted.
    """
    timeline = Timeline(meter=opening.meter)
    for system in systems:
        count = _count_row(system, faults)
        if count is None:
            continue
        counted = read_count_row(count, faults)
        if len(timeline.bars) + len(counted) > MOST_BARS:
            faults.add("grid-size", count.label_span, f"a chart has more than {MOST_BARS} bars")
            break
        if counted:
            _add_system(timeline, system, count, counted, opening, faults)
    _check_lengths(timeline, faults)
    timeline.bars = list(close_endings(timeline.bars))
    return timeline


def _count_row(system: System, faults: Faults) -> Row | None:
    rows = [line for line in system.lines if isinstance(line, Row)]
    counts = [row for row in rows if row.label.lower() == "count"]
    for double in counts[1:]:
        faults.add(
            "count-double",
            double.label_span,
            "a second count row stands in the same system",
            hint="separate two systems by an empty line",
        )
    if counts:
        return counts[0]
    bare = next((line for line in system.lines if is_bare_count(line)), None)
    if bare is not None:
        message = "the count row has no bar line"
        hint = 'write | behind its name and behind each bar: "count | 1 & 2 & 3 & 4 & |"'
        faults.add("count-missing", bare.span, message, hint=hint)
        return None
    first = system.lines[0]
    span = first.label_span if isinstance(first, Row) else first.span
    faults.add(
        "count-missing",
        span,
        "these rows have no count row",
        hint='write a row such as "count | 1 & 2 & 3 & 4 & |" above them',
    )
    return None


def _add_system(
    timeline: Timeline,
    system: System,
    row: Row,
    counted: list[CountedBar],
    opening: Opening,
    faults: Faults,
) -> None:
    start, first_bar = timeline.end, len(timeline.bars)
    columns: list[Column] = []
    lines: dict[int, Fraction] = {}
    for bar in counted:
        if timeline.bars and not bar.beats:
            # Marks alone can only lead to the first bar: what stands under them is not asked.
            bar.unread.extend(mark.column for mark in bar.lead)
            report_lead(bar, row, faults)
            continue
        made = _make_bar(timeline, bar, row, opening, faults)
        timeline.bars.append(replace(made, opens_line=len(timeline.bars) == first_bar))
        lines[bar.column] = made.start
        columns.extend(bar_columns(bar, made.meter, made.start, made.number))
        lines[bar.end_column] = made.end
    if not columns:
        return
    for column in (line.start() for line in re.finditer(r"\|", row.text)):
        # The other stroke of a double bar, and the line around a bar that had a fault.
        if column not in lines:
            lines[column] = _onset_right_of(column, columns, timeline.end)
    unread = frozenset(column for bar in counted for column in bar.unread)
    bars = range(first_bar, len(timeline.bars))
    timeline.systems.append(
        SystemTime(system, row, start, timeline.end, tuple(columns), lines, bars, unread)
    )


def _onset_right_of(column: int, columns: list[Column], end: Fraction) -> Fraction:
    return next((count.onset for count in columns if count.column > column), end)


def _make_bar(
    timeline: Timeline, bar: CountedBar, row: Row, opening: Opening, faults: Faults
) -> Bar:
    previous = timeline.bars[-1] if timeline.bars else None
    if bar.lead and previous is not None:
        report_lead(bar, row, faults)
        bar.lead.clear()
    ending = _read_directions(timeline, bar, row, faults)
    meter = timeline.meter or _counted_meter(bar, previous)
    first = bar.first_number(meter)
    goes_on = previous is not None and first > 1 and _counted_to(previous) == first - 1
    number = _number(previous, first, opening.number, goes_on=goes_on)
    if first > 1 and previous is not None and not goes_on and timeline.meter is not None:
        faults.add(
            "count-start",
            row.span(bar.beats[0].column, bar.beats[0].column + len(str(first))),
            f"the bar starts on {first}, but the bar before is complete",
            hint="only a pickup at the start, or the rest of a split bar, starts after 1",
        )
    if timeline.meter is None or not _is_in_order(bar, meter, row, faults):
        timeline.doubtful.add(len(timeline.bars))
    return Bar(
        number=number,
        meter=meter,
        start=previous.end if previous else Fraction(0),
        length=meter.beat * (len(bar.beats) + bar.lead_beats),
        span=row.span(bar.first_column, bar.end_column),
        skipped=meter.beat * (first - 1 - bar.lead_beats),
        new_meter=previous is None or previous.meter != meter,
        repeat_start=bar.repeat_start,
        repeat_end=bar.repeat_end,
        double_bar=bar.double_bar,
        ending=ending,
    )


def _counted_meter(bar: CountedBar, previous: Bar | None) -> Meter:
    """Return the meter of a bar by its count alone."""
    highest = max((beat.number for beat in bar.beats), default=1)
    unit = previous.meter.unit if previous else 4
    return Meter.read(f"{min(max(highest, 1), MOST_BEATS)}/{unit}")


def _number(previous: Bar | None, first: int, opening: int, *, goes_on: bool) -> int:
    if previous is None:
        return opening if first == 1 else 0
    if goes_on:
        return previous.number
    return opening if previous.number == 0 else previous.number + 1


def _counted_to(bar: Bar) -> Fraction:
    return (bar.skipped + bar.length) / bar.meter.beat


def _read_directions(timeline: Timeline, bar: CountedBar, row: Row, faults: Faults) -> str:
    """Note a change of meter in `timeline` and return the ending that the bar belongs to."""
    ending = ""
    if bar.has_open_bracket:
        timeline.meter = None
    for direction in bar.directions:
        span = row.span(direction.column, direction.column + len(direction.text) + 2)
        found = read_direction(direction.text, span, faults)
        if isinstance(found, str):
            ending = found
        else:
            timeline.meter = found
    return ending


def _is_in_order(bar: CountedBar, meter: Meter, row: Row, faults: Faults) -> bool:
    expected, count = bar.first_number(meter), meter.count
    for beat in bar.beats:
        if expected == beat.number and 1 <= expected <= count:
            expected += 1
            continue
        span = row.span(beat.column, beat.column + len(str(beat.number)))
        if beat.number > count or beat.number < 1:
            message = f"beat {beat.number} is counted in a bar of {meter}"
            hint = f"a bar of {meter} is counted from 1 to {count}"
        else:
            message = f"after {expected - 1} comes {expected}, not {beat.number}"
            hint = "count every beat of the bar"
        faults.add("count-order", span, message, hint=hint)
        return False
    return True


def _check_lengths(timeline: Timeline, faults: Faults) -> None:
    """Report bars that end before their meter does without a reason."""
    bars = timeline.bars
    taken_up = {bar.skipped for bar in bars if bar.skipped}
    for index, bar in enumerate(bars):
        missing = bar.meter.length - bar.skipped - bar.length
        following = bars[index + 1] if index + 1 < len(bars) else None
        if (
            index in timeline.doubtful
            or missing <= 0
            or (following and following.skipped == bar.skipped + bar.length)
        ):
            continue
        may_be_short = bar.repeat_end or following is None
        if may_be_short and bar.skipped + bar.length in taken_up:
            continue
        counted = bar.length / bar.meter.beat
        hint = f"a bar of {bar.meter} is counted from 1 to {bar.meter.count}"
        if index == 0:
            hint += "; a pickup starts on a later number"
        faults.add(
            "count-short",
            bar.span,
            f"the bar ends after {_beats(counted)} of {bar.meter}",
            hint=hint,
        )


def _beats(count: Fraction) -> str:
    return f"{count} beat" if count == 1 else f"{count} beats"
