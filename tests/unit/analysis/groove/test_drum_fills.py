"""The groove bar, what other bars change, and fills."""

from fractions import Fraction

import pytest
from unit.analysis.groove.rhythms import facts_of, rhythm_chart, sentences_of, texts_of

HAT, SNARE, KICK = "xxxxxxxx", "--x---x-", "x---x---"


def _four(**last: str) -> dict[str, str]:
    """Return three bars of a rock groove and a fourth that differs."""
    groove = {"HH": HAT, "SD": SNARE, "BD": KICK}
    bars = {drum: "|".join([row] * 3) for drum, row in groove.items()}
    empty = "--------|" * 3
    return {
        drum: f"{bars.get(drum, empty[:-1])}|{last.get(drum, groove.get(drum, '--------'))}"
        for drum in dict.fromkeys([*groove, *last])
    }


def test_the_groove_is_the_bar_that_comes_back() -> None:
    facts = facts_of(rhythm_chart(_four(SD="--x-x-x-")))
    assert facts["drums.groove"].text == "bar 1"
    assert facts["drums.groove-bars"].value == 3
    assert [place.bar for place in facts["drums.groove-bars"].evidence] == [1, 2, 3]
    assert facts["drums.bar-4"].text == "adds the snare on 3"
    assert facts["drums.bar-4"].sentence == "Bar 4 adds the snare on 3."


def test_two_bars_that_take_turns_are_one_groove() -> None:
    kick = "x---x---|x--x----|x---x---|x--x----"
    texts = texts_of(rhythm_chart({"HH": "|".join([HAT] * 4), "BD": kick}))
    assert texts["drums.groove"] == "bars 1 and 2"
    assert texts["drums.groove-bars"] == "4"
    assert "drums.bar-2" not in texts


def test_the_likeness_of_bars_is_dice_s_coefficient() -> None:
    # L. R. Dice, Ecology 26 (1945), from memory: twice what is shared by the sum of both.
    value = facts_of(rhythm_chart({"BD": "x-x-x-x-|x-x-----"}))["drums.bar-likeness"].value
    assert value == Fraction(2 * 2, 4 + 2)


def test_a_crash_on_1_makes_no_other_bar() -> None:
    rows = {"CC": "x-------|--------", "HH": f"-xxxxxxx|{HAT}", "BD": f"{KICK}|{KICK}"}
    texts = texts_of(rhythm_chart(rows))
    assert texts["drums.groove-bars"] == "2"


def test_a_fill_tells_what_stops_and_what_comes() -> None:
    rows = _four(HH="xxxx----", T1="----xx--", FT="------xx", SD="--x-----")
    facts = facts_of(rhythm_chart(rows))
    assert facts["drums.fill"].text == "bar 4"
    assert facts["drums.fill"].sentence == (
        "Bar 4 is the fill: the hi-hat stops on 3, toms fill 3 and 4, "
        "down from the high tom to the floor tom."
    )
    assert facts["drums.bar-4"].sentence == ""
    assert [str(place.beat) for place in facts["drums.fill"].evidence] == ["3", "7/2", "4", "9/2"]


@pytest.mark.parametrize(
    "last",
    [
        {"T1": "------xx"},  # the hi-hat goes on
        {"HH": "xxxx----"},  # nothing comes for it
        {"SD": "--x-x-x-", "HH": "xxxx-xxx"},  # one hit more
    ],
)
def test_a_bar_that_only_varies_is_no_fill(last: dict[str, str]) -> None:
    assert "drums.fill" not in texts_of(rhythm_chart(_four(**last)))


def test_a_snare_fill_through_the_bar() -> None:
    rows = _four(HH="--------", SD="xxxxxxxx")
    told = "Bar 4 is the fill: the hi-hat is silent, the snare fills the bar."
    assert told in sentences_of(rhythm_chart(rows))


def test_a_fill_without_a_groove_to_compare_with() -> None:
    rows = {
        "CC": "----------------|x-------",
        "HH": "x-x-x-x---------|--x-x-x-",
        "T1": "--------xx------|--------",
        "FT": "------------xx--|--------",
        "SD": "----------------|--x---x-",
    }
    told = (
        "Bar 1 is the fill: the hi-hat stops after the & of 2, toms fill 3 and 4, "
        "down from the high tom to the floor tom."
    )
    assert told in sentences_of(rhythm_chart(rows))


def test_a_groove_on_the_toms_is_no_fill() -> None:
    rows = {"FT": "x-xxx-xx|x-xxx-xx|x-xxx-xx", "BD": "x---x---|x---x---|x---x---"}
    assert "drums.fill" not in texts_of(rhythm_chart(rows))


def test_a_hi_hat_that_opens_once_is_a_change() -> None:
    told = sentences_of(rhythm_chart(_four(HH="xxxxxxxo")))
    assert told == ["Bar 4 opens the hi-hat on the & of 4."]


def test_drums_that_break_off() -> None:
    rows = _four(HH="xxxx----", SD="--x-----", BD="x---x---")
    assert sentences_of(rhythm_chart(rows)) == ["Bar 4 breaks off after 3."]


def test_a_bar_that_leaves_out_a_drum() -> None:
    rows = _four(SD="--------", BD="x-------")
    told = "Bar 4 leaves out the snare on 2 and 4 and the bass drum on 3."
    assert sentences_of(rhythm_chart(rows)) == [told]


def test_many_changed_bars_are_looked_up_and_not_told() -> None:
    kick = "x-------|x-------|x-x-----|x---x---|x-----x-"
    facts = facts_of(rhythm_chart({"HH": "|".join([HAT] * 5), "BD": kick}))
    changes = [facts[f"drums.bar-{n}"] for n in (3, 4, 5)]
    assert [fact.text for fact in changes] == [
        "adds the bass drum on 2",
        "adds the bass drum on 3",
        "adds the bass drum on 4",
    ]
    assert {fact.sentence for fact in changes} == {""}
