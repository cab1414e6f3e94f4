"""What is left of a chord without its extensions."""

import pytest

from sitegen.harmony import read_chord
from sitegen.harmony.progressions import core
from sitegen.harmony.progressions.cores import Core
from sitegen.score.chord import Chord


def core_of(symbol: str) -> Core:
    chord = read_chord(symbol)
    assert isinstance(chord, Chord)
    return core(chord)


@pytest.mark.parametrize(
    ("family", "symbols"),
    [
        ("major", "C C6 C7 Cmaj7 C9 C13 Cadd9 C6/9 C7b9 C/E C/D C(b5)"),
        # The altered fifth of a dominant is an extension: the chord still falls to F.
        ("major", "C7b5 C7#5 Calt C9#5"),
        ("minor", "Cm Cm6 Cm7 Cm9 Cmmaj7 Cm/Bb Cmadd9"),
        ("diminished", "Cdim Cdim7 Cm7b5 Cm9b5"),
        ("augmented", "C+ Cmaj7#5"),
        ("suspended", "Csus4 C7sus4 C9sus4 Csus2sus4"),
        ("power", "C5 Csus2 C7no3"),
    ],
)
def test_a_chord_is_reduced_to_the_family_of_its_triad(family: str, symbols: str) -> None:
    for symbol in symbols.split():
        assert core_of(symbol).family == family, symbol


def test_dominants_and_half_diminished_chords_are_kept_apart_where_substitutes_are_asked() -> None:
    kinds = [core_of(symbol).kind for symbol in ("G7", "G9", "Gmaj7", "G7#5", "Bm7b5", "Bdim7")]
    assert kinds == [
        "dominant",
        "dominant",
        "major",
        "dominant",
        "half-diminished",
        "diminished",
    ]


@pytest.mark.parametrize(
    ("one", "other"), [("C#m7", "Dbm7"), ("F#7/A#", "Gb7/Bb"), ("B#", "C"), ("Csus9", "Csus2")]
)
def test_spelling_makes_no_difference(one: str, other: str) -> None:
    assert core_of(one) == core_of(other)


@pytest.mark.parametrize(("one", "other"), [("C", "C/E"), ("C6", "Am7"), ("Csus4", "Fsus2")])
def test_bass_and_root_make_a_difference(one: str, other: str) -> None:
    assert core_of(one) != core_of(other)
