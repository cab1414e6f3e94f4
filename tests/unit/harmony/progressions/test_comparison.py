"""Progressions that textbooks name, compared."""

from fractions import Fraction

import pytest
from hypothesis import given
from unit.harmony.progressions.bars_aloud import bars, intervals, moved, progressions

from sitegen.harmony.progressions import FARTHEST_ALIKE, Progression, compare, say_likeness
from sitegen.score.interval import Interval

# I V vi IV and where it starts elsewhere: common practice of pop, no source.
FOUR_CHORDS = "C | G | Am | F"
# Pachelbel, Canon in D (about 1690): I V vi iii IV I IV V, from memory.
CANON = "D | A | Bm | F#m | G | D | G | A"
# Twelve-bar blues, plain and with the quick change to IV in bar 2: Levine, The Jazz Theory Book
# (1995), from memory.
BLUES = "C7 | C7 | C7 | C7 | F7 | F7 | C7 | C7 | G7 | F7 | C7 | C7"
QUICK_CHANGE = "C7 | F7 | C7 | C7 | F7 | F7 | C7 | C7 | G7 | F7 | C7 | G7"
# Rhythm changes, the A section and two usual forms of its first bars: Levine, from memory.
RHYTHM = "Bb G7 | Cm7 F7 | Dm7 G7 | Cm7 F7"
RHYTHM_WITH_DIMINISHED = "Bb Bdim7 | Cm7 F7 | Dm7 G7 | Cm7 F7"


@pytest.mark.parametrize(
    ("text", "start"),
    [("G | Am | F | C", 1), ("Am | F | C | G", 2), ("F | C | G | Am", 3)],
)
def test_the_four_chords_are_one_loop_in_four_rotations(text: str, start: int) -> None:
    likeness = compare(bars(FOUR_CHORDS), bars(text))
    assert (likeness.kind, likeness.start, likeness.interval) == ("rotation", start, 0)
    assert likeness.distance > 0


def test_a_rotation_is_found_in_another_key_as_well() -> None:
    likeness = compare(bars(FOUR_CHORDS), bars("F#m | D | A | E"))
    assert (likeness.kind, likeness.start, likeness.interval) == ("rotation", 2, 9)
    assert likeness.motion == "a minor third lower"


def test_the_same_chords_in_another_key() -> None:
    likeness = compare(bars(FOUR_CHORDS), bars("Eb | Bb | Cm | Ab"))
    assert (likeness.kind, likeness.interval) == ("same in another key", 3)
    assert likeness.motion == "a minor third higher"


def test_spelling_makes_no_other_key() -> None:
    assert compare(bars("C# | F#"), bars("Db | Gb")).kind == "same"


def test_repeats_make_no_difference() -> None:
    once, twice = bars("Am | F | C | G"), bars("Am | F | C | G | Am | F | C | G")
    assert compare(once, twice).kind == "same"
    assert compare(twice, twice).loops == "both"


def test_extensions_make_a_difference_of_their_own() -> None:
    likeness = compare(bars("Dm | G | C"), bars("Dm9 | G13 | Cmaj7"))
    assert likeness.kind == "same but for extensions"
    assert not likeness.with_extensions
    assert compare(bars("C | C7 | F"), bars("C | F")).kind == "same but for extensions"


def test_the_first_four_chords_of_the_canon_are_contained_in_it() -> None:
    likeness = compare(bars(CANON), bars("D | A | Bm | F#m"))
    assert (likeness.kind, likeness.holder, likeness.bars) == ("contained", "first", (1, 4))
    other_way = compare(bars("G | D | G | A"), bars(CANON))
    assert (other_way.kind, other_way.holder, other_way.bars) == ("contained", "second", (5, 8))


def test_a_run_round_the_end_of_a_loop_is_contained_in_it() -> None:
    loop = bars("C | G | Am | F | C | G | Am | F")
    likeness = compare(loop, bars("Am | F | C"))
    assert (likeness.kind, likeness.holder) == ("contained", "first")
    # A row that is played once ends where it ends: the same run is not in it.
    assert compare(bars(FOUR_CHORDS), bars("Am | F | C")).kind != "contained"


def test_the_plain_blues_is_contained_in_that_with_the_quick_change() -> None:
    # From the third bar on: I IV I V IV I.
    likeness = compare(bars(BLUES), bars(QUICK_CHANGE))
    assert (likeness.kind, likeness.holder, likeness.bars) == ("contained", "second", (3, 11))


def test_the_jazz_blues_holds_a_ii_v_i() -> None:
    # Levine, from memory; its I has a minor seventh, that of the plain cadence a major one.
    jazz = "C7 | F7 | C7 | C7 | F7 | F#dim7 | C7 | A7 | Dm7 | G7 | C7 A7 | Dm7 G7"
    likeness = compare(bars(jazz), bars("Dm7 | G7 | Cmaj7"))
    assert (likeness.kind, likeness.holder, likeness.bars) == ("contained", "first", (9, 11))
    assert not likeness.with_extensions


def test_a_tritone_substitute_is_alike() -> None:
    likeness = compare(bars("Dm7 | G7 | Cmaj7"), bars("Dm7 | Db7 | Cmaj7"))
    assert (likeness.kind, likeness.distance) == ("alike", Fraction(4, 17))


def test_rhythm_changes_with_a_passing_diminished_chord_are_alike() -> None:
    # Bdim7 is G7♭9 without its root.
    likeness = compare(bars(RHYTHM), bars(RHYTHM_WITH_DIMINISHED))
    assert likeness.kind == "alike"
    different = [pair for pair in likeness.pairs if pair.cost]
    assert [
        (str(p.first.chord), str(p.second.chord)) for p in different if p.first and p.second
    ] == [("G7", "Bdim7")]


def test_the_andalusian_cadence_and_the_four_chords_are_unlike() -> None:
    # i ♭VII ♭VI V, common practice.
    likeness = compare(bars("Am | G | F | E"), bars(FOUR_CHORDS))
    assert likeness.kind == "unlike"
    assert likeness.distance > FARTHEST_ALIKE


def test_loops_are_compared_where_their_endings_differ() -> None:
    verse = bars("Am | F | C | G | Am | F | C | G | Am | F | Dm | E")
    chorus = bars("F | C | G | Am | F | C | G | Am | F | C | Bb | Bb")
    likeness = compare(verse, chorus)
    assert (likeness.kind, likeness.start, likeness.of_loops) == ("rotation", 1, True)
    assert likeness.loops == "both"


def test_in_their_own_keys_a_rotation_in_another_key_is_not_the_same() -> None:
    major = bars("C | F | G", "C major")
    assert compare(major, bars("D | G | A", "D major"), "own").kind == "same in another key"
    assert compare(major, bars("D | G | A", "G major"), "own").kind == "unlike"
    assert compare(major, bars("D | G | A", "G major")).kind == "same in another key"


def test_two_chords_are_not_found_in_other_keys_by_chance() -> None:
    assert compare(bars("C | F | Bb | Eb"), bars("D | G")).kind == "unlike"
    assert compare(bars("C | F"), bars("F | C")).kind == "rotation"
    assert compare(bars("C | F"), bars("D | A")).kind == "unlike"


def test_how_long_chords_last_is_told_beside_the_relation() -> None:
    slow = bars("C | C | G | G | Am | Am | F | F")
    assert compare(bars(FOUR_CHORDS), slow).pace == 2
    assert compare(slow, bars(FOUR_CHORDS)).pace == Fraction(1, 2)
    assert compare(bars("C | C | G"), bars("C | G | G")).pace is None


def test_silence_is_unlike_everything() -> None:
    assert compare(bars("N.C."), bars("C | F")).kind == "unlike"


@given(progressions(), intervals())
def test_a_transposed_progression_is_the_same_in_another_key(
    progression: Progression, interval: Interval
) -> None:
    likeness = compare(progression, moved(progression, interval))
    if progression.steps:
        turned = interval.semitones and likeness.kind == "rotation"
        expected = "same in another key" if interval.semitones else "same"
        assert turned or likeness.kind == expected
        assert likeness.distance == 0


@given(progressions(), progressions(), intervals())
def test_transposing_both_changes_no_relation(
    first: Progression, second: Progression, interval: Interval
) -> None:
    here = compare(first, second)
    there = compare(moved(first, interval), moved(second, interval))
    assert (here.kind, here.start, here.interval, here.bars, here.distance) == (
        there.kind,
        there.start,
        there.interval,
        there.bars,
        there.distance,
    )


@given(progressions(), progressions())
def test_every_likeness_can_be_said(first: Progression, second: Progression) -> None:
    assert say_likeness(compare(first, second), "Example 1")
