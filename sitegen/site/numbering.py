"""Ids, anchors and names of an article's charts: what its prose and its charts refer to."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.article import free_anchor
from sitegen.diagnostics import Diagnostic, fault
from sitegen.kinds.kind import ChartKind, Reading
from sitegen.source import Passage, Span


@dataclass(frozen=True)
class ReadChart:
    """A chart block as it was read."""

    kind: ChartKind
    passage: Passage
    reading: Reading


@dataclass(frozen=True)
class NamedChart:
    """A chart with what it is called: `anchor` on its page, `name` in its caption."""

    chart: ReadChart
    id: str
    anchor: str
    name: str


def name_charts(
    charts: Sequence[ReadChart], taken_anchors: frozenset[str]
) -> tuple[tuple[NamedChart, ...], tuple[Diagnostic, ...]]:
    """Return the charts with their names, and a fault for every id that is given twice.

    Charts are counted in the order of the article, each series for itself; a series with one
    chart called other than "Example" goes without a number.
    """
    totals = Counter(chart.kind.series for chart in charts)
    in_series, of_kind = Counter[str](), Counter[str]()
    first: dict[str, ReadChart] = {}
    given = {chart.reading.id for chart in charts}
    taken = set(taken_anchors)
    named, faults = [], []
    for chart in charts:
        series = chart.kind.series
        in_series[series] += 1
        of_kind[chart.kind.name] += 1
        identity = chart.reading.id
        if identity in first:
            faults.append(_double_fault(chart, first[identity]))
            identity = ""
        if not identity:
            identity = free_anchor(f"{chart.kind.name}-{of_kind[chart.kind.name]}", given)
            given.add(identity)
        first.setdefault(identity, chart)
        anchor = free_anchor(f"chart-{identity}", taken)
        taken.add(anchor)
        alone = totals[series] == 1 and series != "Example"
        name = series if alone else f"{series} {in_series[series]}"
        named.append(NamedChart(chart, identity, anchor, name))
    return tuple(named), tuple(faults)


def _double_fault(chart: ReadChart, first: ReadChart) -> Diagnostic:
    return fault(
        "chart-id-double",
        chart.passage.source,
        id_span(chart),
        f'another chart has the id "{chart.reading.id}"',
        hint="give each chart of a write-up an id of its own",
        related=((id_span(first), "the first one"),),
    )


def id_span(chart: ReadChart) -> Span:
    """Return where the chart's id stands, or its opening line when it has none."""
    for line in chart.passage.lines:
        before, colon, value = line.text.partition(":")
        if colon and before.strip() == "id":
            start = len(before) + 1 + len(value) - len(value.lstrip())
            return line.span(start, len(line.text.rstrip()))
    return chart.passage.opening
