"""A block's body cut into systems, and each system into rows with a label."""

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import TypeGuard

from msgspec import Struct

from sitegen.charts.grid.faults import Faults
from sitegen.source import Line, Span

LONGEST_LINE = 4000
_LABEL = re.compile(r"[^|]*")
_REPEAT_DOTS = re.compile(r"(?<=\|):|:(?=\|)")


class Row(Struct, frozen=True):
    """One row: its label and the line; `start` is the index of the first bar line in it."""

    label: str
    label_span: Span
    line: Line
    start: int

    @property
    def text(self) -> str:
        """The whole line, so that an index in it is a column."""
        return self.line.text

    def span(self, start: int, end: int) -> Span:
        """Return the file span of the columns `start` up to `end` (indices from 0)."""
        return self.line.span(start, end)


class Heading(Struct, frozen=True):
    """A line that names the part whose string or drum rows follow: `guitar`, `drums`."""

    name: str
    span: Span


@dataclass(frozen=True)
class System:
    """The rows between two empty lines, from top to bottom."""

    lines: tuple[Row | Heading, ...]


def cut_systems(body: Iterable[Line], faults: Faults) -> tuple[System, ...]:
    """Return the systems of a body.

    A line with a tab character and an overlong one are reported; nothing else is then said of
    them, nor of any row under a count row that has such a fault.
    """
    systems: list[list[Row | Heading]] = [[]]
    for line in body:
        if line.text.strip():
            systems[-1].append(_cut_row(_countable(line, faults)))
        else:
            systems.append([])
    for lines in systems:
        if any(_is_count(line) and line.line.number in faults.muted for line in lines):
            faults.muted.update(_number(line) for line in lines)
    return tuple(System(tuple(lines)) for lines in systems if lines)


def _countable(line: Line, faults: Faults) -> Line:
    """Return the line with each tab as a space, and no longer than a row can be."""
    tab = line.text.find("\t")
    if tab >= 0:
        faults.add(
            "grid-tab",
            line.span(tab, tab + 1),
            "a tab character stands in the rows, so columns cannot be counted",
            hint="use spaces only",
        )
    elif len(line.text) > LONGEST_LINE:
        faults.add(
            "grid-size",
            line.span(LONGEST_LINE, LONGEST_LINE + 1),
            f"a row is longer than {LONGEST_LINE} characters",
            hint="begin a new system after an empty line",
        )
    else:
        return line
    faults.muted.add(line.number)
    return replace(line, text=line.text[:LONGEST_LINE].replace("\t", " "))


def is_bare_count(line: Row | Heading) -> TypeGuard[Heading]:
    """Tell whether a line is a count row without any bar line."""
    return isinstance(line, Heading) and re.match(r"count \d", line.name.lower()) is not None


def _number(line: Row | Heading) -> int:
    return line.line.number if isinstance(line, Row) else line.span.line


def _is_count(line: Row | Heading) -> TypeGuard[Row]:
    return isinstance(line, Row) and line.label.lower() == "count"


def _cut_row(line: Line) -> Row | Heading:
    label = _LABEL.match(line.text)
    text = label[0] if label else ""
    start = len(text) - len(text.lstrip())
    span = line.span(start, max(len(text.rstrip()), start))
    name = " ".join(text.split())
    if len(text) == len(line.text):
        return Heading(name, span)
    if name.lower() != "count" and ":" in line.text:
        # Repeat dots are the count row's to say; rows under it may repeat them.
        line = replace(line, text=_REPEAT_DOTS.sub(" ", line.text))
    return Row(name, span, line, len(text))
