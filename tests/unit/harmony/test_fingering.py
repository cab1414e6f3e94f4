"""Sounding against fingered names on detuned and capoed instruments."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.harmony import fingered_chord, fingered_key, fingering_interval, read_chord
from sitegen.score.chord import Chord
from sitegen.score.key import MODES, Key
from sitegen.score.pitch import Pitch, PitchName

KEYS = st.builds(
    Key, st.builds(PitchName.at_fifths, st.integers(-6, 6)), st.sampled_from(["major", "minor"])
)


@pytest.mark.parametrize(
    ("key", "shift", "fingered"),
    # Capo charts and half-step-down playing: common practice, no source.
    [
        ("Eb minor", -1, "E minor"),
        ("Eb", -1, "E major"),
        ("C# minor", -1, "D minor"),
        ("Bb minor", -1, "B minor"),
        ("Gb", -1, "G major"),
        ("D", -2, "E major"),
        ("F", 1, "E major"),
        ("Bb", 3, "G major"),
        ("Eb", 3, "C major"),
        ("E minor", 7, "A minor"),
        ("F# dorian", 2, "E dorian"),
        ("Ab", 2, "G♭ major"),
        ("E", -2, "F♯ major"),
    ],
)
def test_a_key_is_fingered_as_players_say(key: str, shift: int, fingered: str) -> None:
    assert str(fingered_key(key, shift)) == fingered


@pytest.mark.parametrize(
    ("shift", "key", "name"),
    [
        (-1, "Eb minor", "A1"),
        (-1, "C# minor", "m2"),
        (-2, None, "M2"),
        (-1, None, "m2"),
        (3, None, "-m3"),
        (0, "F#", "P1"),
        (12, "F#", "-P8"),
        (-12, None, "P8"),
        (14, "C", "-M9"),
    ],
)
def test_the_interval_is_spelled(shift: int, key: str | None, name: str) -> None:
    assert fingering_interval(shift, key).name == name


@given(KEYS, st.integers(-14, 14))
def test_the_fingered_key_is_simple_and_lies_so_far_away(key: Key, shift: int) -> None:
    fingered = fingered_key(key, shift)
    interval = fingering_interval(shift, key)

    assert interval.above(Pitch(key.tonic, 4)).midi == Pitch(key.tonic, 4).midi - shift
    assert fingered.mode == key.mode
    assert abs(fingered.fifths) <= 9 if shift % 12 == 0 else abs(fingered.fifths) <= 6


@given(st.sampled_from(MODES), st.integers(-7, 7))
def test_without_a_shift_every_name_stays(mode: str, fifths: int) -> None:
    key = Key(PitchName.at_fifths(fifths), mode)
    assert fingered_key(key, 0) == key


def test_a_chord_is_fingered_with_all_its_names() -> None:
    sounding = read_chord("Gbsus2/Db")
    fingered = fingered_chord(sounding, fingering_interval(-1, "Eb minor"))

    assert isinstance(fingered, Chord)
    assert fingered == read_chord("Gsus2/D")
    assert [str(name) for name in fingered.members] == ["G", "A", "D"]


def test_no_chord_is_fingered_as_none() -> None:
    assert fingered_chord(read_chord("N.C."), fingering_interval(2, None)) == read_chord("N.C.")
