"""What stands in a row: words at columns, and whether they stand under a count."""

import re
from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.rows import Row
from sitegen.charts.grid.timeline import SystemTime
from sitegen.source import Span

_WORD = re.compile(r"[^\s|]+")
# A remark may hold single spaces; two spaces or a bar line end it.
_PHRASE = re.compile(r"[^\s|]+(?: [^\s|]+)*")


class Cell(NamedTuple):
    """A word of a row: its text and its column (index in the line)."""

    text: str
    column: int

    @property
    def end(self) -> int:
        """The column after the word."""
        return self.column + len(self.text)

    @property
    def is_fill(self) -> bool:
        """True for hyphens, which fill a row and say nothing."""
        return set(self.text) == {"-"}


def words(row: Row) -> Iterator[Cell]:
    """Yield the words of a row, separated by spaces and bar lines."""
    return _cells(_WORD, row)


def phrases(row: Row) -> Iterator[Cell]:
    """Yield the texts of a row, separated by two spaces or more and by bar lines."""
    return _cells(_PHRASE, row)


def _cells(pattern: re.Pattern[str], row: Row) -> Iterator[Cell]:
    for match in pattern.finditer(row.text, row.start + 1):
        yield Cell(match[0], match.start())


def check_bar_lines(row: Row, time: SystemTime, faults: Faults) -> None:
    """Report the first bar line of a row that does not stand under one of the count row."""
    for match in re.finditer(r"\|", row.text):
        column = match.start()
        if column in time.bar_lines:
            continue
        nearest = min(time.bar_lines, key=lambda c: abs(c - column))
        faults.add_bar_line(
            row.span(column, column + 1),
            "a bar line does not stand under one of the count row",
            f"the count row has one in column {_file_column(time.count, nearest)}",
            time.count.span(nearest, nearest + 1),
        )
        return


def own_bar_lines(row: Row, bars: int) -> list[int] | None:
    """Return the columns of a row's bar lines when it draws all of its `bars`, else None.

    The last one may be missing; the row then ends where its text does.
    """
    lines = [match.end() - 1 for match in re.finditer(r"\|+", row.text)]
    if len(lines) == bars:
        lines.append(len(row.text))
    return lines if len(lines) == bars + 1 else None


def onset_of(cell: Cell, row: Row, time: SystemTime, faults: Faults) -> Fraction | None:
    """Return when a cell starts; one between two counts is reported and gives None."""
    onset = time.onset_at(cell.column)
    if onset is None and cell.column in time.unread:
        lose_note(cell, row, time, faults)
    elif onset is None:
        _report_off_count(cell, row, time, faults)
    else:
        faults.slipped(row.line.number, 0)
    return onset


def lose_note(cell: Cell, row: Row, time: SystemTime, faults: Faults) -> None:
    """Remember that a note was meant here that could not be read."""
    faults.lost_cells.add((row.line.number, cell.column))
    faults.lost.add(time.nearest(cell.column).onset)


def _report_off_count(cell: Cell, row: Row, time: SystemTime, faults: Faults) -> None:
    """Report a cell that starts under no count, and between which two it lies.

    A stretch of a row that slipped sideways as a whole is reported once, at its first cell.
    """
    before, after = time.around(cell.column)
    nearest = time.nearest(cell.column)
    if faults.slipped(row.line.number, cell.column - nearest.column):
        return
    as_bar_line = _bar_line_slip(row, time)
    moved = cell.column - as_bar_line
    is_same_slip = as_bar_line != 0 and time.onset_at(moved) is not None
    if is_same_slip and faults.is_behind_bar_line(row.span(cell.column, cell.end)):
        return
    if before is None or after is None:
        side = "before" if before is None else "after"
        message = f'"{cell.text}" starts {side} {nearest.name}, where nothing is counted'
    else:
        message = f'"{cell.text}" starts between {before.name} and {after.name}'
    column = _file_column(row, nearest.column)
    hint = f"move it to column {column}, under {nearest.name}, or divide the beat in the count row"
    mark: Span = time.count.span(nearest.column, nearest.column + 1)
    faults.add(
        "off-count",
        row.span(cell.column, cell.end),
        message,
        hint=hint,
        related=((mark, nearest.name),),
    )


def _bar_line_slip(row: Row, time: SystemTime) -> int:
    """Return how many columns the row's first wrong bar line lies off the count row's, else 0."""
    for match in re.finditer(r"\|", row.text):
        if match.start() not in time.bar_lines:
            return min((match.start() - column for column in time.bar_lines), key=abs)
    return 0


def _file_column(row: Row, index: int) -> int:
    return row.line.columns[index] if index < len(row.line.columns) else index + 1
