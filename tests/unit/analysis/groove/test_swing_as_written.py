"""How beats are divided in two on paper, and the feel that the head asks for."""

import pytest
from unit.analysis.groove.rhythms import facts_of, rhythm_chart, texts_of


@pytest.mark.parametrize(
    ("row", "meter", "ratio"),
    [
        ("xxxxxxxx", "4/4", "1:1"),
        ("x-xx-xx-xx-x", "4/4", "2:1"),
        ("x--xx--xx--xx--x", "4/4", "3:1"),
        ("xx--xx--xx--xx--", "4/4", "1:3"),
        ("x-xx-xx-xx-x", "12/8", "2:1"),
    ],
)
def test_the_ratio_is_that_of_the_two_notes_of_a_beat(row: str, meter: str, ratio: str) -> None:
    fact = facts_of(rhythm_chart({"keys": row}, meter))["keys.swing-ratio"]
    assert (fact.text, fact.unit, len(fact.evidence)) == (ratio, "as written", 4)


@pytest.mark.parametrize(
    ("row", "meter"),
    [
        ("x-x-x-x-", "4/4"),  # nothing is divided
        ("xxx-x-x-", "4/4"),  # one beat is no habit
        ("xx--x--xx-x-x---", "4/4"),  # no ratio rules
        ("x-xx-x", "6/8"),  # a quarter and an eighth are the meter's own
        ("xx-xx-x", "2+2+3/8"),
        ("xxxxxxxxxxxxxxxx", "4/4"),  # in four
    ],
)
def test_other_beats_have_no_ratio(row: str, meter: str) -> None:
    assert "keys.swing-ratio" not in texts_of(rhythm_chart({"keys": row}, meter))


def test_a_feel_says_how_straight_eighths_are_played() -> None:
    swing = facts_of(rhythm_chart({"keys": "xxxxxxxx"}, feel="swing"))["feel"]
    assert swing.text == "swing"
    assert "near 2:1" in swing.sentence
    shuffle = facts_of(rhythm_chart({"keys": "xxxxxxxx"}, feel="shuffle"))["feel"]
    assert "2:1, as the outer notes of a triplet" in shuffle.sentence


def test_what_is_written_out_is_not_told_to_be_swung_again() -> None:
    triplets = facts_of(rhythm_chart({"keys": "x-xx-xx-xx-x"}, feel="swing"))
    assert triplets["feel"].sentence == ""
    assert "feel" not in facts_of(rhythm_chart({"keys": "xxxxxxxx"}))
