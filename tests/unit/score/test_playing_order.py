"""The order in which bars are played."""

import pytest
from unit.charts.reading_aloud import changes, chart_of, read

from sitegen.score.playing_order import bars_as_played


@pytest.mark.parametrize(
    ("text", "order"),
    [
        ("| C | F | G |", "0 1 2"),
        ("|: C | F :| G |", "0 1 0 1 2"),
        ("| C | F :| G |", "0 1 0 1 2"),
        ("|: C :|: F | G :|", "0 0 1 2 1 2"),
        ("|: C | (1.) F :| (2.) G | Am |", "0 1 0 2 3"),
        ("|: C | (1.2.) F :| (3.) G | Am |", "0 1 0 1 0 2 3"),
        ("|: C | (1.–3.) F :| (4.) G |", "0 1 0 1 0 1 0 2"),
        ("|: C | (1.) F :| (2.) G :| Am |", "0 1 0 2 3"),
        ("|: C | (1.) F | G :| (2.) Am | Em | D |", "0 1 2 0 3 4 5"),
        ("|: C | (1.) F :| (2.) G |: Am :|", "0 1 0 2 3 3"),
        ("|: C | (1.) F :|", "0 1 0"),
    ],
)
def test_repeats_and_endings_are_followed(text: str, order: str) -> None:
    chart = chart_of(changes(text))
    assert bars_as_played(chart.bars) == tuple(map(int, order.split()))


def test_a_repeat_from_the_start_leaves_the_pickup_out() -> None:
    chart = chart_of(
        read("""
        meter: 3/4
        count | 3   | 1   2   3   | 1   2   :|
        chord |     | C           | G        |
        voice | G4  | E4  E4  E4  | D4  D4   |
        """)
    )
    assert bars_as_played(chart.bars) == (0, 1, 2, 1, 2)


def test_what_would_go_on_for_long_is_cut() -> None:
    many = ".".join(map(str, range(1, 10)))
    text = "|: " + " | ".join(["C"] * 200) + f" | ({many}.) F :|"
    assert len(bars_as_played(chart_of(changes(text)).bars)) == 1000
