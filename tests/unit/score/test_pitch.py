"""Pitches, intervals and keys by their names."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.score.interval import Interval
from sitegen.score.key import MODES, Key
from sitegen.score.pitch import Pitch, PitchName

NAMES = st.builds(PitchName, st.sampled_from("ABCDEFG"), st.integers(-2, 2))
PITCHES = st.builds(Pitch, NAMES, st.integers(0, 8))


@pytest.mark.parametrize(
    ("text", "midi"),
    # MIDI 1.0: middle C is note 60; scientific pitch notation calls it C4.
    [("C4", 60), ("A4", 69), ("Bb3", 58), ("B♯3", 60), ("Cb4", 59), ("F##2", 43), ("E♭2", 39)],
)
def test_a_pitch_has_its_midi_number(text: str, midi: int) -> None:
    assert Pitch.read(text).midi == midi


@pytest.mark.parametrize("text", ["H4", "c4", "C", "4", "", "C#b4", "Cbbbb4", "C4 "])
def test_other_text_is_no_pitch(text: str) -> None:
    with pytest.raises(ValueError, match=r"is not a pitch|has no octave"):
        Pitch.read(text)


@given(PITCHES)
def test_a_printed_pitch_reads_back(pitch: Pitch) -> None:
    assert Pitch.read(str(pitch)) == pitch


@given(NAMES)
def test_the_line_of_fifths_holds_every_name(name: PitchName) -> None:
    assert PitchName.at_fifths(name.fifths) == name
    assert (7 * name.fifths) % 12 == name.pitch_class


@given(PITCHES, PITCHES)
def test_an_interval_leads_from_one_pitch_to_the_other(low: Pitch, high: Pitch) -> None:
    assert Interval.between(low, high).above(low) == high


@pytest.mark.parametrize(
    ("low", "high", "name"),
    # Interval names as in any rudiments book: common practice, no source.
    [
        ("C4", "E4", "M3"),
        ("C4", "Eb4", "m3"),
        ("F4", "B4", "A4"),
        ("B3", "F4", "d5"),
        ("C4", "C5", "P8"),
        ("E4", "C4", "-M3"),
        ("C4", "D5", "M9"),
        ("C4", "C#4", "A1"),
        ("C4", "Bbb4", "d7"),
    ],
)
def test_an_interval_has_its_usual_name(low: str, high: str, name: str) -> None:
    assert Interval.between(Pitch.read(low), Pitch.read(high)).name == name


@pytest.mark.parametrize(
    ("text", "fifths", "scale"),
    # Signatures and scales as in any rudiments book: common practice, no source.
    [
        ("Eb minor", -6, "E♭ F G♭ A♭ B♭ C♭ D♭"),
        ("G", 1, "G A B C D E F♯"),
        ("D dorian", 0, "D E F G A B C"),
        ("F♯ mixolydian", 5, "F♯ G♯ A♯ B C♯ D♯ E"),
        ("E phrygian", 0, "E F G A B C D"),
        ("Bb lydian", -1, "B♭ C D E F G A"),
        ("C# minor", 4, "C♯ D♯ E F♯ G♯ A B"),
        ("F#m", 3, "F♯ G♯ A B C♯ D E"),
        ("B flat major", -2, "B♭ C D E♭ F G A"),
        ("A natural minor", 0, "A B C D E F G"),
        ("D aeolian", -1, "D E F G A B♭ C"),
    ],
)
def test_a_key_has_its_signature_and_scale(text: str, fifths: int, scale: str) -> None:
    key = Key.read(text)
    assert key.fifths == fifths
    assert [str(name) for name in key.scale] == scale.split()


@given(NAMES, st.sampled_from(MODES))
def test_a_scale_climbs_through_all_letters_within_an_octave(tonic: PitchName, mode: str) -> None:
    scale = Key(tonic, mode).scale
    steps = [Interval.between_names(tonic, name).semitones for name in scale]
    assert steps == sorted(steps)
    assert steps[0] == 0
    assert {name.letter for name in scale} == set("ABCDEFG")
