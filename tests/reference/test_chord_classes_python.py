"""Chord symbols against the meanings on which Python libraries agree, the set held back."""

import json
from pathlib import Path

import pytest

from sitegen.harmony import name_chord, read_chord
from sitegen.score.chord import Chord

# The file holds its own provenance, versions and votes.
FILE = Path(__file__).parent / "chord_classes_python.json"
KNOWN = json.loads(FILE.read_text(encoding="utf-8"))
CLASSES = {
    spelling: entry["pitch_classes"]
    for entry in KNOWN["classes"].values()
    for spelling in entry["spellings"]
}
SPLIT = {
    spelling: [reading["pitch_classes"] for reading in entry["readings"]]
    for entry in KNOWN["split"].values()
    for spelling in entry["spellings"]
}
ROOTS = "C Db D Eb E F F# G Ab A Bb B".split()


def over_root(symbol: str) -> list[int]:
    chord = read_chord(symbol)
    assert isinstance(chord, Chord)
    return sorted((number - chord.root.pitch_class) % 12 for number in chord.pitch_classes)


@pytest.mark.parametrize("spelling", CLASSES, ids=lambda spelling: f"C{spelling}")
def test_a_spelling_is_read_on_every_root(spelling: str) -> None:
    for root in ROOTS:
        assert over_root(root + spelling) == CLASSES[spelling]


@pytest.mark.parametrize("spelling", SPLIT, ids=lambda spelling: f"C{spelling}")
def test_where_libraries_differ_one_of_their_readings_is_taken(spelling: str) -> None:
    assert over_root(f"C{spelling}") in SPLIT[spelling]


@pytest.mark.parametrize("spelling", CLASSES, ids=lambda spelling: f"C{spelling}")
def test_the_notes_are_named_by_their_root(spelling: str) -> None:
    for number, _ in enumerate(ROOTS):
        notes = [48 + number + above for above in CLASSES[spelling]]
        chord = name_chord(notes)[0].chord

        assert chord is not None
        assert chord.root.pitch_class == chord.bass.pitch_class == number
