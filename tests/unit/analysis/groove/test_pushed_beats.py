"""Onsets ahead of a strong beat and held over it."""

import pytest
from unit.analysis.groove.rhythms import facts_of, line_of, rhythm_chart, texts_of

from sitegen.analysis.groove.pushes import find_pushes


def _pushed(row: str, meters: str = "4/4") -> list[int | None]:
    line = line_of(rhythm_chart({"voice": row}, meters))
    return [push.downbeat for push in find_pushes(line)]


@pytest.mark.parametrize(
    ("row", "meter", "pushed"),
    [
        ("x-x-x--x|--x-x---", "4/4", [2]),  # an eighth ahead of the downbeat
        ("x--x--x-", "4/4", [None]),  # an eighth ahead of 3
        ("x----x--", "4/4", []),  # 4 is no strong beat
        ("x------x|x-------", "4/4", []),  # struck again on the beat
        ("x------x|r---x---", "4/4", []),  # not held
        ("x-----x-|----x---", "4/4", []),  # on the beat
        ("x--------------x|----x-----------", "4/4", [2]),  # a sixteenth
        ("x----------x|---x--------", "4/4", [2]),  # the last of a triplet
        ("x----x|--x---", "3/4", [2]),
        ("x----x|--x---", "6/8", [2]),
        ("x-----x|--x----", "2+2+3/8", [2]),
        ("x------x|--x----", "4/4|7/8", [2]),
    ],
)
def test_a_push_is_early_off_the_beat_and_held(
    row: str, meter: str, pushed: list[int | None]
) -> None:
    assert _pushed(row, meter) == pushed


def test_pushed_downbeats_are_told_when_there_are_two() -> None:
    facts = facts_of(rhythm_chart({"voice": "x------x|--x----x|--x-----"}))
    assert facts["voice.pushes"].value == 2
    assert facts["voice.pushed-downbeats"].text == "bars 2 and 3"
    sentence = "The voice pushes the downbeat of bars 2 and 3 by an eighth."
    assert facts["voice.pushed-downbeats"].sentence == sentence
    once = facts_of(rhythm_chart({"voice": "x------x|--x-----"}))
    assert once["voice.pushed-downbeats"].sentence == ""


def test_a_part_without_pushes_has_no_such_fact() -> None:
    assert "voice.pushes" not in texts_of(rhythm_chart({"voice": "x-x-x-x-"}))
