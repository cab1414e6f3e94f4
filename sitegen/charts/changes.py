"""The `changes` block: a progression bar by bar, `| Ebsus2 | Gbsus2 / C5/G / | % :|`."""

import re
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from msgspec.structs import replace

from sitegen.charts.basics import FIELDS, Basics, read_basics
from sitegen.charts.chords import read_symbol
from sitegen.charts.defaults import SongDefaults
from sitegen.charts.directions import DIRECTION, close_endings, read_direction
from sitegen.charts.grid.faults import Faults
from sitegen.charts.head import split_head
from sitegen.charts.reading import Reading
from sitegen.score.chart import Bar, Chart, ChordEvent, Remark
from sitegen.score.meter import Meter
from sitegen.source import Line, Passage, Span

MOST_BARS = 1000
# What is said of bars against their meter, and not where that one could not be read.
_BY_METER = frozenset({"changes-beats", "changes-split", "changes-bar"})
MOST_CHORDS = 16
HOLDS = ("/", ".")
REPEAT = "%"
_BAR_LINE = re.compile(r":?\|{1,2}:?")
_TOKEN = re.compile(r"\S+")


class Token(NamedTuple):
    """A word in a bar and its place in the line (index)."""

    text: str
    line: Line
    start: int

    @property
    def span(self) -> Span:
        """Where the word stands in the file."""
        return self.line.span(self.start, self.start + len(self.text))


@dataclass
class _Cell:
    """One bar as written: its words and the signs around it."""

    line: Line
    start: int
    end: int
    tokens: list[Token] = field(default_factory=list)
    meter: Meter | None = None
    has_lost_meter: bool = False
    ending: str = ""
    opens_line: bool = False
    repeat_start: bool = False
    repeat_end: bool = False
    double_bar: bool = False

    @property
    def span(self) -> Span:
        if self.tokens:
            return self.tokens[0].span.until(self.tokens[-1].span)
        return self.line.span(self.start, max(self.end, self.start + 1))


def read_changes(passage: Passage, defaults: SongDefaults) -> Reading:
    """Return the chart of a `changes` fence and every fault in it; None when it has no bar."""
    head = split_head(passage)
    faults = Faults(passage.source)
    basics = read_basics(head, defaults)
    head.finish(FIELDS)
    cells: list[_Cell] = []
    names: dict[int, Token] = {}
    for line in head.body:
        if line.text.strip():
            _cut_line(line, cells, names, faults)
    if head.has_fault_in("meter"):
        faults.dropped = _BY_METER
    chart = _make_chart(passage, basics, cells[:MOST_BARS], names, faults) if cells else None
    if len(cells) > MOST_BARS:
        message = f"a progression has more than {MOST_BARS} bars"
        faults.add("grid-size", cells[MOST_BARS].span, message)
    if not cells and not faults.found:
        hint = "write bars between bar lines: | Em | C / G / |"
        faults.add("changes-empty", passage.opening, "the block has no bars", hint=hint)
    return Reading(basics.id, basics.title, chart, (*head.faults, *faults.found))


def _cut_line(line: Line, cells: list[_Cell], names: dict[int, Token], faults: Faults) -> None:
    """Cut a line at its bar lines; a text before the first one names the section."""
    bar_lines = list(_BAR_LINE.finditer(line.text))
    if not bar_lines:
        start = len(line.text) - len(line.text.lstrip())
        span = line.span(start, len(line.text.rstrip()))
        hint = "bars stand between |; a name stands before its bars: Verse | C | F |"
        faults.add("changes-line", span, "a line has no bar line", hint=hint)
        return
    name = line.text[: bar_lines[0].start()].strip()
    if name:
        names[len(cells)] = Token(name, line, line.text.index(name))
    first = len(cells)
    for opening, closing in pairwise(bar_lines):
        cells.append(_cut_bar(line, opening, closing, faults))
    rest = line.text[bar_lines[-1].end() :]
    if rest.strip():
        cells.append(_cut_bar(line, bar_lines[-1], None, faults))
    if len(cells) > first:
        cells[first].opens_line = True


def _cut_bar(
    line: Line, opening: re.Match[str], closing: re.Match[str] | None, faults: Faults
) -> _Cell:
    end = closing.start() if closing else len(line.text.rstrip())
    closed = closing[0] if closing else "|"
    cell = _Cell(
        line,
        opening.end(),
        end,
        repeat_start=opening[0].endswith(":"),
        repeat_end=closed.startswith(":"),
        double_bar="||" in closed,
    )
    at = opening.end()
    text = line.text[:end]
    while (
        match := DIRECTION.match(text, at + len(text[at:]) - len(text[at:].lstrip()))
    ) is not None:
        _add_direction(match, cell, faults)
        at = match.end()
    cell.tokens = [Token(m[0], line, m.start()) for m in _TOKEN.finditer(text, at)]
    return cell


def _add_direction(match: re.Match[str], cell: _Cell, faults: Faults) -> None:
    found = read_direction(match[1], cell.line.span(*match.span()), faults)
    if isinstance(found, Meter):
        cell.meter = found
    elif found:
        cell.ending = found
    else:
        cell.has_lost_meter = True


def _make_chart(
    passage: Passage, basics: Basics, cells: list[_Cell], names: dict[int, Token], faults: Faults
) -> Chart:
    bars: list[Bar] = []
    chords: list[ChordEvent] = []
    sections: list[Remark] = []
    for index, cell in enumerate(cells):
        previous = bars[-1] if bars else None
        if cell.meter or cell.has_lost_meter:
            faults.dropped = _BY_METER if cell.has_lost_meter else frozenset()
        meter = cell.meter or (previous.meter if previous else basics.meter)
        bar = Bar(
            number=basics.first_bar + index,
            meter=meter,
            start=previous.end if previous else Fraction(0),
            length=meter.length,
            span=cell.span,
            new_meter=previous is None or meter != previous.meter,
            opens_line=cell.opens_line,
            repeat_start=cell.repeat_start,
            repeat_end=cell.repeat_end,
            double_bar=cell.double_bar,
            ending=cell.ending,
            same_as_before=[token.text for token in cell.tokens] == [REPEAT],
        )
        if index in names:
            sections.append(Remark(bar.start, names[index].text, names[index].span))
        _add_chords(cell, bar, previous, chords, faults)
        bars.append(bar)
    return Chart(
        id=basics.id,
        kind="changes",
        span=passage.opening,
        bars=close_endings(bars),
        title=basics.title,
        key=basics.key,
        tempo=basics.tempo,
        feel=basics.feel,
        start_time=basics.start_time,
        chords=tuple(chords),
        sections=tuple(sections),
        label=basics.label,
        roman=basics.roman is not False,
    )


def _add_chords(
    cell: _Cell, bar: Bar, previous: Bar | None, chords: list[ChordEvent], faults: Faults
) -> None:
    tokens = cell.tokens
    if not tokens:
        hint = "repeat the bar before with %, hold its chord with ., or write N.C."
        faults.add("changes-bar", cell.span, f"bar {bar.number} is empty", hint=hint)
    elif any(token.text == REPEAT for token in tokens):
        _repeat_bar(cell, bar, previous, chords, faults)
    elif any(token.text in HOLDS for token in tokens):
        _add_by_beats(cell, bar, chords, faults)
    else:
        _add_evenly(cell, bar, chords, faults)


def _repeat_bar(
    cell: _Cell, bar: Bar, previous: Bar | None, chords: list[ChordEvent], faults: Faults
) -> None:
    sign = next(token for token in cell.tokens if token.text == REPEAT)
    if len(cell.tokens) > 1:
        hint = "% alone repeats the whole bar before; hold a chord for a beat with ."
        faults.add("changes-bar", cell.span, "% stands beside other signs in its bar", hint=hint)
        return
    if previous is None or previous.meter.length != bar.meter.length:
        what = "no bar before it" if previous is None else "a bar of another length before it"
        hint = "write out the chords of this bar"
        faults.add("changes-bar", sign.span, f"% has {what} to repeat", hint=hint)
        return
    sounding = [event for event in chords if event.onset < previous.start][-1:]
    repeated = [event for event in chords if previous.start <= event.onset < previous.end]
    shift = bar.start - previous.start
    if not repeated and sounding:
        chords[-1] = replace(chords[-1], duration=bar.end - chords[-1].onset)
    chords.extend(replace(event, onset=event.onset + shift, span=sign.span) for event in repeated)


def _add_by_beats(cell: _Cell, bar: Bar, chords: list[ChordEvent], faults: Faults) -> None:
    """Each sign is a beat: every counted one, or every beat group (two in 6/8, three in 7/8)."""
    meter, count = bar.meter, len(cell.tokens)
    if count == meter.count:
        onsets = [meter.beat * n for n in range(count)]
    elif count == len(meter.groups):
        onsets = list(meter.group_starts)
    else:
        expected = str(meter.count)
        if len(meter.groups) != meter.count:
            expected += f" or {len(meter.groups)}"
        message = f"bar {bar.number} writes {count} beats in a bar of {meter}"
        hint = f"with / and . every beat has its sign: {expected} in all"
        faults.add("changes-beats", cell.span, message, hint=hint)
        return
    ends = [*onsets[1:], meter.length]
    for token, onset, end in zip(cell.tokens, onsets, ends, strict=True):
        if token.text not in HOLDS:
            _place(token, bar.start + onset, end - onset, chords, faults)
        elif chords and chords[-1].onset + chords[-1].duration == bar.start + onset:
            held = chords[-1]
            chords[-1] = replace(held, duration=held.duration + end - onset)
        elif not chords:
            message = f'"{token.text}" holds a chord, but none sounds'
            hint = "begin the progression with a chord or N.C."
            faults.add("changes-bar", token.span, message, hint=hint)


def _add_evenly(cell: _Cell, bar: Bar, chords: list[ChordEvent], faults: Faults) -> None:
    """Chords alone share the bar: by beat groups where there are as many, else evenly."""
    meter, count = bar.meter, len(cell.tokens)
    if count > MOST_CHORDS:
        message = f"bar {bar.number} has more than {MOST_CHORDS} chords"
        hint = "write the change over several bars"
        faults.add("changes-beats", cell.span, message, hint=hint)
        return
    uneven = len(set(meter.groups)) > 1
    onsets = [meter.length * n / count for n in range(count)]
    if count == len(meter.groups):
        onsets = list(meter.group_starts)
    elif uneven and count > 1:
        message = f"{count} chords do not share a bar of {meter} by its beats"
        hint = "say how long each lasts with / or . on the beats"
        faults.add("changes-split", cell.span, message, hint=hint)
    ends = [*onsets[1:], meter.length]
    for token, onset, end in zip(cell.tokens, onsets, ends, strict=True):
        _place(token, bar.start + onset, end - onset, chords, faults)


def _place(
    token: Token, onset: Fraction, duration: Fraction, chords: list[ChordEvent], faults: Faults
) -> None:
    chord = read_symbol(token.text, token.line, token.start, faults)
    if chord is not None:
        chords.append(ChordEvent(onset, duration, chord, token.span))
