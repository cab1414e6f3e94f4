"""A block's body cut into systems, and each system into rows with a label."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from sitegen.charts.grid.faults import Faults
from sitegen.source import Line, Span

LONGEST_LINE = 4000
_LABEL = re.compile(r"[^|]*")


@dataclass(frozen=True)
class Row:
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


@dataclass(frozen=True)
class Heading:
    """A line that names the part whose string or drum rows follow: `guitar`, `drums`."""

    name: str
    span: Span


@dataclass(frozen=True)
class System:
    """The rows between two empty lines, from top to bottom."""

    lines: tuple[Row | Heading, ...]


def cut_systems(body: Iterable[Line], faults: Faults) -> tuple[System, ...]:
    """Return the systems of a body; a line with a tab character is reported and left out."""
    systems: list[list[Row | Heading]] = [[]]
    for line in body:
        if not line.text.strip():
            systems.append([])
        elif _is_clean(line, faults):
            systems[-1].append(_cut_row(line))
    return tuple(System(tuple(lines)) for lines in systems if lines)


def _is_clean(line: Line, faults: Faults) -> bool:
    tab = line.text.find("\t")
    if tab >= 0:
        faults.add(
            "grid-tab",
            line.span(tab, tab + 1),
            "a tab character stands in the rows, so columns cannot be counted",
            hint="use spaces only",
        )
        return False
    if len(line.text) > LONGEST_LINE:
        faults.add(
            "grid-size",
            line.span(LONGEST_LINE, LONGEST_LINE + 1),
            f"a row is longer than {LONGEST_LINE} characters",
            hint="begin a new system after an empty line",
        )
        return False
    return True


def _cut_row(line: Line) -> Row | Heading:
    label = _LABEL.match(line.text)
    text = label[0] if label else ""
    start = len(text) - len(text.lstrip())
    span = line.span(start, max(len(text.rstrip()), start))
    name = " ".join(text.split())
    if len(text) == len(line.text):
        return Heading(name, span)
    return Row(name, span, line, len(text))
