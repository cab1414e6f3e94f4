"""Chord symbols against the meanings on which independently written libraries agree."""

import json
from pathlib import Path
from typing import NamedTuple

import pytest

from sitegen.harmony import read_chord
from sitegen.score.chord import Chord

# The file holds its own provenance, versions and votes.
FILE = Path(__file__).parent / "chord_classes.json"
ROOTS = "C Db D Eb E F F# G Ab A Bb B".split()
SIGNS = str.maketrans({"b": "♭", "#": "♯"})


class Meaning(NamedTuple):
    """One spelling of a quality and the pitch classes it stands for, the root being 0."""

    spelling: str
    classes: list[int]


def meanings() -> list[Meaning]:
    known = json.loads(FILE.read_text(encoding="utf-8"))["classes"]
    return [
        Meaning(spelling, sorted(entry["pitch_classes"]))
        for entry in known.values()
        for spelling in entry["spellings"]
    ]


def classes_over_root(chord: Chord) -> list[int]:
    return sorted({(p - chord.root.pitch_class) % 12 for p in chord.pitch_classes})


def test_the_set_is_not_empty() -> None:
    assert len(meanings()) > 90


@pytest.mark.parametrize("signs", [{}, SIGNS], ids=["ascii", "signs"])
@pytest.mark.parametrize("meaning", meanings(), ids=lambda meaning: f"C{meaning.spelling}")
def test_a_spelling_is_read_on_every_root(meaning: Meaning, signs: dict[int, str]) -> None:
    for root in ROOTS:
        chord = read_chord((root + meaning.spelling).translate(signs))

        assert isinstance(chord, Chord)
        assert classes_over_root(chord) == meaning.classes
        assert chord.root.pitch_class == ROOTS.index(root)
