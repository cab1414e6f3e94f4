"""Spelled chord members against music21's, for symbols that it reads without loss."""

import random

import pytest

from sitegen.harmony import read_chord
from sitegen.score.chord import Chord

# music21 drops alterations after 13, writes maj9 as M9 and flats of roots as -.
QUALITIES = (
    " m 7 maj7 m7 m7b5 dim dim7 + sus2 sus4 6 m6 9 maj9 m9 7b9 7#9 7#11 maj7#11 add9".split(" ")
)
ROOTS = [letter + sign for letter in "ABCDEFG" for sign in ("", "b", "#")]
SYMBOLS = [root + quality for root in ROOTS for quality in QUALITIES]
SEED, SAMPLE = 3, 80


@pytest.mark.filterwarnings("ignore")
@pytest.mark.parametrize("symbol", random.Random(SEED).sample(SYMBOLS, SAMPLE))  # noqa: S311
def test_members_are_spelled_as_music21_spells_them(symbol: str) -> None:
    from music21.harmony import ChordSymbol  # noqa: PLC0415 - slow to import

    root_length = 2 if symbol[1:2] in {"b", "#"} else 1
    root = symbol[:root_length].replace("b", "-")
    quality = symbol[root_length:].replace("maj9", "M9")
    theirs = {p.name.replace("-", "b") for p in ChordSymbol(root + quality).pitches}

    chord = read_chord(symbol)
    assert isinstance(chord, Chord)
    ours = {str(name).replace("♭", "b").replace("♯", "#") for name in chord.members}
    assert ours == theirs
