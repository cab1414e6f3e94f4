"""Parsons code and Huron's contour types."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from unit.analysis.melody.tunes import MARY, ODE_TO_JOY, TWINKLE, facts_of

from sitegen.analysis.melody.contour import contour_type, parsons_code

PITCHES = st.lists(st.integers(30, 90), min_size=3, max_size=40)


@pytest.mark.parametrize(
    ("tune", "code"),
    [
        # D. Parsons, The Directory of Tunes and Musical Themes, 1975.
        (TWINKLE, "*rururddrdrdrd"),
        (MARY, "*dduurrdrruurd"),
        # By hand.
        (ODE_TO_JOY, "*ruurddddruurdr"),
    ],
)
def test_the_code_of_a_tune(tune: str, code: str) -> None:
    assert facts_of(tune)["voice.parsons"].text.startswith(code)


def test_a_long_code_is_cut_in_print_only() -> None:
    bars = "\n\n".join(
        "count | 1  2  3  4  | 1  2  3  4  |\nvoice | C4 D4 E4 D4 | C4 D4 E4 D4 |"
        for _ in range(10)
    )
    fact = facts_of(bars)["voice.parsons"]
    assert isinstance(fact.value, str)
    assert (len(fact.value), len(fact.text), fact.text[-1]) == (80, 65, "…")


@pytest.mark.parametrize(
    ("pitches", "kind"),
    [
        ([60, 67, 64, 60], "convex"),
        ([67, 60, 62, 67], "concave"),
        ([60, 64, 67], "ascending"),
        ([67, 64, 60], "descending"),
        ([60, 62, 58, 60], "horizontal"),
        ([60, 60, 60, 64], "horizontal-ascending"),
        ([60, 60, 60, 55], "horizontal-descending"),
        ([60, 64, 64], "ascending-horizontal"),
        ([64, 60, 60], "descending-horizontal"),
        # A mean a third of a semitone off is level, one half a semitone off is not.
        ([60, 60, 60, 61, 60], "horizontal"),
        ([60, 60, 61, 60], "convex"),
    ],
)
def test_first_middle_and_last_make_the_type(pitches: list[int], kind: str) -> None:
    assert contour_type(pitches) == kind


def test_two_notes_have_no_type() -> None:
    assert contour_type([60, 64]) == ""


@given(PITCHES)
def test_turned_upside_down_a_line_has_the_opposite_type(pitches: list[int]) -> None:
    turned = [-pitch for pitch in pitches]
    words = {"convex": "concave", "concave": "convex", "ascending": "descending"}
    opposite = words | {"descending": "ascending", "horizontal": "horizontal"}
    kinds = contour_type(pitches).split("-")
    assert contour_type(turned) == "-".join(opposite[kind] for kind in kinds)
    up_and_down = str.maketrans("ud", "du")
    assert parsons_code(turned) == parsons_code(pitches).translate(up_and_down)


@given(PITCHES, st.integers(-24, 24))
def test_moved_up_or_down_a_line_keeps_its_type(pitches: list[int], by: int) -> None:
    moved = [pitch + by for pitch in pitches]
    assert contour_type(moved) == contour_type(pitches)


def test_phrases_have_their_own_types() -> None:
    fact = facts_of(TWINKLE)["voice.phrase-contours"]
    assert fact.text == "2 ascending, 4 descending"
    assert [place.bar for place in fact.evidence] == [1, 3, 5, 7, 9, 11]


def test_phrases_of_one_shape_are_told() -> None:
    text = """
        count | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
        voice | C4 E4 D4 r  | D4 F4 C4 r  | E4 G4 D4 r  |
        words | la la la.   | la la la.   | la la la.   |
    """
    sentence = facts_of(text)["voice.phrase-contours"].sentence
    assert sentence == "All three phrases of the voice rise and fall back."
