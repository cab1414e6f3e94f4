"""Groups of an odd meter as the drums mark them."""

import pytest
from unit.analysis.groove.rhythms import facts_of, rhythm_chart, texts_of


def test_drums_that_mark_the_written_groups() -> None:
    rows = {"BD": "x---x--|x---x--", "SD": "--x---x|--x---x"}
    fact = facts_of(rhythm_chart(rows, "2+2+3/8"))["drums.grouping"]
    assert fact.text == "2+2+3"
    assert fact.sentence == "The drums mark the groups: a hit on 1, 3 and 5 in every bar."


def test_drums_that_group_otherwise_than_it_is_written() -> None:
    rows = {"BD": "x----x-|x----x-", "SD": "---x---|---x---"}
    fact = facts_of(rhythm_chart(rows, "2+2+3/8"))["drums.grouping"]
    assert fact.text == "3+2+2"
    assert fact.sentence == (
        "The drums group the bar 3+2+2, with a hit on 1, 4 and 6; it is written 2+2+3."
    )


@pytest.mark.parametrize(
    ("rows", "meter"),
    [
        ({"BD": "xxxxxxx"}, "2+2+3/8"),  # every order is marked
        ({"BD": "x------"}, "2+2+3/8"),  # none is
        ({"BD": "x---x--|x------"}, "2+2+3/8"),  # not in every bar
        ({"HH": "x-x-x--"}, "2+2+3/8"),  # a cymbal alone marks no groups
        ({"BD": "x---", "SD": "--x-"}, "4/4"),
    ],
)
def test_other_drums_mark_no_groups(rows: dict[str, str], meter: str) -> None:
    assert "drums.grouping" not in texts_of(rhythm_chart(rows, meter))
