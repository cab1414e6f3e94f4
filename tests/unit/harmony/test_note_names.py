"""Notes against the sounding chord: degree and role."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.harmony import ChordSymbolError, degree, key_degree, read_chord, role
from sitegen.score.chord import Chord
from sitegen.score.interval import Interval
from sitegen.score.pitch import Pitch, PitchName
from sitegen.score.role import Role

SYMBOLS = st.sampled_from(
    "C Cm C5 Csus2 Csus4 C6 Cm6 C7 Cmaj7 Cm7 Cm7b5 Cdim7 C7b9 C13 Cadd9 C/D Calt C+".split()
)
NAMES = st.builds(PitchName, st.sampled_from("ABCDEFG"), st.integers(-1, 1))
INTERVALS = st.sampled_from([Interval(1, 2), Interval(2, 3), Interval(3, 5), Interval(4, 7)])


def chord(text: str) -> Chord:
    read = read_chord(text)
    assert isinstance(read, Chord)
    return read


def moved(value: Chord, interval: Interval) -> Chord:
    """Return a chord transposed by its symbol alone."""
    root, bass = interval.above_name(value.root), interval.above_name(value.bass)
    return chord(f"{root}{value.quality}/{bass}")


@pytest.mark.parametrize(
    ("pitch", "symbol", "name"),
    # Common practice, no source: how players name a note over a symbol.
    [
        ("Ab4", "Gbmaj7", "9"),
        ("Gb4", "Gbmaj7", "R"),
        ("C5", "Gbmaj7", "♯11"),
        ("Db3", "Ebm7", "♭7"),
        # Members of suspended, sixth and power chords have the member's number.
        ("Ab4", "Gbsus2", "2"),
        ("F4", "Csus4", "4"),
        ("A4", "C6", "6"),
        ("D4", "C6/9", "9"),
        ("A4", "C13", "13"),
        ("Bbb4", "Cdim7", "♭♭7"),
        # Other notes are tensions, over any kind of chord.
        ("D4", "C5", "9"),
        ("D4", "C7sus4", "9"),
        ("A4", "C", "13"),
        ("A4", "Csus2", "13"),
        ("F4", "C", "11"),
        ("F4", "Csus2", "11"),
        ("E4", "C5", "3"),
        ("B4", "C7", "7"),
        ("Db4", "C7", "♭9"),
        # The letter decides between two names of one sound,
        ("F#4", "C", "♯11"),
        ("Gb4", "C", "♭5"),
        ("D#4", "C7", "♯9"),
        ("Eb4", "C7", "♭3"),
        ("G#4", "C", "♯5"),
        ("Ab4", "C", "♭13"),
        # but what sounds as a member is that member,
        ("F#4", "Cm7b5", "♭5"),
        ("Gb4", "C7#11", "♯11"),
        ("D#4", "Cm", "♭3"),
        ("Eb4", "C7#9", "♯9"),
        ("Fb4", "C7", "3"),
        ("B#3", "C", "R"),
        # and a name that nobody says gives way to the sound.
        ("C#4", "C", "♭9"),
        ("E#4", "C5", "11"),
        ("Fb4", "C5", "3"),
        ("Ebb4", "C", "9"),
        ("A#4", "C", "♭7"),
        ("B##4", "Cm7b5", "♭9"),
        ("E##4", "Cm7b5", "♭5"),
        ("E##4", "C", "♯11"),
        ("E##4", "Cno5", "♭5"),
        ("Fbb4", "C", "♯9"),
        # A foreign bass is named against the root.
        ("D3", "C/D", "9"),
        ("Bb2", "C/Bb", "♭7"),
        ("G2", "C5/G", "5"),
    ],
)
def test_a_note_is_named_as_a_musician_says_it(pitch: str, symbol: str, name: str) -> None:
    assert degree(pitch, symbol) == name


@pytest.mark.parametrize(
    ("pitch", "symbol", "standing"),
    [
        ("E4", "C", Role.CHORD_TONE),
        ("Fb4", "C", Role.CHORD_TONE),
        ("D4", "C/D", Role.CHORD_TONE),
        ("D4", "C", Role.TENSION),
        ("F4", "C", Role.NON_CHORD_TONE),
        ("F#4", "Cmaj7", Role.TENSION),
        ("Bb4", "Cmaj7", Role.NON_CHORD_TONE),
        ("F4", "Cm7", Role.TENSION),
        ("Db4", "Cm7", Role.NON_CHORD_TONE),
        ("F4", "C7", Role.NON_CHORD_TONE),
        ("B4", "C7", Role.NON_CHORD_TONE),
        ("Db4", "C7", Role.TENSION),
        ("Ab4", "C7", Role.TENSION),
        ("Ab4", "C13", Role.NON_CHORD_TONE),
        ("D4", "C7b9", Role.NON_CHORD_TONE),
        ("D#4", "C7b9", Role.TENSION),
        ("D4", "Cm7b5", Role.TENSION),
        ("A4", "Cm7b5", Role.NON_CHORD_TONE),
        ("D4", "C5", Role.TENSION),
        # A third or a seventh that the symbol leaves open, not one that it suspends.
        ("E4", "C5", Role.TENSION),
        ("Eb4", "Csus2", Role.TENSION),
        ("B4", "C", Role.TENSION),
        ("Bb4", "Csus2", Role.TENSION),
        ("Bb4", "Cdim", Role.TENSION),
        ("B4", "Cdim", Role.NON_CHORD_TONE),
        ("B4", "C6", Role.NON_CHORD_TONE),
        ("E4", "C7sus4", Role.NON_CHORD_TONE),
        ("F4", "Csus2", Role.TENSION),
    ],
)
def test_a_note_has_its_role(pitch: str, symbol: str, standing: Role) -> None:
    assert role(pitch, symbol) is standing


def test_over_no_chord_a_note_has_neither_name_nor_role() -> None:
    assert degree("C4", "N.C.") == ""
    assert role("C4", "N.C.") is None


@given(SYMBOLS)
def test_every_member_has_its_own_name_and_is_a_chord_tone(symbol: str) -> None:
    for member, name in zip(chord(symbol).members, chord(symbol).degrees, strict=True):
        assert degree(member, symbol) == name
        assert role(member, symbol) is Role.CHORD_TONE


@given(NAMES, SYMBOLS, INTERVALS)
def test_transposing_note_and_chord_changes_neither_name_nor_role(
    name: PitchName, symbol: str, interval: Interval
) -> None:
    there = moved(chord(symbol), interval)
    assert degree(interval.above_name(name), there) == degree(name, symbol)
    assert role(interval.above_name(name), there) == role(name, symbol)


def test_values_and_text_are_the_same() -> None:
    assert degree(Pitch.read("Ab4"), chord("Gbmaj7")) == degree("Ab", "Gbmaj7") == "9"


def test_text_that_is_no_pitch_or_chord_is_refused() -> None:
    with pytest.raises(ValueError, match="is not a pitch"):
        degree("H4", "C")
    with pytest.raises(ChordSymbolError):
        degree("C4", "Cmajj7")


@pytest.mark.parametrize(
    ("pitch", "key", "name"),
    [
        ("Gb4", "Eb minor", "♭3"),
        ("F4", "Eb minor", "2"),
        ("F#4", "C", "♯4"),
        ("Gb4", "C", "♭5"),
        ("C5", "D dorian", "♭7"),
        ("D4", "D dorian", "1"),
        ("G#4", "A minor", "7"),
    ],
)
def test_a_note_is_counted_against_the_major_scale_of_its_key(
    pitch: str, key: str, name: str
) -> None:
    assert key_degree(pitch, key) == name
