"""Intervals in words, as prose prints them."""

import pytest

from sitegen.analysis.facts import interval_words
from sitegen.score.interval import Interval
from sitegen.score.pitch import Pitch


@pytest.mark.parametrize(
    ("low", "high", "words"),
    [
        ("C4", "C4", "a unison"),
        ("C4", "E4", "a major third"),
        ("C4", "G4", "a fifth"),
        ("C4", "F#4", "an augmented fourth"),
        ("C4", "C5", "an octave"),
        ("C4", "Cb5", "a diminished octave"),
        ("C4", "C#5", "an octave and an augmented unison"),
        ("C4", "Eb5", "an octave and a minor third"),
        ("E2", "E4", "2 octaves"),
        ("C4", "C#4", "an augmented unison"),
        ("B#3", "Db4", "1 semitone"),
        ("B#3", "D4", "a diminished third"),
        ("B#3", "Dbb4", "0 semitones"),
    ],
)
def test_an_interval_is_told_in_words(low: str, high: str, words: str) -> None:
    assert interval_words(Interval.between(Pitch.read(low), Pitch.read(high))) == words
