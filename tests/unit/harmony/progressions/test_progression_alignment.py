"""Progressions laid beside each other: the distance and its properties."""

from fractions import Fraction
from functools import cache

from hypothesis import given
from unit.harmony.progressions.bars_aloud import bars, intervals, moved, progressions

from sitegen.harmony.progressions import Progression, chord_cost, shape, substitution_distance
from sitegen.harmony.progressions.alignment import ANY_KEY, align, nearest
from sitegen.harmony.progressions.rows import Line
from sitegen.harmony.progressions.substitution import GAP
from sitegen.score.interval import Interval


def plain_cost(first: Line, second: Line, shift: int) -> int:
    """Return the edit cost by its definition, every way tried."""

    @cache
    def of(rows: int, columns: int) -> int:
        if not rows or not columns:
            return GAP * (rows + columns)
        one = first.chords[first.places[rows - 1]]
        other = second.chords[second.places[columns - 1]]
        return min(
            of(rows - 1, columns - 1) + chord_cost(one, other, shift),
            of(rows - 1, columns) + GAP,
            of(rows, columns - 1) + GAP,
        )

    return of(len(first), len(second))


@given(progressions(), progressions())
def test_the_nearest_transposition_is_that_of_all_twelve_tried(
    first: Progression, second: Progression
) -> None:
    a, b = first.line, second.line
    near = nearest(a, b)
    costs = [plain_cost(a, b, shift) for shift in ANY_KEY]
    assert near.cost == min(costs) == costs[near.shift]


@given(progressions(), progressions())
def test_an_alignment_holds_every_chord_once_and_costs_what_is_said(
    first: Progression, second: Progression
) -> None:
    if not first.steps or not second.steps:
        return
    near = nearest(first.line, second.line)
    pairs = align(first.line, second.line, near.shift)
    assert [p.first for p in pairs if p.first is not None] == list(range(len(first.line)))
    assert [p.second for p in pairs if p.second is not None] == list(range(len(second.line)))
    assert sum(pair.cost for pair in pairs) == near.cost


@given(progressions(), progressions(), progressions())
def test_the_distance_in_any_key_is_a_metric(
    a: Progression, b: Progression, c: Progression
) -> None:
    ab, bc, ac = (substitution_distance(*pair) for pair in ((a, b), (b, c), (a, c)))
    assert 0 <= ab <= 1
    assert ab == substitution_distance(b, a)
    assert ac <= ab + bc
    assert (ab == 0) == (shape(a) == shape(b))


@given(progressions(), progressions(), intervals())
def test_transposing_changes_no_distance(
    first: Progression, second: Progression, interval: Interval
) -> None:
    here = substitution_distance(first, second)
    assert substitution_distance(moved(first, interval), second) == here
    assert substitution_distance(first, moved(first, interval)) == 0


def test_one_tritone_substitute_in_three_chords_is_near() -> None:
    # 40 of 100 for D♭7 in the place of G7: 2 * 40 / (50 * 6 + 40).
    distance = substitution_distance(bars("Dm7 | G7 | Cmaj7"), bars("Dm7 | Db7 | Cmaj7"))
    assert distance == Fraction(80, 340)


def test_a_chord_more_costs_a_gap() -> None:
    # 2 * 50 / (50 * 5 + 50), by hand.
    assert substitution_distance(bars("G7 | C"), bars("Dm | G7 | C")) == Fraction(1, 3)


def test_in_their_own_keys_numerals_are_compared() -> None:
    in_c, in_g = bars("C | F", "C major"), bars("G | C", "G major")
    in_f = bars("C | F", "F major")
    assert substitution_distance(in_c, in_g, "own") == 0
    assert substitution_distance(in_c, in_f, "own") > 0
    assert substitution_distance(in_c, in_f) == 0
    # Where a key is not known, each chord is compared as it sounds.
    assert substitution_distance(bars("C | F"), in_c, "own") == 0
    assert substitution_distance(bars("D | G"), in_c, "own") > 0


def test_nothing_is_as_near_to_nothing_as_can_be_and_as_far_from_chords() -> None:
    silent = bars("N.C.")
    assert substitution_distance(silent, silent) == 0
    assert substitution_distance(silent, bars("C | F")) == 1
