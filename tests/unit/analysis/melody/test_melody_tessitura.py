"""Where a line lies."""

from collections import Counter
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from unit.analysis.melody.tunes import AMAZING_GRACE, TWINKLE, bars_of, facts_of

from sitegen.analysis.melody.tessitura import middle_half


@pytest.mark.parametrize(
    ("times", "middle"),
    [
        # The middle half of eight equal times leaves out two at either end.
        ({60: 1, 62: 1, 64: 1, 65: 1, 67: 1, 69: 1, 71: 1, 72: 1}, (64, 69)),
        ({60: 8, 72: 1}, (60, 60)),
        ({60: 2, 64: 4, 67: 2}, (64, 64)),
        ({60: 3, 64: 2, 67: 3}, (60, 67)),
    ],
)
def test_a_quarter_of_the_time_lies_on_either_side(
    times: dict[int, int], middle: tuple[int, int]
) -> None:
    assert middle_half(Counter(times)) == middle


@given(st.dictionaries(st.integers(36, 96), st.integers(1, 30), min_size=1))
def test_no_more_than_a_quarter_is_left_out_and_no_pitch_too_many(times: dict[int, int]) -> None:
    low, high = middle_half(Counter(times))
    total = sum(times.values())
    assert 4 * sum(time for midi, time in times.items() if midi < low) <= total
    assert 4 * sum(time for midi, time in times.items() if midi > high) <= total
    assert 4 * sum(time for midi, time in times.items() if midi <= low) > total
    assert 4 * sum(time for midi, time in times.items() if midi >= high) > total


def test_tessitura_weighs_notes_by_their_length() -> None:
    # By hand: of 48 quarters C, D, E and F have 8 each, G has 12 and A 4.
    found = facts_of(TWINKLE)
    assert found["voice.tessitura"].text == "D4 to G4"
    assert found["voice.most-heard"].text == "G4"
    assert found["voice.most-heard-share"].value == Fraction(12, 48)


def test_the_most_heard_pitch_is_told_where_it_fills_half_the_time() -> None:
    found = facts_of("""
        count | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
        voice | E4 E4 F4 E4 | E4    D4 E4 | E4          |
    """)
    told = "The voice spends more than half of its sounding time on E4."
    assert found["voice.most-heard"].sentence == told
    assert found["voice.most-heard-share"].value == Fraction(10, 12)


def test_two_pitches_heard_alike_are_neither_the_most_heard() -> None:
    found = facts_of("""
        count | 1  2  3  4  |
        voice | C4    D4    |
    """)
    assert "voice.most-heard" not in found


def test_the_climax_is_the_highest_note_in_one_place() -> None:
    text = """
        count | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
        voice | C4 D4 E4 D4 | E4 F4 G4 F4 | G4 A4 A4 G4 | F4 D4 C4    |
    """
    found = facts_of(text)
    assert (found["voice.climax"].text, bars_of(found["voice.climax"])) == ("bar 3", [3, 3])
    assert found["voice.climax-position"].value == Fraction(9, 16)
    assert found["voice.climax"].sentence == (
        "The voice reaches its highest note, A4, only in bar 3."
    )


def test_a_highest_note_reached_twice_is_no_climax() -> None:
    assert "voice.climax" not in facts_of(AMAZING_GRACE)


def test_a_line_on_one_pitch_has_no_tessitura() -> None:
    found = facts_of("""
        count | 1  2  3  4  |
        voice | C4 C4 C4 C4 |
    """)
    assert not {"voice.tessitura", "voice.most-heard", "voice.climax"} & set(found)
