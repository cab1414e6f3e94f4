"""Charts are counted in the order of the article, and each has an id and an anchor of its own."""

from collections.abc import Callable, Sequence
from dataclasses import replace

import pytest

from sitegen.charts.defaults import SongDefaults
from sitegen.kinds.kind import ChartKind
from sitegen.site.numbering import NamedChart, ReadChart, name_charts
from sitegen.source import Passage

Charts = Callable[..., list[ReadChart]]


@pytest.fixture
def charts(claps: ChartKind) -> Charts:
    """Return what makes charts of ids, "" for a chart without one; `P` begins a plan's."""

    def make(*ids: str) -> list[ReadChart]:
        plan = replace(claps, name="form", series="Plan")
        return [_read(plan if text.startswith("P") else claps, text.lstrip("P")) for text in ids]

    return make


def _read(kind: ChartKind, identity: str) -> ReadChart:
    passage = Passage.of(f"x x\nid:  {identity}" if identity else "x x")
    return ReadChart(kind, passage, kind.read(passage, SongDefaults()))


def names(charts: Sequence[ReadChart], *taken: str) -> list[tuple[str, str, str]]:
    named, faults = name_charts(charts, frozenset(taken))
    assert faults == ()
    return [(one.id, one.anchor, one.name) for one in named]


def named_only(charts: Sequence[ReadChart]) -> list[NamedChart]:
    return list(name_charts(charts, frozenset())[0])


def test_examples_are_counted_in_order(charts: Charts) -> None:
    assert names(charts("b", "a")) == [
        ("b", "chart-b", "Example 1"),
        ("a", "chart-a", "Example 2"),
    ]


def test_a_plan_is_counted_for_itself_and_alone_has_no_number(charts: Charts) -> None:
    assert [name for *_, name in names(charts("a", "Pp", "b"))] == [
        "Example 1",
        "Plan",
        "Example 2",
    ]
    assert [name for *_, name in names(charts("Pp", "Pq"))] == ["Plan 1", "Plan 2"]
    assert [name for *_, name in names(charts("a"))] == ["Example 1"]


def test_a_missing_id_is_made_of_kind_and_number(charts: Charts) -> None:
    assert [one for one, *_ in names(charts("", "P", "a", ""))] == [
        "claps-1",
        "form-1",
        "a",
        "claps-3",
    ]


def test_a_made_id_gives_way_to_one_that_the_author_typed(charts: Charts) -> None:
    assert [one for one, *_ in names(charts("", "claps-1"))] == ["claps-1-2", "claps-1"]


def test_an_anchor_gives_way_to_a_heading(charts: Charts) -> None:
    ((_, anchor, _),) = names(charts("a"), "chart-a")

    assert anchor == "chart-a-2"


def test_an_id_given_twice_is_told_with_the_first_one(charts: Charts) -> None:
    named, faults = name_charts(charts("a", "b", "a", "a"), frozenset())

    assert [fault.code for fault in faults] == ["chart-id-double", "chart-id-double"]
    assert (faults[0].span.line, faults[0].span.column, faults[0].span.end_column) == (2, 6, 7)
    assert len(faults[0].related) == 1
    assert len({one.id for one in named}) == len({one.anchor for one in named}) == 4


def test_a_chart_without_an_id_in_its_head_is_marked_at_its_opening(charts: Charts) -> None:
    (one,) = named_only(charts(""))

    assert one.chart.passage.opening.line == 1
