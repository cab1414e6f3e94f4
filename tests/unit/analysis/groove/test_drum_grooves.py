"""Backbeat, bass drum, cymbals and touches of a drum part."""

import pytest
from unit.analysis.groove.rhythms import facts_of, rhythm_chart, sentences_of, texts_of

from sitegen.analysis.groove.kit import CRASHES, KEEPERS, KICK, SNARES, TOMS
from sitegen.score.chart import Feel
from sitegen.score.drums import KIT


def test_the_drums_are_those_of_general_midi() -> None:
    # General MIDI Level 1 percussion key numbers, from memory.
    midi = {label: KIT[label].midi for label in (KICK, *SNARES, *TOMS, *KEEPERS, *CRASHES)}
    assert midi == {
        "BD": 36,
        "SD": 38,
        "SS": 37,
        "HC": 39,
        "T1": 48,
        "T2": 47,
        "FT": 43,
        "HH": 42,
        "RC": 51,
        "RB": 53,
        "CC": 49,
        "C2": 57,
        "CH": 52,
        "SC": 55,
    }


# Trade usage, common practice, no source.
@pytest.mark.parametrize(
    ("snare", "meter", "text"),
    [
        ("--x---x-", "4/4", "2 and 4"),
        ("--X--gX-", "4/4", "2 and 4"),
        ("--xx--x-", "4/4", "2 and 4"),
        ("----x---", "4/4", "3, half-time"),
        ("-x-x-x-x", "4/4", "every off-beat, double-time"),
        ("---x--", "6/8", "4"),
        ("---x-----x--", "12/8", "4 and 10"),
        ("-x", "2/4", "2"),
    ],
)
def test_the_backbeat_is_the_snare_on_every_second_beat(snare: str, meter: str, text: str) -> None:
    chart = rhythm_chart({"SD": f"{snare}|{snare}"}, meter)
    assert texts_of(chart)["drums.backbeat"] == text


@pytest.mark.parametrize(
    ("snare", "meter"),
    [("x-x-x-x-", "4/4"), ("--g---g-", "4/4"), ("--x---x", "2+2+3/8"), ("------x-", "4/4")],
)
def test_other_snares_are_no_backbeat(snare: str, meter: str) -> None:
    assert "drums.backbeat" not in texts_of(rhythm_chart({"SD": snare}, meter))


def test_a_side_stick_and_a_clap_can_be_the_backbeat() -> None:
    for drum in ("SS", "HC"):
        assert texts_of(rhythm_chart({drum: "--x---x-"}))["drums.backbeat"] == "2 and 4"


def test_only_an_unusual_backbeat_is_told() -> None:
    assert sentences_of(rhythm_chart({"SD": "--x---x-|--x---x-"})) == []
    told = sentences_of(rhythm_chart({"SD": "----x---|----x---|--x---x-"}))
    assert "The snare leaves 2 and 4 for 3, a half-time backbeat, in bars 1 and 2." in told


def test_four_on_the_floor_is_the_bass_drum_on_all_beats_and_no_more() -> None:
    facts = facts_of(rhythm_chart({"BD": "x-x-x-x-|x-x-x-x-|x-x-x-xx"}))
    fact = facts["drums.four-on-the-floor"]
    assert (fact.value, len(fact.evidence)) == (2, 8)
    assert fact.sentence == "Four on the floor in bars 1 and 2: the bass drum is on every beat."
    assert "drums.four-on-the-floor" not in texts_of(rhythm_chart({"BD": "x-x-x-"}, "3/4"))


@pytest.mark.parametrize(
    ("row", "feel", "text"),
    [
        ("x-x-x-x-", "straight", "quarters"),
        ("xxxxxxxx", "straight", "eighths"),
        ("xxxxxxxxxxxxxxxx", "straight", "sixteenths"),
        ("xxxxxxxxxxxx", "straight", "eighth triplets"),
        ("x-xx-xx-xx-x", "straight", "shuffled eighths"),
        ("x--x-xx--x-x", "straight", "swing pattern"),
        ("x-xxx-xx", "swing", "swing pattern"),
        ("-x-x-x-x", "straight", "off-beat eighths"),
    ],
)
def test_the_cymbal_that_keeps_time_has_a_run(row: str, feel: Feel, text: str) -> None:
    for drum, path in (("HH", "hi-hat"), ("RC", "ride")):
        assert texts_of(rhythm_chart({drum: row}, feel=feel))[f"drums.{path}"] == text


def test_straight_eighths_on_2_and_4_are_no_swing_pattern() -> None:
    assert "drums.ride" not in texts_of(rhythm_chart({"RC": "x-xxx-xx"}))


def test_a_crash_stands_in_for_a_stroke_of_the_hi_hat() -> None:
    texts = texts_of(rhythm_chart({"CC": "x-------", "HH": "-xxxxxxx"}))
    assert texts["drums.hi-hat"] == "eighths"


def test_a_hi_hat_that_opens_in_the_same_place_is_told() -> None:
    facts = facts_of(rhythm_chart({"HH": "xxxxxxxo|xxxxxxxo"}))
    assert facts["drums.open-hats"].value == 2
    assert facts["drums.open-hats"].sentence == "The hi-hat opens on the & of 4 in every bar."
    assert facts_of(rhythm_chart({"HH": "xxxxxxxo|xxxoxxxx"}))["drums.open-hats"].sentence == ""


def test_ghost_notes_are_counted_and_placed() -> None:
    facts = facts_of(rhythm_chart({"SD": "--O-g-Og|--O-g-Og|--O---O-"}))
    assert (facts["drums.ghost-notes"].value, facts["drums.accents"].value) == (4, 6)
    sentence = "The snare has ghost notes on 3 and the & of 4 in bars 1 and 2."
    assert facts["drums.ghost-notes"].sentence == sentence
    assert facts["drums.snare-pattern"].text == "2 and 4"


def test_the_kick_has_its_own_rhythm() -> None:
    facts = facts_of(rhythm_chart({"BD": "x--x--x-|x--x--x-", "HH": "xxxxxxxx|xxxxxxxx"}))
    assert facts["drums.kick-pattern"].text == "1, the & of 2 and 4"
    assert facts["drums.kick-syncopation"].value == 2
    assert facts["drums.kick-timeline"].text == "tresillo"
    assert "drums.syncopation" not in facts
