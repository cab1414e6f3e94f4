"""What it costs to put one chord in the place of another."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st
from unit.harmony.progressions.bars_aloud import SYMBOLS
from unit.harmony.progressions.test_chord_cores import core_of

from sitegen.harmony.progressions import chord_cost
from sitegen.harmony.progressions.cores import Core
from sitegen.harmony.progressions.substitution import EXTENSION, FARTHEST, KINDS, costs_of_exchange

CHORDS = st.sampled_from([core_of(symbol) for symbol in SYMBOLS if symbol != "N.C."])


def cost(one: str, other: str) -> int:
    return chord_cost(core_of(one), core_of(other))


@pytest.mark.parametrize(
    ("one", "other", "what"),
    [
        ("C", "Am", "relative: Riemann, after Cohn, Audacious Euphony (2012), from memory"),
        ("C", "Em", "leading-tone exchange: the same"),
        ("C", "Cm", "parallel: the same"),
        ("F", "Dm7", "ii for IV: Kostka and Payne, Tonal Harmony, from memory"),
        ("G7", "Db7", "tritone substitute: Levine, The Jazz Theory Book (1995), from memory"),
        ("G7", "Bdim", "vii° for V7: Kostka and Payne"),
        ("G7", "Bdim7", "the same, with the flat ninth"),
        ("G9", "Bm7b5", "rootless ninth: Levine"),
        ("G7", "Ddim7", "a diminished seventh has four names: Kostka and Payne"),
        ("Bm7b5", "Dm6", "the same notes: Levine"),
        ("Cm", "Eb", "relative, from a minor chord"),
    ],
)
def test_a_substitute_of_the_handbooks_costs_less_than_half(
    one: str, other: str, what: str
) -> None:
    assert EXTENSION < cost(one, other) < FARTHEST / 2, what


@pytest.mark.parametrize(
    ("one", "other"), [("C", "Cmaj7"), ("G", "G7"), ("C", "C/E"), ("A5", "Asus2"), ("Am", "Am7")]
)
def test_an_extension_is_the_cheapest_change(one: str, other: str) -> None:
    assert cost(one, other) == EXTENSION


@pytest.mark.parametrize(
    ("one", "other"), [("C", "D"), ("C", "Bb"), ("Am", "Gm"), ("C", "F#m"), ("C", "G"), ("C", "F")]
)
def test_chords_that_do_not_stand_in_for_each_other_are_far_apart(one: str, other: str) -> None:
    assert cost(one, other) >= FARTHEST * 3 / 4


def test_what_stands_in_for_a_chord_is_nearer_than_what_follows_it() -> None:
    assert cost("C", "Am") < cost("C", "G")
    assert cost("C", "Em") < cost("C", "F")
    assert cost("G7", "Db7") < cost("G7", "C")


@given(CHORDS, CHORDS, CHORDS, st.integers(0, 11))
def test_costs_are_a_metric_that_transposing_both_leaves_alone(
    a: Core, b: Core, c: Core, shift: int
) -> None:
    assert (chord_cost(a, b) == 0) == (a == b)
    assert chord_cost(a, b) == chord_cost(b, a)
    assert chord_cost(a, c) <= chord_cost(a, b) + chord_cost(b, c)
    assert chord_cost(a, b, shift) == chord_cost(b, a, -shift % 12)


def test_no_detour_in_the_whole_table_is_cheaper_than_the_way_itself() -> None:
    costs = costs_of_exchange()
    for one, two, three in product(KINDS, repeat=3):
        direct, first, second = costs[one, three], costs[one, two], costs[two, three]
        for there, on in product(range(12), repeat=2):
            assert direct[(there + on) % 12] <= first[there] + second[on]
