"""Patterns with a name."""

from itertools import accumulate

import pytest
from unit.analysis.groove.rhythms import facts_of, rhythm_chart, texts_of

from sitegen.analysis.groove.timelines import TIMELINES

# The pulses between onsets as Toussaint lists them (The Geometry of Musical Rhythm, 2013), from
# memory.
_INTERVALS = {
    "tresillo": "332",
    "cinquillo": "21212",
    "habanera": "3122",
    "3-2 son clave": "33424",
    "3-2 rumba clave": "34324",
    "soukous": "33415",
    "bossa nova clave": "33433",
    "gahu": "33442",
    "bembé": "2212221",
}


@pytest.mark.parametrize("name", _INTERVALS)
def test_a_timeline_has_its_published_intervals(name: str) -> None:
    intervals = [int(digit) for digit in _INTERVALS[name]]
    pulses, struck = TIMELINES[name]
    assert pulses == sum(intervals)
    assert struck == (0, *accumulate(intervals[:-1]))


@pytest.mark.parametrize("clave", ["son clave", "rumba clave"])
def test_the_two_sides_of_a_clave_are_exchanged(clave: str) -> None:
    (_, three), (_, two) = TIMELINES[f"3-2 {clave}"], TIMELINES[f"2-3 {clave}"]
    assert sorted((onset + 8) % 16 for onset in three) == list(two)


@pytest.mark.parametrize(
    ("row", "meter", "name"),
    [
        ("x--x--x-|x--x--x-", "4/4", "tresillo"),  # in eighths
        ("x--x--x-x--x--x-", "4/4", "tresillo"),  # in sixteenths, twice a bar
        ("x--x--x-", "2/4", "tresillo"),
        ("x--x--x---x-x---", "4/4", "3-2 son clave"),  # in sixteenths
        ("x--x--x-|--x-x---", "4/4", "3-2 son clave"),  # in eighths over two bars
        ("--x-x---|x--x--x-", "4/4", "2-3 son clave"),
        ("x--x--x-|--x--x--", "4/4", "bossa nova clave"),
        ("x-x-xx-x-x-x", "12/8", "bembé"),
    ],
)
def test_a_part_that_plays_a_timeline_is_named(row: str, meter: str, name: str) -> None:
    assert texts_of(rhythm_chart({"keys": row}, meter))["keys.timeline"] == name


@pytest.mark.parametrize(
    "row", ["x--x--x-|x--x--xx", "x--x--x-|--x-x---|x--x--x-", "x-x-x-x-", "x--x--xr|xxxxxxxx"]
)
def test_a_part_that_also_plays_something_else_is_not(row: str) -> None:
    assert "keys.timeline" not in texts_of(rhythm_chart({"keys": row}))


def test_the_well_known_ones_are_told() -> None:
    tresillo = facts_of(rhythm_chart({"bass": "x--x--x-"}))["bass.timeline"]
    assert tresillo.sentence == "The bass plays the tresillo, 3 + 3 + 2 eighths."
    clave = facts_of(rhythm_chart({"SS": "x--x--x-|--x-x---"}))["drums.side-stick-timeline"]
    assert clave.sentence == "The side stick plays the 3-2 son clave."
    assert facts_of(rhythm_chart({"bass": "x--x--x---x---x-"}))["bass.timeline"].sentence == ""
