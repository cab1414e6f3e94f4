"""How roots move, in words."""

import pytest

from sitegen.harmony import root_motion


@pytest.mark.parametrize(
    ("before", "after", "words"),
    # Interval names of any rudiments book.
    [
        ("C", "F", "up a fourth"),
        ("C", "G7", "down a fourth"),
        ("C", "Am", "down a minor third"),
        ("Ebsus2", "Gbsus2", "up a minor third"),
        ("C", "E", "up a major third"),
        ("D", "Bb", "down a major third"),
        ("G", "F", "down a whole tone"),
        ("B", "C", "up a semitone"),
        ("C", "C#", "up a semitone"),
        ("C", "F#", "a tritone"),
        ("C", "Gb", "a tritone"),
        ("C", "D#", "up an augmented second"),
        ("E", "Ab", "up a diminished fourth"),
        ("C", "Cm7/G", ""),
        ("G#", "Ab", ""),
        ("C", "Fbb", "up a minor third"),
        ("C", "N.C.", ""),
        ("N.C.", "C", ""),
    ],
)
def test_a_root_moves_the_smaller_way(before: str, after: str, words: str) -> None:
    assert root_motion(before, after) == words
