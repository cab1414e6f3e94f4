"""Music in words."""

from fractions import Fraction

import pytest

from sitegen.analysis.spoken import (
    spoken_beats,
    spoken_chord,
    spoken_count,
    spoken_degree,
    spoken_length,
    spoken_roman,
    spoken_tempo,
    spoken_text,
)
from sitegen.harmony.qualities import QUALITIES
from sitegen.score.chord import Chord
from sitegen.score.pitch import PitchName
from sitegen.score.tempo import Tempo


# American names of note values and dots as in any handbook; tuplets by the value that is written.
@pytest.mark.parametrize(
    ("quarters", "name"),
    [
        ("4", "whole"),
        ("3", "dotted half"),
        ("3/2", "dotted quarter"),
        ("1/4", "sixteenth"),
        ("3/8", "dotted sixteenth"),
        ("6", "dotted whole"),
        ("1/3", "triplet eighth"),
        ("2/3", "triplet quarter"),
        ("4/3", "triplet half"),
        ("1/5", "quintuplet sixteenth"),
        ("1/7", "septuplet sixteenth"),
        ("5/2", ""),
        ("7/2", ""),
    ],
)
def test_a_length_has_the_name_of_its_note(quarters: str, name: str) -> None:
    assert spoken_length(Fraction(quarters)) == name


@pytest.mark.parametrize(
    ("quality", "words"),
    [
        ("", "E flat major"),
        ("m", "E flat minor"),
        ("5", "E flat power chord"),
        ("maj7", "E flat major 7"),
        ("m(maj7)", "E flat minor major 7"),
        ("m7♭5", "E flat minor 7 flat 5"),
        ("7♯9", "E flat 7 sharp 9"),
        ("°7", "E flat diminished 7"),
        ("ø7", "E flat half-diminished 7"),
        ("+", "E flat augmented"),
        ("7sus4", "E flat 7 suspended 4"),
        ("add9", "E flat add 9"),
        ("6/9", "E flat 6 9"),
        ("7alt", "E flat 7 altered"),
        ("maj13♯11", "E flat major 13 sharp 11"),
    ],
)
def test_a_chord_is_said_in_words(quality: str, words: str) -> None:
    root = PitchName.read("Eb")
    assert spoken_chord(Chord(root, quality, (root,), ("R",), root)) == words


@pytest.mark.parametrize("quality", [q.name for q in QUALITIES if q.named])
def test_every_quality_that_is_printed_can_be_said(quality: str) -> None:
    root = PitchName.read("C")
    said = spoken_chord(Chord(root, quality, (root,), ("R",), root))
    known = "major minor diminished augmented suspended add altered power chord".split()
    assert all(word.isdecimal() or word in known for word in said.split()[1:])


@pytest.mark.parametrize(
    ("numeral", "words"),
    [
        ("I", "one"),
        ("i", "one minor"),
        ("ii7", "two minor 7"),
        ("V7/V", "five 7 of five"),
        ("V/ii", "five of two minor"),
        ("♭VImaj7", "flat six major 7"),
        ("vii°7", "seven diminished 7"),
        ("iiø7", "two half-diminished 7"),
        ("IVsus2", "four suspended 2"),
        ("I6/9", "one 6 9"),
        ("i5", "one power chord"),
        ("♭VI5", "flat six power chord"),
        ("subV7", "tritone substitute five 7"),
        ("subV7/ii", "tritone substitute five 7 of two minor"),
        ("Ger65", "German augmented sixth"),
        ("It6", "Italian augmented sixth"),
    ],
)
def test_a_numeral_is_said_in_words(numeral: str, words: str) -> None:
    assert spoken_roman(numeral) == words


@pytest.mark.parametrize(
    ("degree", "words"), [("R", "root"), ("♭3", "flat 3"), ("9", "9"), ("♭♭7", "double flat 7")]
)
def test_a_degree_is_said_in_words(degree: str, words: str) -> None:
    assert spoken_degree(degree) == words


@pytest.mark.parametrize(
    ("beat", "words"),
    [
        ("2", "2"),
        ("5/2", "the and of 2"),
        ("9/4", "the e of 2"),
        ("11/4", "the a of 2"),
        ("7/3", "the la of 2"),
        ("8/3", "the li of 2"),
        ("12/5", "2 and 2/5"),
    ],
)
def test_a_count_is_said_as_players_say_it(beat: str, words: str) -> None:
    assert spoken_count(Fraction(beat)) == words


def test_beats_are_counted_in_words() -> None:
    assert spoken_beats(Fraction(1)) == "1 beat"
    assert spoken_beats(Fraction(5, 2)) == "2 1/2 beats"
    assert spoken_beats(Fraction(3, 4)) == "3/4 of a beat"


def test_only_a_tempo_in_other_notes_than_quarters_names_them() -> None:
    assert spoken_tempo(Tempo(Fraction("96.5"))) == "96.5"
    assert spoken_tempo(Tempo(Fraction(58), Fraction(3, 2))) == "dotted quarter 58"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("drop Db", "drop D flat"),
        ("D♭ standard", "D flat standard"),
        ("D2 A2 D3 F#3 A3 D4", "D2 A2 D3 F sharp 3 A3 D4"),
        ("Bb", "B flat"),
        ("Ebbing", "Ebbing"),
        ("key of F♯, loud", "key of F sharp, loud"),
        ("half-step down", "half-step down"),
    ],
)
def test_accidentals_in_an_authors_words_are_said(text: str, words: str) -> None:
    assert spoken_text(text) == words
