"""What instruments are tuned to, against handbook values."""

import pytest

from sitegen.score.drums import KIT
from sitegen.score.instrument import STANDARD, TUNINGS, Fretted

# Open strings as MIDI numbers, low to high. Guitar and bass: any guitar method, E2 = 82.41 Hz
# on A4 = 440 Hz (ISO 16:1975); the others from memory of the makers' string charts.
HANDBOOK = {
    ("guitar", "standard", 6): [40, 45, 50, 55, 59, 64],
    ("guitar", "half-step down", 6): [39, 44, 49, 54, 58, 63],
    ("guitar", "whole-step down", 6): [38, 43, 48, 53, 57, 62],
    ("guitar", "drop D", 6): [38, 45, 50, 55, 59, 64],
    ("guitar", "drop C", 6): [36, 43, 48, 53, 57, 62],
    ("guitar", "drop C#", 6): [37, 44, 49, 54, 58, 63],
    ("guitar", "drop B", 6): [35, 42, 47, 52, 56, 61],
    ("guitar", "open G", 6): [38, 43, 50, 55, 59, 62],
    ("guitar", "open D", 6): [38, 45, 50, 54, 57, 62],
    ("guitar", "open E", 6): [40, 47, 52, 56, 59, 64],
    ("guitar", "DADGAD", 6): [38, 45, 50, 55, 57, 62],
    ("guitar", "standard", 7): [35, 40, 45, 50, 55, 59, 64],
    ("guitar", "standard", 8): [30, 35, 40, 45, 50, 55, 59, 64],
    ("bass", "standard", 4): [28, 33, 38, 43],
    ("bass", "standard", 5): [23, 28, 33, 38, 43],
    ("bass", "drop D", 4): [26, 33, 38, 43],
    ("ukulele", "standard", 4): [67, 60, 64, 69],
    ("mandolin", "standard", 4): [55, 62, 69, 76],
    ("banjo", "standard", 5): [67, 50, 55, 59, 62],
}

# General MIDI System Level 1 (MMA, 1991), percussion key map.
GENERAL_MIDI = {
    "BD": 36, "SS": 37, "SD": 38, "HC": 39, "HH": 42, "FT": 43, "HF": 44, "T2": 47, "T1": 48,
    "CC": 49, "RC": 51, "CH": 52, "RB": 53, "TA": 54, "SC": 55, "CB": 56, "C2": 57, "MA": 70,
}  # fmt: skip


@pytest.mark.parametrize("tuning", HANDBOOK)
def test_a_named_tuning_has_the_handbook_pitches(tuning: tuple[str, str, int]) -> None:
    assert [pitch.midi for pitch in TUNINGS[tuning].strings] == HANDBOOK[tuning]


def test_drums_have_their_general_midi_numbers() -> None:
    assert {label: sound.midi for label, sound in KIT.items()} == GENERAL_MIDI
    assert KIT["HH"].open_midi == 46


@pytest.mark.parametrize(
    ("name", "capo", "shift"),
    [
        ("standard", 0, 0),
        ("half-step down", 0, -1),
        ("whole-step down", 0, -2),
        ("drop D", 0, 0),
        ("drop C#", 0, -1),
        ("drop C", 0, -2),
        ("standard", 3, 3),
        ("half-step down", 2, 1),
        ("open G", 0, 0),
        ("DADGAD", 2, 2),
    ],
)
def test_fingered_and_sounding_pitch_differ_by_the_shift(name: str, capo: int, shift: int) -> None:
    fretted = Fretted(TUNINGS["guitar", name, 6], STANDARD["guitar", 6], capo)
    assert fretted.shift == shift


def test_a_string_sounds_its_fret_above_the_capo() -> None:
    fretted = Fretted(STANDARD["guitar", 6], STANDARD["guitar", 6], capo=2)
    assert fretted.sounding(6, 0) == 42
    assert fretted.sounding(1, 3) == 69
