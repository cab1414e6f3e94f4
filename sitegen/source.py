"""A file's text and the places in it.

Lines and columns are counted from 1, columns in Unicode code points of the file
as it is stored. An end column is the first one after the marked text.
"""

import unicodedata
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property


@dataclass(frozen=True, order=True)
class Span:
    """A stretch of a file: from (line, column) up to, not including, (end_line, end_column)."""

    line: int
    column: int
    end_line: int
    end_column: int

    def until(self, other: "Span") -> "Span":
        """Return the stretch from the start of this span to the end of `other`."""
        return Span(self.line, self.column, other.end_line, other.end_column)


@dataclass(frozen=True)
class Source:
    """The text of one file, line ends already turned into line feeds.

    `path` is the name shown to people: relative to the folder they work in.
    """

    path: str
    text: str

    @cached_property
    def lines(self) -> tuple[str, ...]:
        """The lines of the file without their ends; never empty."""
        return tuple(self.text.split("\n"))

    @cached_property
    def _starts(self) -> tuple[int, ...]:
        starts, at = [], 0
        for line in self.lines:
            starts.append(at)
            at += len(line) + 1
        return tuple(starts)

    def span(self, start: int, end: int) -> Span:
        """Return the span of the code points `start` up to `end` of the whole text."""
        line, column = self._place(start)
        end_line, end_column = self._place(max(start, end))
        return Span(line, column, end_line, end_column)

    def line_span(self, number: int) -> Span:
        """Return the span of line `number` (from 1) without its indentation and trailing space.

        A number outside the file gives the nearest line of the file.
        """
        number = min(max(number, 1), len(self.lines))
        text = self.lines[number - 1]
        start = len(text) - len(text.lstrip())
        return Span(number, start + 1, number, max(len(text.rstrip()), start) + 1)

    def _place(self, offset: int) -> tuple[int, int]:
        offset = min(max(offset, 0), len(self.text))
        line = bisect_right(self._starts, offset)
        return line, offset - self._starts[line - 1] + 1


@dataclass(frozen=True)
class Line:
    """One line of a passage: its text in Unicode form NFC and where that text stands.

    `columns[i]` is the file column of code point `i` of `text`; one more entry
    gives the column after the last code point.
    """

    text: str
    number: int
    columns: tuple[int, ...]

    @classmethod
    def cut(cls, stored: str, number: int, column: int = 1) -> "Line":
        """Return the line for `stored`, text of file line `number` that starts at `column`."""
        text = unicodedata.normalize("NFC", stored)
        if text == stored:
            return cls(text, number, tuple(range(column, column + len(stored) + 1)))
        columns: list[int] = []
        at = 0
        for cluster in _clusters(stored):
            composed = unicodedata.normalize("NFC", cluster)
            columns.extend([column + at] * len(composed))
            at += len(cluster)
        return cls(text, number, (*columns, column + at))

    def span(self, start: int, end: int) -> Span:
        """Return the file span of the code points `start` up to `end` of this line."""
        last = len(self.columns) - 1
        start, end = min(max(start, 0), last), min(max(end, start), last)
        return Span(self.number, self.columns[start], self.number, self.columns[end])


@dataclass(frozen=True)
class Passage:
    """Consecutive lines of one file with any list or quote prefix cut off: a fence's text."""

    source: Source
    lines: tuple[Line, ...]
    opening: Span

    @property
    def text(self) -> str:
        """The lines joined by line feeds."""
        return "\n".join(line.text for line in self.lines)

    @classmethod
    def of(cls, text: str, path: str = "chart") -> "Passage":
        """Return `text` as a passage that is a file of its own."""
        source = Source(path, text)
        lines = tuple(Line.cut(line, n) for n, line in enumerate(source.lines, start=1))
        return cls(source, lines, Span(1, 1, 1, 1))


def _clusters(text: str) -> Iterator[str]:
    """Split `text` so that no NFC composition crosses a cut."""
    cluster = text[:1]
    marks: list[str] = []
    for char in text[1:]:
        if unicodedata.combining(char):
            marks.append(char)
            continue
        cluster += "".join(marks)
        marks.clear()
        if _composes(cluster, char):
            cluster += char
            continue
        yield cluster
        cluster = char
    if cluster:
        yield cluster + "".join(marks)


def _composes(cluster: str, char: str) -> bool:
    """Return whether `char`, which is no combining mark, melts into the cluster before it."""
    apart = unicodedata.normalize("NFC", cluster) + unicodedata.normalize("NFC", char)
    return unicodedata.normalize("NFC", cluster + char) != apart
