"""One line of a `form` block: name, bars, start time and whatever else a section says."""

import re
from dataclasses import dataclass, field, replace
from fractions import Fraction

from sitegen.charts.grid.faults import Faults
from sitegen.charts.head import ID, read_text
from sitegen.diagnostics import did_you_mean
from sitegen.score.clock import read_clock
from sitegen.score.form import ChartMention, Section
from sitegen.score.meter import Meter
from sitegen.score.tempo import Tempo, read_tempo
from sitegen.source import Line, Span

MOST_BARS = 10_000
LONGEST_NAME = 80
SMALLEST_PART = 64
MENTIONS = ("changes", "charts", "notation", "see")
"""The words under which a section names charts."""
_WORDS = (*MENTIONS, "say", "tempo")
_BARS = re.compile(
    r"([0-9]{1,6}(?:\.[0-9]{1,3})?)?(?:(?:^|\s+)([0-9]{1,3})/([0-9]{1,3}))?(?:\s*bars?)?",
    re.IGNORECASE,
)
_CELL_AND_METER = re.compile(r"([^()]*?)\s*(?:\(([^()]*)\))?")
_WORD = re.compile(r"([^:]*?)\s*:\s*(.*)")
_ID = re.compile(r"[^\s,]+")
_ORDER = (
    "after name and bars come a start time, = another section, "
    "changes: or see: with chart ids, or say: with a remark"
)


@dataclass(frozen=True)
class Cell:
    """One cell of a line without the space around it; `span` of an empty cell is its gap."""

    text: str
    line: Line
    start: int
    end: int

    @property
    def span(self) -> Span:
        """Where the cell stands."""
        return self.line.span(self.start, self.end)

    def part(self, start: int, end: int) -> Span:
        """Return the span of the code points `start` up to `end` of the cell's text."""
        return self.line.span(self.start + start, self.start + end)


@dataclass
class SectionLine:
    """A line as it is read: the section where it could be saved, and the cells behind it."""

    name: Cell
    span: Span
    section: Section | None = None
    time: Cell | None = None
    same: Cell | None = None
    _extras: set[str] = field(default_factory=set)

    def first(self, word: str) -> bool:
        """Count `word` as said and return whether it is said for the first time."""
        is_new = word not in self._extras
        self._extras.add(word)
        return is_new


def read_section(line: Line, meter: Meter, tempo: Tempo | None, faults: Faults) -> SectionLine:
    """Read one line; `meter` and `tempo` are the form's. What is wrong is added to `faults`.

    The section is None where its bars cannot be told.
    """
    cells = _split_cells(line)
    read = SectionLine(cells[0], line.span(cells[0].start, cells[-1].end))
    _check_name(read.name, faults)
    if len(cells) == 1:
        message = "a section needs a name and its bars"
        faults.add("form-cells", read.span, message, hint='write it as "Chorus | 16"')
        return read
    counted = _read_bars(cells[1], meter, faults)
    if counted is not None:
        bars, own_meter = counted
        name = " ".join(read.name.text.split())
        read.section = Section(name, bars, own_meter, read.span, cells[1].span, tempo)
    for cell in cells[2:]:
        _read_extra(cell, read, faults)
    return read


def _split_cells(line: Line) -> tuple[Cell, ...]:
    """Return the cells of a line; a bar line that frames the whole line or ends it cuts none."""
    start, end = 0, len(line.text.rstrip())
    if end > 1 and line.text[end - 1] == "|":
        end -= 1
        start = len(line.text) - len(line.text.lstrip())
        start += line.text[start] == "|"
    cells, at = [], start
    for text in line.text[start:end].split("|"):
        kept = text.strip()
        first = at + (len(text) - len(text.lstrip()) if kept else 0)
        cells.append(Cell(kept, line, first, first + len(kept) if kept else at + len(text)))
        at += len(text) + 1
    return tuple(cells)


def _check_name(name: Cell, faults: Faults) -> None:
    if not name.text:
        faults.add("form-name", name.span, "a section has no name")
    elif len(name.text) > LONGEST_NAME:
        faults.add("form-name", name.span, f"a name of more than {LONGEST_NAME} characters")


def _read_bars(cell: Cell, meter: Meter, faults: Faults) -> tuple[Fraction, Meter] | None:
    match = _CELL_AND_METER.fullmatch(cell.text)
    number = _BARS.fullmatch(match[1]) if match else None
    bars = _number_of_bars(number) if number else None
    if match is None or bars is None:
        shown = f'"{cell.text}" is not' if cell.text else "here is not"
        message = f"{shown} a number of bars"
        faults.add("form-bars", cell.span, message, hint="such as 16, 7 1/2 or 8 (7/8)")
        return None
    if not 0 < bars <= MOST_BARS:
        faults.add("form-bars", cell.span, f"a section has up to {MOST_BARS} bars, and some")
        return None
    if match[2] is None:
        return bars, meter
    try:
        return bars, Meter.read(match[2])
    except ValueError as wrong:
        faults.add("form-bars", cell.part(*match.span(2)), str(wrong))
        return None


def _number_of_bars(match: re.Match[str]) -> Fraction | None:
    whole, upper, lower = match.groups()
    if upper is None:
        return None if whole is None else Fraction(whole)
    if not 0 < int(upper) < int(lower) <= SMALLEST_PART or "." in (whole or ""):
        return None
    return int(whole or 0) + Fraction(int(upper), int(lower))


def _read_extra(cell: Cell, read: SectionLine, faults: Faults) -> None:
    if not cell.text:
        return
    match = _WORD.fullmatch(cell.text)
    word = match[1].lower() if match else ""
    if cell.text.startswith("="):
        if _is_only("= another section", "=", cell, read, faults):
            read.same = cell
    elif match and word in MENTIONS:
        _read_mentions(word, cell, match, read, faults)
    elif match and word in _WORDS:
        if _is_only(f"{word}:", word, cell, read, faults):
            _read_word(word, cell, match, read, faults)
    elif cell.text[0].isdigit() or re.search(r"\d:\d", cell.text):
        if _is_only("start time", "time", cell, read, faults):
            _read_time(cell, read, faults)
    elif match:
        message = f'a section says nothing under "{match[1]}"'
        hint = did_you_mean(match[1], _WORDS)
        faults.add("form-extra", cell.part(*match.span(1)), message, hint=hint)
    else:
        message = f'"{cell.text}" has no place in a section'
        faults.add("form-extra", cell.span, message, hint=_ORDER)


def _is_only(said: str, word: str, cell: Cell, read: SectionLine, faults: Faults) -> bool:
    if read.first(word):
        return True
    faults.add("form-cells", cell.span, f'a section has one "{said}"', label="the second")
    return False


def _read_time(cell: Cell, read: SectionLine, faults: Faults) -> None:
    try:
        seconds = read_clock(cell.text)
    except ValueError as wrong:
        faults.add("form-time", cell.span, str(wrong), hint="minutes and seconds: 1:23")
        return
    read.time = cell
    if read.section:
        read.section = replace(read.section, start_time=seconds)


def _read_mentions(
    word: str, cell: Cell, match: re.Match[str], read: SectionLine, faults: Faults
) -> None:
    if not match[2]:
        faults.add("form-extra", cell.span, f'"{word}:" names no chart')
    mentions: list[ChartMention] = []
    for found in _ID.finditer(match[2]):
        span = cell.part(match.start(2) + found.start(), match.start(2) + found.end())
        if ID.fullmatch(found[0]):
            mentions.append(ChartMention(found[0], word, span))
        else:
            message = f'"{found[0]}" is not a chart\'s id'
            hint = "an id has small letters, digits and single hyphens"
            faults.add("form-chart", span, message, hint=hint)
    if read.section:
        read.section = replace(read.section, charts=(*read.section.charts, *mentions))


def _read_word(
    word: str, cell: Cell, match: re.Match[str], read: SectionLine, faults: Faults
) -> None:
    if not match[2]:
        faults.add("form-extra", cell.span, f'"{word}:" says nothing')
    elif read.section:
        try:
            read.section = _with_word(read.section, word, match[2])
        except ValueError as wrong:
            faults.add("form-extra", cell.part(*match.span(2)), str(wrong))


def _with_word(section: Section, word: str, value: str) -> Section:
    if word == "say":
        return replace(section, remark=read_text(value))
    return replace(section, tempo=read_tempo(value, compound=section.meter.is_compound))
