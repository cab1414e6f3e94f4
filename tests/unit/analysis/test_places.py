"""Places in a chart in words."""

from fractions import Fraction

import pytest

from sitegen.analysis.places import bars_said, listed
from sitegen.analysis.reading import Place


@pytest.mark.parametrize(
    ("bars", "said"),
    [
        ([], ""),
        ([3], "bar 3"),
        ([2, 1], "bars 1 and 2"),
        ([1, 2, 3], "bars 1 to 3"),
        ([1, 3, 5, 6, 7, 8], "bars 1, 3 and 5 to 8"),
        ([1, 1, 1], "bar 1"),
        ([0], "the pickup"),
        ([0, 1, 2], "the pickup and bars 1 and 2"),
        ([0, 1], "the pickup and bar 1"),
    ],
)
def test_bars_are_said_in_order_and_runs_drawn_together(bars: list[int], said: str) -> None:
    assert bars_said(bars) == said


def test_places_count_by_their_bars() -> None:
    assert bars_said([Place(4, Fraction(1)), Place(4, Fraction(3))]) == "bar 4"


def test_a_list_in_a_sentence() -> None:
    assert [listed(words) for words in ([], ["a"], ["a", "b"], ["a", "b", "c"])] == [
        "",
        "a",
        "a and b",
        "a, b and c",
    ]
