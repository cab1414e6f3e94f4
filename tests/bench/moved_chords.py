"""Chord symbols in another key, as a reader types them."""

from functools import cache

from sitegen.harmony import read_chord
from sitegen.harmony.signs import plain
from sitegen.score.chord import Chord

NAMES = "C Db D Eb E F F# G Ab A Bb B".split()


@cache
def moved(symbol: str, semitones: int) -> str:
    """Return a symbol so many semitones higher, its names those of `NAMES`."""
    chord = read_chord(symbol)
    assert isinstance(chord, Chord)
    root, bass = (NAMES[(name.pitch_class + semitones) % 12] for name in (chord.root, chord.bass))
    return f"{root}{plain(chord.quality)}{'' if root == bass else f'/{bass}'}"
