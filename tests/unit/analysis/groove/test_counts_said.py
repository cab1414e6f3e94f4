"""Counts and note values as a sentence says them."""

from fractions import Fraction

import pytest

from sitegen.analysis.groove.grid import meter_grid
from sitegen.analysis.groove.wording import said_count, said_counts, said_number
from sitegen.score.meter import Meter


@pytest.mark.parametrize(
    ("beat", "said"),
    [
        ("1", "1"),
        ("5/2", "the & of 2"),
        ("13/4", "the e of 3"),
        ("19/4", "the a of 4"),
        ("4/3", "the la of 1"),
        ("5/3", "the li of 1"),
        ("16/5", "3 1/5"),
    ],
)
def test_a_count_is_said_with_the_marks_of_a_count_row(beat: str, said: str) -> None:
    assert said_count(Fraction(beat)) == said


def test_counts_are_those_of_the_meter_s_unit() -> None:
    assert said_counts(meter_grid(Meter.read("6/8"), 2), [0, 6, 7]) == "1, 4 and the & of 4"


@pytest.mark.parametrize(("number", "said"), [("5", "5"), ("15/2", "7.5"), ("7/3", "2.3")])
def test_numbers_have_one_decimal_at_most(number: str, said: str) -> None:
    assert said_number(Fraction(number)) == said


def test_the_places_of_a_meter() -> None:
    common, compound = meter_grid(Meter.read("4/4"), 4), meter_grid(Meter.read("12/8"), 2)
    assert (common.beats, common.strong, common.swung) == ((0, 4, 8, 12), (0, 8), 4)
    assert (compound.beats, compound.swung) == ((0, 6, 12, 18), 6)
    assert meter_grid(Meter.read("2+2+3/8"), 2).beats == (0, 4, 8)
    assert [common.weight(offset) for offset in (0, 8, 4, 2, 1)] == [0, -1, -2, -3, -4]
