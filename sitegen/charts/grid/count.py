"""The count row: what musicians say aloud, "1 & 2 &", turned into bars and exact time.

A number opens a beat of the meter's denominator; the marks up to the next number divide that
beat evenly. Each of them is a column of the system: what starts there starts at that time.
"""

import re
from dataclasses import dataclass, field
from fractions import Fraction
from typing import NamedTuple

from sitegen.charts.directions import DIRECTION_HINT
from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.rows import Row
from sitegen.score.meter import Meter

MARKS = ("&", "e", "a", "la", "li", "+", ".")
MOST_DIVISIONS = 16
_TOKEN = re.compile(
    r"(?P<bar>:?\|{1,2}:?)|(?P<direction>\((?:[^()|]|\([^()|]*\))*\))|(?P<open>\([^\s|]*)"
    r"|(?P<number>[0-9]+)"
    r"|(?P<mark>[&+.])|(?P<letters>[^\W\d_]+)|(?P<other>[^\s|])"
)
_LETTERS = re.compile(r"la|li|e|a")
_ALL_LETTERS = re.compile(rf"({_LETTERS.pattern})+")
# Where in its beat a mark lies that no number opens: by its name, as it is said.
_SAID_AT = {
    "&": Fraction(1, 2),
    "+": Fraction(1, 2),
    "e": Fraction(1, 4),
    "a": Fraction(3, 4),
    "la": Fraction(1, 3),
    "li": Fraction(2, 3),
}


class Mark(NamedTuple):
    """A division mark and its column (index in the line)."""

    text: str
    column: int


@dataclass
class CountedBeat:
    """A beat as counted: its number, its column and the marks that divide it."""

    number: int
    column: int
    marks: list[Mark]


@dataclass
class CountedBar:
    """What stands between two bar lines of the count row; columns are indices in the line.

    `directions` are the texts in round brackets at its head with their columns; `lead` are the
    marks before its first number, `unread` the columns of what was reported.
    `has_open_bracket` tells that a direction was never closed.
    """

    column: int
    beats: list[CountedBeat]
    directions: list[Mark]
    lead: list[Mark] = field(default_factory=list)
    unread: list[int] = field(default_factory=list)
    has_open_bracket: bool = False
    repeat_start: bool = False
    repeat_end: bool = False
    double_bar: bool = False
    end_column: int = 0

    @property
    def first_column(self) -> int:
        """Where its count begins."""
        return (self.lead[0] if self.lead else self.beats[0]).column

    @property
    def lead_beats(self) -> Fraction:
        """How much of a beat passes before its first number: 1/2 in "& 4 &"."""
        return 1 - _SAID_AT[self.lead[0].text] if self.lead else Fraction(0)

    def first_number(self, meter: Meter) -> int:
        """Return its first number; a bar of marks alone leads to the next bar's 1."""
        return self.beats[0].number if self.beats else meter.count + 1


class Column(NamedTuple):
    """A column of the system: where it stands, when it sounds and how it is called ("2.3&")."""

    column: int
    onset: Fraction
    name: str


def read_count_row(row: Row, faults: Faults) -> list[CountedBar]:
    """Return the bars of a count row; what cannot be read is reported and passed over."""
    bars: list[CountedBar] = []
    for match in _TOKEN.finditer(row.text, row.start):
        kind, text, at = match.lastgroup, match[0], match.start()
        if kind == "bar":
            _close_and_open(bars, text, at)
        elif kind == "direction":
            _add_direction(bars[-1], Mark(text[1:-1], at), row, faults)
        elif kind == "open":
            bars[-1].has_open_bracket = True
            span = row.span(at, match.end())
            faults.add("count-direction", span, "a bracket is never closed", hint=DIRECTION_HINT)
        elif kind == "number":
            bars[-1].beats.append(CountedBeat(int(text[:4]), at, []))
        elif kind == "mark":
            _add_mark(bars[-1], Mark(text, at), row, faults)
        elif kind == "letters" and _ALL_LETTERS.fullmatch(text):
            for letters in _LETTERS.finditer(text):
                _add_mark(bars[-1], Mark(letters[0], at + letters.start()), row, faults)
        else:
            faults.add(
                "count-mark",
                row.span(at, match.end()),
                f'"{text}" is no part of a count',
                hint=f"count beats with numbers and divide them with {' '.join(MARKS)}",
            )
            bars[-1].unread.append(at)
    return _finish(bars, row, faults)


def _close_and_open(bars: list[CountedBar], text: str, at: int) -> None:
    line = at + text.index("|")
    if bars:
        bars[-1].end_column = line
        bars[-1].repeat_end = text.startswith(":")
        bars[-1].double_bar = "||" in text
    # The last stroke of a double bar is where the next bar begins.
    start = at + text.rindex("|")
    bars.append(CountedBar(start, [], [], repeat_start=text.endswith(":")))


def _add_direction(bar: CountedBar, direction: Mark, row: Row, faults: Faults) -> None:
    if bar.beats:
        faults.add(
            "count-direction",
            row.span(direction.column, direction.column + len(direction.text) + 2),
            f"({direction.text}) stands inside a bar",
            hint="directions stand at the head of a bar, before its first number",
        )
        return
    bar.directions.append(direction)


def _add_mark(bar: CountedBar, mark: Mark, row: Row, faults: Faults) -> None:
    if not bar.beats:
        bar.lead.append(mark)
        return
    if len(bar.beats[-1].marks) + 1 == MOST_DIVISIONS:
        span = row.span(mark.column, mark.column + len(mark.text))
        message = f"a beat is divided into more than {MOST_DIVISIONS}"
        hint = "count the beat in larger steps, or each of its halves as a beat of its own"
        faults.add("count-mark", span, message, hint=hint)
    bar.beats[-1].marks.append(mark)


def _finish(bars: list[CountedBar], row: Row, faults: Faults) -> list[CountedBar]:
    """Drop the empty bar after the last bar line; close an open last bar at the line's end."""
    end = len(row.text.rstrip())
    last = bars[-1]
    if not (last.beats or last.directions or last.lead or last.unread):
        bars.pop()
    else:
        last.end_column = end
    kept = []
    for bar in bars:
        is_reported = bool(bar.lead or bar.unread)
        _check_lead(bar, row, faults)
        if bar.beats or bar.lead:
            kept.append(bar)
        elif not is_reported:
            span = row.span(bar.column, max(bar.end_column, bar.column + 1))
            hint = "count its beats: 1 2 3 4"
            faults.add("count-empty", span, "a bar has no count", hint=hint)
    return kept


def _check_lead(bar: CountedBar, row: Row, faults: Faults) -> None:
    """Drop marks before a number that do not tell where in a beat they lie, and report them."""
    if not bar.lead:
        return
    places = [_SAID_AT.get(mark.text, Fraction(0)) for mark in bar.lead]
    is_clear = places == sorted(set(places)) and Fraction(0) not in places
    if is_clear and not (bar.beats and bar.beats[0].number == 1):
        return
    report_lead(bar, row, faults)
    bar.lead.clear()


def report_lead(bar: CountedBar, row: Row, faults: Faults) -> None:
    """Report marks that divide no beat of their bar."""
    first, last = bar.lead[0], bar.lead[-1]
    faults.add(
        "count-mark",
        row.span(first.column, last.column + len(last.text)),
        f'the bar starts with "{first.text}", which divides no beat',
        hint="write the number of the beat before it, and start the notes under the mark",
    )


def bar_columns(bar: CountedBar, meter: Meter, start: Fraction, number: int) -> list[Column]:
    """Return the columns of a bar that starts at `start`, its first beat as counted."""
    columns = []
    length = meter.beat
    onset = start + length * bar.lead_beats
    for mark in bar.lead:
        name = f"{number}.{bar.first_number(meter) - 1}{mark.text}"
        at = onset - length * (1 - _SAID_AT[mark.text])
        columns.append(Column(mark.column, at, name))
    for beat in bar.beats:
        parts = len(beat.marks) + 1
        columns.append(Column(beat.column, onset, f"{number}.{beat.number}"))
        for index, mark in enumerate(beat.marks, start=1):
            name = f"{number}.{beat.number}{mark.text}"
            columns.append(Column(mark.column, onset + length * index / parts, name))
        onset += length
    return columns
