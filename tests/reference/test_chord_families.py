"""Families of triads against a general library's qualities of chords.

music21's `Chord.quality` says major, minor, diminished or augmented of the thirds and fifths it
finds, and "other" or another word where it finds none.
"""

import pytest
from music21 import chord, pitch

from sitegen.harmony import read_chord
from sitegen.harmony.progressions import core
from sitegen.harmony.qualities import QUALITIES
from sitegen.score.chord import Chord

# Ours are major: the fifth of a dominant is altered, and the chord stays one. A major third
# under a flat fifth is no family of theirs.
DOMINANTS = {"7♯5", "7♭5", "9♯5", "9♭5", "alt"}
SYMBOLS = [
    f"C{quality.name}" for quality in QUALITIES if {"3", "♭3"} & set(map(str, quality.degrees))
]


def _their_family(ours: Chord) -> str:
    names = [str(name).replace("♭", "-").replace("♯", "#") for name in ours.members]
    triad = [
        n for n, d in zip(names, ours.degrees, strict=True) if d.lstrip("♭♯") in {"R", "3", "5"}
    ]
    return str(chord.Chord([pitch.Pitch(name) for name in triad]).quality)


@pytest.mark.parametrize("symbol", SYMBOLS)
def test_families_are_those_of_the_library(symbol: str) -> None:
    ours = read_chord(symbol)
    assert isinstance(ours, Chord)
    if ours.quality in DOMINANTS:
        assert core(ours).kind == "dominant"
    else:
        assert core(ours).family == _their_family(ours)


def test_the_table_is_looked_at() -> None:
    assert len(SYMBOLS) > 30
