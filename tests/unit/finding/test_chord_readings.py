"""The table of suffixes and numerals says of each what the readers of this project say."""

import json

import pytest

from sitegen.finding.chord_readings import readings_file
from sitegen.harmony import read_chord, roman
from sitegen.harmony.progressions import core
from sitegen.harmony.qualities import SPELLINGS
from sitegen.score.chord import Chord

TABLE = json.loads(readings_file())


def kind(table: str, text: str) -> list[str]:
    return list(TABLE["kinds"][TABLE[table][text]])


@pytest.mark.parametrize("spelling", sorted(SPELLINGS))
def test_every_spelling_of_a_quality_is_there(spelling: str) -> None:
    chord = read_chord(f"D{spelling}")
    assert isinstance(chord, Chord)
    if chord.bass != chord.root:
        pytest.skip("a suffix that ends like a bass")
    found = core(chord)
    text = spelling.replace("(", "").replace(")", "")
    assert kind("suffixes", text) == [found.notes, found.family]


@pytest.mark.parametrize(
    "symbol", ["E7b9", "E7b9b13", "Eadd9", "Em7b5", "E7#9", "Emaj7#11", "Eno3", "E9sus4", "E6/9"]
)
def test_common_alterations_are_there(symbol: str) -> None:
    found = core(read_chord(symbol))  # type: ignore[arg-type]
    assert kind("suffixes", symbol.removeprefix("E")) == [found.notes, found.family]


def test_a_sign_behind_the_root_is_not_taken_for_the_roots() -> None:
    assert kind("suffixes", "b5") == ["046", "major"]


@pytest.mark.parametrize(
    ("chord", "key", "text"),
    [
        ("C", "C", "I"),
        ("Cm7", "C minor", "i7"),
        ("Cdim", "C", "i°"),
        ("C/E", "C", "I6"),
        ("Cmaj7", "C", "Imaj7"),
        ("C5", "C minor", "i5"),
        ("C6", "C", "Iadd6"),
    ],
)
def test_numerals_are_those_that_this_project_writes(chord: str, key: str, text: str) -> None:
    assert roman(chord, key) == text
    found = core(read_chord(chord))  # type: ignore[arg-type]
    assert kind("numerals", text) == [found.notes, found.family]
