"""Syncopation as Longuet-Higgins and Lee (1984) measure it, and plain off-beat onsets."""

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from unit.analysis.groove.rhythms import facts_of, line_of, rhythm_chart, texts_of

from sitegen.analysis.groove.syncopation import find_off_beats, find_syncopations

# How the bars of some meters divide down to sixteenths, in Longuet-Higgins and Lee's trees.
_TREES = {"4/4": [2, 2, 2, 2], "3/4": [3, 2, 2], "6/8": [2, 3, 2], "12/8": [2, 2, 3, 2]}


def _total(pattern: str, meters: str = "4/4") -> int:
    return sum(
        s.strength for s in find_syncopations(line_of(rhythm_chart({"bass": pattern}, meters)))
    )


# Computed by an earlier script of this project from the definition, kept in its notes on music;
# the patterns are Toussaint's (The Geometry of Musical Rhythm, 2013), from memory.
@pytest.mark.parametrize(
    ("name", "pattern", "strength"),
    [
        ("shiko", "x---x-x---x-x---", 2),
        ("son clave", "x--x--x---x-x---", 4),
        ("rumba clave", "x--x---x--x-x---", 5),
        ("soukous", "x--x--x---xx----", 6),
        ("bossa nova", "x--x--x---x--x--", 6),
        ("gahu", "x--x--x---x---x-", 5),
        # By hand from the same weights, in eighths 0 -3 -2 -3 -1 -3 -2 -3.
        ("tresillo", "x--x--x-", 2),
        ("cinquillo", "x-xx-xx-", 2),
        ("habanera", "x--xx-x-", 0),
        ("eighths", "xxxxxxxx", 0),
        ("off-beats", "-x-x-x-x", 4),
    ],
)
def test_timelines_are_as_syncopated_as_the_measure_says(
    name: str, pattern: str, strength: int
) -> None:
    assert (name, _total(pattern)) == (name, strength)


def _weights(tree: list[int]) -> "np.ndarray[tuple[int], np.dtype[np.int64]]":
    """Return the weights of a bar's places from its divisions, level by level."""
    size = int(np.prod(tree))
    weights = np.full(size, -len(tree))
    weights[0] = 0
    for level in range(len(tree), 0, -1):
        step = int(np.prod(tree[level:]))
        weights[::step] = np.where(weights[::step] <= -level, -level, weights[::step])
    weights[0] = 0
    return weights


def _by_numpy(struck: list[bool], tree: list[int]) -> int:
    """Return the measure from its definition: each note, the silence after it, the heaviest."""
    weights = np.tile(_weights(tree), len(struck) // int(np.prod(tree)))
    onsets = np.flatnonzero(struck)
    ends = np.append(onsets[1:], len(struck))[: len(onsets)]
    silences = [weights[a + 1 : b] for a, b in zip(onsets, ends, strict=True)]
    gains = [
        silence.max() - weights[onset]
        for onset, silence in zip(onsets, silences, strict=True)
        if silence.size
    ]
    return int(np.maximum(gains, 0).sum()) if gains else 0


@given(meter=st.sampled_from(sorted(_TREES)), data=st.data())
def test_the_measure_equals_its_definition_over_an_array(meter: str, data: st.DataObject) -> None:
    size = int(np.prod(_TREES[meter]))
    bars = data.draw(st.integers(1, 3))
    struck = data.draw(st.lists(st.booleans(), min_size=size * bars, max_size=size * bars))
    signs = "".join("x" if hit else "-" for hit in struck)
    row = "|".join(signs[n : n + size] for n in range(0, len(signs), size))
    assert _total(row, meter) == _by_numpy(struck, _TREES[meter])


def test_weights_of_the_reference_are_those_of_the_paper() -> None:
    # 4/4 in sixteenths, from memory of Longuet-Higgins and Lee (1984).
    assert _weights([2, 2, 2, 2]).tolist() == [
        *(0, -4, -3, -4, -2, -4, -3, -4),
        *(-1, -4, -3, -4, -2, -4, -3, -4),
    ]


def test_a_rest_and_a_held_note_are_the_same_silence() -> None:
    assert _total("x--x-r--") == _total("x--x----") == 2


def test_a_note_held_over_the_bar_line_is_measured_against_the_downbeat() -> None:
    assert _total("x------x|----x---") == 3
    assert _total("x------x|x---x---") == 0


def test_what_comes_after_the_chart_is_not_silence() -> None:
    assert _total("x------x") == 0


def test_a_meter_of_unlike_groups_weighs_its_groups() -> None:
    # 0 -2 -1 -2 -1 -2 -2 for 2+2+3: 2 over 3 gains 1, 4 over 5 gains 1.
    assert _total("xx-x---", "7/8 (2+2+3)") == 2
    # The same rhythm in 3+2+2 stands on its groups.
    assert _total("xx-x---", "7/8 (3+2+2)") == 0


def test_triplets_count_one_level_under_the_beat() -> None:
    # The second triplet of 1 over 2: -3 against -2.
    assert _total("xx-x-----x--") == 1


def test_a_pickup_and_a_change_of_meter_are_followed_over_the_bar_line() -> None:
    chart = rhythm_chart({"voice": "-x|-x-x-x-x"}, "4/4", pickup=1)
    assert next(s.strength for s in find_syncopations(line_of(chart))) == 3
    assert _total("x------x|--x----", "4/4|7/8") == 3


def test_facts_tell_the_measure_by_bars_and_onsets() -> None:
    facts = facts_of(rhythm_chart({"bass": "x--x--x---x-x---|x---x---x---x---"}))
    texts = {path: fact.text for path, fact in facts.items()}
    assert texts["bass.syncopation"] == "2"
    assert texts["bass.syncopation-by-bar"] == "4 0"
    assert texts["bass.syncopation-per-onset"] == "0.44"
    assert facts["bass.syncopated-share"].value == Fraction(2, 9)
    assert [(p.bar, p.beat) for p in facts["bass.syncopation"].evidence] == [
        (1, Fraction(7, 4)),
        (1, Fraction(5, 2)),
    ]


def test_a_straight_part_has_a_zero_and_no_shares() -> None:
    texts = texts_of(rhythm_chart({"bass": "x-x-x-x-"}))
    assert texts["bass.syncopation"] == "0"
    assert "bass.syncopated-share" not in texts


@pytest.mark.parametrize(
    ("pattern", "meter", "count"),
    [
        ("xxxxxxxx", "4/4", 4),
        ("xxxxxx", "6/8", 4),
        ("xxxxxxx", "2+2+3/8", 4),
        ("xxxxx", "5/4", 0),
        ("x--x--x-", "4/4", 1),
        ("xxxxxxxxxxxx", "4/4", 8),
    ],
)
def test_off_beats_are_what_stands_on_no_felt_beat(pattern: str, meter: str, count: int) -> None:
    assert len(find_off_beats(line_of(rhythm_chart({"bass": pattern}, meter)))) == count
