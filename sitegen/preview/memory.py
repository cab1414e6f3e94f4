"""What a worker remembers of charts, so that an edit beside them costs nothing.

A chart is read and studied as if its block stood at the top of a file, and what is said of it is
moved to where it really stands. So a line more in the prose above changes nothing for it.
"""

import copy
from collections import OrderedDict
from collections.abc import Callable, Hashable, Iterable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, Generic, TypeVar

from sitegen.charts.defaults import SongDefaults
from sitegen.diagnostics import Diagnostic
from sitegen.kinds.kind import Analysis, ChartKind, Reading, Surroundings
from sitegen.site.cache import Cache
from sitegen.source import Line, Passage, Source, Span

MOST_CHARTS = 256
"""How many charts are remembered: those of some thirty write-ups. A drawing takes about 100 KB."""

Value = TypeVar("Value")


class Memory(Generic[Value]):
    """Values by key, the least recently used ones forgotten."""

    def __init__(self, most: int = MOST_CHARTS) -> None:
        self._most = most
        self._held: OrderedDict[Hashable, Value] = OrderedDict()

    def get(self, key: Hashable) -> Value | None:
        """Return what is remembered under `key`."""
        if key in self._held:
            self._held.move_to_end(key)
        return self._held.get(key)

    def put(self, key: Hashable, value: Value) -> Value:
        """Remember `value` and return it."""
        self._held[key] = value
        while len(self._held) > self._most:
            self._held.popitem(last=False)
        return value

    def values(self) -> list[Value]:
        """Return all that is remembered, the latest last."""
        return list(self._held.values())

    def recall(self, key: Hashable, make: Callable[[], Value]) -> Value:
        """Return what is remembered under `key`, made now where nothing is."""
        found = self.get(key)
        return self.put(key, make()) if found is None else found


class WarmCache(Cache):
    """A cache whose values stay in memory as well; without a folder, nowhere else."""

    def __init__(self, folder: Path | None) -> None:
        super().__init__(folder or Path())
        self._has_folder = folder is not None
        self._warm = Memory[object]()

    def get(self, key: str) -> Any:  # noqa: ANN401 - as in the base class
        """Return the value under `key`, None where there is none."""
        found = self._warm.get(key)
        if found is None and self._has_folder:
            found = super().get(key)
            if found is not None:
                self._warm.put(key, found)
        return found

    def put(self, key: str, value: object) -> None:
        """Keep a value under `key`."""
        self._warm.put(key, value)
        if self._has_folder:
            super().put(key, value)


@dataclass(frozen=True)
class _Place:
    """Where a chart stands: `first` chart read from this text, the file, lines down in it."""

    chart: object
    first: object
    block: Source
    source: Source
    down: int


class Remembered:
    """A kind of chart that reads and studies nothing twice; `kind` is what to use in its place."""

    def __init__(self, kind: ChartKind) -> None:
        self._kind = kind
        self._readings = Memory[Reading]()
        self._analyses = Memory[tuple[object, Analysis]]()
        self._places = Memory[_Place]()
        self.kind = kind
        # What is made of files beside the text changes with them; the files are not watched here.
        if not kind.reads_files:
            self.kind = replace(kind, read=self._read, analyse=self._analyse)

    def _read(self, passage: Passage, defaults: SongDefaults) -> Reading:
        block = _lifted(passage)
        key = (block.source.text, block.opening, block.lines, defaults)
        reading = self._readings.recall(key, lambda: self._kind.read(block, defaults))
        down = passage.opening.line - block.opening.line
        diagnostics = _lowered(reading.diagnostics, passage.source, down)
        if reading.chart is None:
            return replace(reading, diagnostics=diagnostics)
        # The same block may stand in a write-up twice: each gets a chart of its own.
        chart = copy.copy(reading.chart)
        place = _Place(chart, reading.chart, block.source, passage.source, down)
        self._places.put(id(chart), place)
        return replace(reading, chart=chart, diagnostics=diagnostics)

    def _analyse(self, chart: object, surroundings: Surroundings) -> Analysis:
        place = self._places.get(id(chart))
        if place is None or place.chart is not chart:
            return self._kind.analyse(chart, surroundings)
        around = replace(surroundings, source=place.block)
        first = place.first
        # The chart is remembered beside its analysis, so that no other can get its id.
        _, analysis = self._analyses.recall(
            (id(first), self._seen(surroundings)),
            lambda: (first, self._kind.analyse(first, around)),
        )
        references = ((id_, _moved(span, place.down)) for id_, span in analysis.references)
        return replace(
            analysis,
            diagnostics=_lowered(analysis.diagnostics, place.source, place.down),
            references=tuple(references),
        )

    def _seen(self, around: Surroundings) -> Hashable:
        """Return what the kind's study may see of the write-up."""
        own = (around.anchor, around.name, around.credits)
        if not self._kind.looks_around:
            return own
        return (*own, tuple(around.headings.items()), tuple(around.charts.items()))


def _lifted(passage: Passage) -> Passage:
    """Return the block alone, as if its opening stood in the first line of a file."""
    down = passage.opening.line - 1
    last = passage.lines[-1].number if passage.lines else passage.opening.line
    # The line after the block closes it.
    text = "\n".join(passage.source.lines[down : last + 1])
    lines = tuple(Line(line.text, line.number - down, line.columns) for line in passage.lines)
    return Passage(Source("block", text), lines, _moved(passage.opening, -down))


def _lowered(
    diagnostics: Iterable[Diagnostic], source: Source, down: int
) -> tuple[Diagnostic, ...]:
    return tuple(
        replace(
            found,
            source=source,
            span=_moved(found.span, down),
            related=tuple((_moved(span, down), word) for span, word in found.related),
        )
        for found in diagnostics
    )


def _moved(span: Span, down: int) -> Span:
    return replace(span, line=span.line + down, end_line=span.end_line + down)
