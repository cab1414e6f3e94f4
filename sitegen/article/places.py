"""From the text of a Markdown block back to its places in the file.

The Markdown library knows on which lines a block stands. Its text has lost the marks of lists
and quotes before each line, and a table's cell the backslash before each `|`; what is left of
a line is found again from its right end.
"""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import zip_longest

from sitegen.source import Line, Source, Span

BLANKS = " \t\n\v\f\r"
"""What Markdown cuts from the ends of a text."""


@dataclass(frozen=True)
class Stretch:
    """Text from code point `start` of a block on that stands in one piece in the file."""

    start: int
    line: int
    column: int


@dataclass(frozen=True)
class PlacedText:
    """The text of a block with its stretches, in order, the first one at 0."""

    text: str
    stretches: tuple[Stretch, ...]

    def span(self, start: int, end: int) -> Span:
        """Return the file's span for code points `start` up to `end` of the text."""
        line, column = self._place(start)
        if end <= start:
            return Span(line, column, line, column)
        end_line, end_column = self._place(end - 1)
        return Span(line, column, end_line, end_column + 1)

    def _place(self, at: int) -> tuple[int, int]:
        index = bisect_right(self.stretches, at, key=lambda stretch: stretch.start) - 1
        stretch = self.stretches[max(index, 0)]
        return stretch.line, max(stretch.column + at - stretch.start, 1)


def place_lines(source: Source, text: str, first: int) -> PlacedText:
    """Return `text`, lines of a block that stands in the file from line `first` (from 1) on."""
    stretches: list[Stretch] = []
    start, number = 0, first
    for row in text.split("\n"):
        number, column = _find_row(source, row, number)
        stretches.append(Stretch(start, number, column))
        start += len(row) + 1
        number += 1
    return PlacedText(text, tuple(stretches))


def _find_row(source: Source, row: str, number: int) -> tuple[int, int]:
    """Return the line at or after `number` that holds `row`, and the column where it starts."""
    core = row.strip(BLANKS)
    for candidate in range(number, len(source.lines) + 1):
        found = source.lines[candidate - 1].rfind(core)
        if found >= 0:
            return candidate, found + 1 - (len(row) - len(row.lstrip(BLANKS)))
    return min(number, len(source.lines)), 1


def place_cells(line: str, number: int, start: int, texts: Sequence[str]) -> list[PlacedText]:
    """Return `texts`, cells of the table row from index `start` of file line `number`, in place.

    Cells with text beyond those follow them. Empty where `texts` are not the row's cells.
    """
    cells = [_unescape(line, number, *bounds) for bounds in _cell_bounds(line, start)]
    for first in (0, 1):  # what stands before a leading | is no cell
        end = first + len(texts)
        pairs = list(zip_longest(texts, cells[first:end], fillvalue=""))
        if all(_is_cell(text, cell) for text, cell in pairs):
            beyond = [(cell.text.strip(), cell) for cell in cells[end:] if cell.text.strip()]
            return [_trim(c, t) for t, c in (*pairs, *beyond) if isinstance(c, PlacedText)]
    return []


def _cell_bounds(line: str, start: int) -> list[tuple[int, int]]:
    bounds: list[tuple[int, int]] = []
    for at in range(start, len(line)):
        if line[at] == "|" and (at == start or line[at - 1] != "\\"):
            bounds.append((start, at))
            start = at + 1
    return [*bounds, (start, len(line))]


def _unescape(line: str, number: int, start: int, end: int) -> PlacedText:
    text: list[str] = []
    stretches = [Stretch(0, number, start + 1)]
    for at in range(start, end):
        if line[at] == "|":  # an escaped one: it takes the place of its backslash
            text.pop()
            stretches.append(Stretch(len(text), number, at + 1))
        text.append(line[at])
    return PlacedText("".join(text), tuple(stretches))


def _is_cell(text: str, cell: PlacedText | str) -> bool:
    raw = cell if isinstance(cell, str) else cell.text
    return text.strip() == raw.strip()


def _trim(cell: PlacedText, text: str) -> PlacedText:
    """Return the cell without the blanks around its `text`."""
    cut = max(cell.text.find(text), 0)
    moved = (Stretch(each.start - cut, each.line, each.column) for each in cell.stretches)
    return PlacedText(text, tuple(moved))


def cut_line(source: Source, text: str, number: int) -> Line:
    """Return file line `number` of which `text` is left when the block's own marks are cut off.

    Spaces that stand for a tab which belongs only in part to the block have the tab's place.
    """
    stored = source.lines[number - 1]
    column = len(stored) - len(text) + 1
    if column >= 1 and stored.endswith(text):
        return Line.cut(text, number, column)
    core = text.lstrip(" ")
    line = Line.cut(core, number, len(stored) - len(core) + 1)
    spaces = len(text) - len(core)
    at_tab = max(line.columns[0] - 1, 1)
    return Line(" " * spaces + line.text, number, (at_tab,) * spaces + line.columns)
