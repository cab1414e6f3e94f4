"""How much a part plays, and in which rhythm."""

from fractions import Fraction

import pytest
from unit.analysis.groove.rhythms import facts_of, rhythm_chart, sentences_of, texts_of


def test_onsets_are_counted_by_bars_and_by_the_clock() -> None:
    facts = facts_of(rhythm_chart({"bass": "x-x-x-x-|xxxxxxxx"}, tempo=120))
    assert facts["bass.onsets-per-bar"].value == 6
    # Two bars of four quarters at 120 last 4 seconds.
    assert facts["bass.onsets-per-second"].value == 3
    assert facts["bass.onsets-per-second"].text == "3"


def test_without_a_tempo_nothing_is_told_by_the_clock() -> None:
    assert "bass.onsets-per-second" not in facts_of(rhythm_chart({"bass": "x-x-"}))


def test_a_pickup_is_no_bar() -> None:
    facts = facts_of(rhythm_chart({"voice": "xx|x-x-x-x-"}, pickup=1))
    assert facts["voice.onsets-per-bar"].value == 4
    assert facts["pickup"].text == "1 beat"
    assert facts["pickup"].evidence[0].beat == 4


def test_bars_of_other_meters_are_counted_alike() -> None:
    facts = facts_of(rhythm_chart({"bass": "xxxx|xxx"}, "4/4|3/4"))
    assert facts["bass.onsets-per-bar"].value == Fraction(7, 2)
    assert facts["bass.onsets-per-bar"].text == "3.5"
    assert (facts["meters"].text, facts["meter-changes"].value) == ("4/4 3/4", 1)


@pytest.mark.parametrize(
    ("row", "meter", "text", "drawn"),
    [
        ("x--x--x-|x--x--x-|xxxxxxxx", "4/4", "1, the & of 2 and 4", "x- -x -- x-"),
        ("xxxxxxxx", "4/4", "every eighth", "xx xx xx xx"),
        ("x---x---", "4/4", "1 and 3", "x - x -"),
        ("x--xx-", "6/8", "1, 4 and 5", "x - - x x -"),
        ("x-x-x--", "7/8", "1, 3 and 5", "x - x - x - -"),
        (
            "x-xx-xx-xx-x",
            "4/4",
            "1, the li of 1, 2, the li of 2, 3, the li of 3, 4 and the li of 4",
            "x-x x-x x-x x-x",
        ),
    ],
)
def test_the_pattern_is_the_rhythm_that_comes_back(
    row: str, meter: str, text: str, drawn: str
) -> None:
    fact = facts_of(rhythm_chart({"guitar": row}, meter))["guitar.pattern"]
    assert (fact.text, fact.value) == (text, drawn)
    assert {place.bar for place in fact.evidence} == {1}


def test_a_line_that_never_comes_back_has_no_pattern() -> None:
    assert "voice.pattern" not in texts_of(rhythm_chart({"voice": "x-x-x-x-|xx------|--x-x-x-"}))


def test_the_snare_of_an_odd_meter_is_told() -> None:
    chart = rhythm_chart({"SD": "--O---O|--O---O", "BD": "x---x--|x---x--"}, "2+2+3/8")
    assert "The snare is on 3 and 7 in every bar." in sentences_of(chart)
