"""Stretches of keys inside a body of notes."""

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.harmony import read_chord
from sitegen.harmony.key_changes import KeyStretch, TimedNote, find_key_changes
from sitegen.score.pitch import Pitch

NOTES = st.lists(
    st.tuples(
        st.integers(36, 84),
        st.fractions(min_value=0, max_value=15, max_denominator=4),
        st.fractions(min_value=Fraction(1, 4), max_value=4, max_denominator=4),
    ),
    min_size=1,
    max_size=40,
)
BEATS = [Fraction(beat) for beat in range(17)]


def chords(symbols: str, length: int = 4) -> tuple[list[TimedNote], list[Fraction]]:
    """Return chords of so many beats as close notes, and all the beats."""
    words = symbols.split()
    notes: list[TimedNote] = [
        (Pitch(name, 3 if place else 2), Fraction(length * index), Fraction(length))
        for index, word in enumerate(words)
        for place, name in enumerate(read_chord(word).members)
    ]
    return notes, [Fraction(beat) for beat in range(length * len(words) + 1)]


def keys(stretches: tuple[KeyStretch, ...]) -> list[str]:
    return [f"{s.start}-{s.end} {s.key}" for s in stretches]


@pytest.mark.parametrize(
    ("symbols", "expected"),
    [
        # A chain of twos, fives and ones, as in any jazz primer: common practice, no source.
        (
            "Dm7 G7 Cmaj7 Cmaj7 Fm7 Bb7 Ebmaj7 Ebmaj7 Am7 D7 Gmaj7 Gmaj7",
            ["0-16 C major", "16-32 E♭ major", "32-48 G major"],
        ),
        # A verse again a semitone higher, the lift of many a last refrain: no source.
        ("C Am F G C Am F G Db Bbm Gb Ab Db Bbm Ab Db", ["0-32 C major", "32-64 D♭ major"]),
        # To the relative major and home: the plan of a minuet in minor (Schoenberg, Fundamentals
        # of Musical Composition, 1967; from memory).
        ("Am E7 Am E7 C G7 C G7 Am E7 Am E7", ["0-16 A minor", "16-32 C major", "32-48 A minor"]),
        ("C F G7 C Am Dm G7 C", ["0-32 C major"]),
    ],
)
def test_stretches_change_where_the_key_does(symbols: str, expected: list[str]) -> None:
    assert keys(find_key_changes(*chords(symbols), shortest=8)) == expected


def test_a_dear_change_keeps_an_applied_dominant_in_its_key() -> None:
    # V7/V before V, in the middle of a phrase: Kostka and Payne, Tonal Harmony (from memory).
    stretches = find_key_changes(*chords("C Am D7 G7 C F G7 C", length=2), change_cost=6)

    assert [str(stretch.key) for stretch in stretches] == ["C major"]


def test_changes_come_only_where_they_may() -> None:
    notes, beats = chords("C F G7 C Ab Db Eb7 Ab")

    free = find_key_changes(notes, beats)
    bound = find_key_changes(notes, beats, changes_at={12, 20})

    assert [s.start for s in free] == [0, 16]
    assert {s.start for s in bound} <= {0, 12, 20}


def test_a_stretch_is_never_shorter_than_asked() -> None:
    notes, beats = chords("C F G7 C Ab Db Eb7 Ab C F G7 C")

    assert min(s.end - s.start for s in find_key_changes(notes, beats, shortest=16)) >= 16


def test_the_runner_up_and_the_fit_of_a_stretch() -> None:
    sure = find_key_changes(*chords("C F G7 C F G7 C G7"))[0]
    unsure = find_key_changes(*chords("C"))[0]

    assert str(sure.key) == "C major"
    assert sure.runner_up != sure.key
    assert 0 < unsure.fit < sure.fit < 1


def test_silence_has_no_keys() -> None:
    assert find_key_changes([], BEATS) == ()
    assert find_key_changes([(60, Fraction(0), Fraction(1))], [Fraction(0)]) == ()


@given(NOTES, st.integers(1, 20))
def test_stretches_cover_the_time_without_a_gap(notes: list[TimedNote], shortest: int) -> None:
    stretches = find_key_changes(notes, BEATS, shortest)

    assert stretches[0].start == 0
    assert stretches[-1].end == 16
    assert [s.end for s in stretches[:-1]] == [s.start for s in stretches[1:]]
    assert all(a.key != b.key for a, b in pairwise(stretches))


@given(NOTES)
def test_the_order_of_the_notes_given_does_not_matter(notes: list[TimedNote]) -> None:
    assert find_key_changes(notes, BEATS) == find_key_changes(notes[::-1], BEATS)


@given(st.integers(-6, 6))
def test_transposing_the_notes_transposes_the_keys(semitones: int) -> None:
    notes, beats = chords("Dm7 G7 Cmaj7 Cmaj7 Fm7 Bb7 Ebmaj7 Ebmaj7")
    moved = [(n.midi + semitones, on, length) for n, on, length in notes if isinstance(n, Pitch)]

    found, higher = find_key_changes(notes, beats), find_key_changes(moved, beats)

    for stretch, other in zip(found, higher, strict=True):
        assert (other.start, other.end, other.key.mode) == (
            stretch.start,
            stretch.end,
            stretch.key.mode,
        )
        assert (other.key.tonic.pitch_class - stretch.key.tonic.pitch_class) % 12 == semitones % 12
        assert other.fit == pytest.approx(stretch.fit)
