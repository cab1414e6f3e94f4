"""Chord symbols for notation programs: the standard's kinds, and the degrees that differ."""

import pytest
from lxml import etree
from unit.engraving.reading_musicxml import load_schema

from sitegen.engraving.musicxml import chord_kinds
from sitegen.engraving.musicxml.chord_kinds import chord_kind
from sitegen.engraving.musicxml.harmonies import make_harmony
from sitegen.harmony import read_chord
from sitegen.harmony.canonical import degrees_of
from sitegen.harmony.qualities import QUALITIES
from sitegen.score.chord import Chord, NoChord
from sitegen.score.interval import Interval

UNISON = Interval(0, 0)
ALTERED = (
    "7b5 7#5 7b9 7#9 7#11 7b13 9#11 13#11 13b9 7b9b13 7#9b13 7no3 7no5 no3 add9 madd9 add11 "
    "maj7#11 maj9#11 maj13#11 m7add11 m9b5 sus2sus4 7sus2 maj7sus4 7sus4b9 13sus4b9 aug7b9 (b5)"
).split()
SUFFIXES = [quality.name for quality in QUALITIES] + ALTERED


@pytest.mark.parametrize("suffix", SUFFIXES)
@pytest.mark.parametrize("frame", ["C{}", "F#{}", "Bb{}/D"])
def test_music21_hears_the_chord_that_is_meant(frame: str, suffix: str) -> None:
    from music21.musicxml.xmlToM21 import MeasureParser  # noqa: PLC0415 - slow to import

    chord = read_chord(frame.format(suffix))
    assert isinstance(chord, Chord)
    heard = MeasureParser().xmlToChordSymbol(make_harmony(chord, UNISON))
    assert tuple(sorted({p.pitchClass for p in heard.pitches})) == chord.pitch_classes
    assert heard.root().pitchClass == chord.root.pitch_class


def test_kinds_hold_what_music21_says_they_hold() -> None:
    """Check against music21's `harmony.CHORD_TYPES`, whose aliases are the standard's names."""
    from music21.harmony import CHORD_ALIASES, CHORD_TYPES  # noqa: PLC0415 - slow to import

    for kind, degrees in chord_kinds._KINDS.items():  # noqa: SLF001 - the table itself is checked
        told = str(CHORD_TYPES[CHORD_ALIASES.get(kind, kind)][0])
        theirs = {_semitones(text) for text in told.split(",")}
        assert {degree.semitones for degree in degrees} == theirs, kind


def _semitones(text: str) -> int:
    plain = (0, 2, 4, 5, 7, 9, 11)
    number = int(text.strip("#-b"))
    return (plain[(number - 1) % 7] + text.count("#") - text.count("-")) % 12


def test_every_kind_is_one_of_the_standard() -> None:
    names = load_schema()  # skips without a schema
    for kind in chord_kinds._KINDS:  # noqa: SLF001 - the same
        text = (
            '<score-partwise version="4.0"><part-list><score-part id="P1"><part-name/>'
            '</score-part></part-list><part id="P1"><measure number="1"><harmony>'
            f"<root><root-step>C</root-step></root><kind>{kind}</kind>"
            "</harmony></measure></part></score-partwise>"
        )
        assert names.validate(etree.fromstring(text)), kind


# What the standard calls these chords (kind-value in the MusicXML 4.0 schema), written as
# musicians would expect to find them.
KINDS = [
    ("C", "major", []),
    ("Cm7b5", "half-diminished", []),
    ("Cadd9", "major", [("add", 9, 0)]),
    ("C13", "dominant-13th", [("subtract", 11, 0)]),
    ("C7b9", "dominant", [("add", 9, -1)]),
    ("Cm(maj7)", "major-minor", []),
    ("C7sus4", "dominant", [("subtract", 3, 0), ("add", 4, 0)]),
    ("C7b5", "dominant", [("alter", 5, -1)]),
    ("Cmaj7#5", "major-seventh", [("alter", 5, 1)]),
]


@pytest.mark.parametrize(("symbol", "kind", "changes"), KINDS)
def test_a_chord_is_of_the_kind_that_is_nearest(
    symbol: str, kind: str, changes: list[tuple[str, int, int]]
) -> None:
    chord = read_chord(symbol)
    assert isinstance(chord, Chord)
    found = chord_kind(degrees_of(chord))
    assert found.kind == kind
    assert [(c.action, c.number, c.alteration) for c in found.changes] == changes


def test_degrees_are_not_printed_beside_the_symbol() -> None:
    chord = read_chord("Eb7#9/Bb")
    harmony = make_harmony(chord, UNISON)
    kind = harmony.find("kind")
    assert kind is not None
    assert kind.get("text") == "7♯9"
    assert [degree.get("print-object") for degree in harmony.iter("degree")] == ["no"]
    assert harmony.findtext("bass/bass-step") == "B"
    assert harmony.findtext("bass/bass-alter") == "-1"


def test_no_chord_is_written_as_such() -> None:
    harmony = make_harmony(NoChord(), UNISON)
    kind = harmony.find("kind")
    assert kind is not None
    assert (kind.text, kind.get("text")) == ("none", "N.C.")
