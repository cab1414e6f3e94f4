"""Chords named from the notes that sound."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.harmony import Naming, name_chord, read_chord
from sitegen.score.chord import Chord
from sitegen.score.pitch import PitchName

ROOTS = "C Db D Eb E F F# G Ab A Bb B".split()
# Chords of everyday songs that no other everyday chord shares all notes and the bass with.
EVERYDAY = " m 5 7 m7 maj7 sus2 sus4 7sus4 6 m6 dim dim7 m7b5 + add9 madd9 9 m9 maj9 6/9".split(
    " "
)
NAMES = st.builds(PitchName, st.sampled_from("ABCDEFG"), st.integers(-1, 1))


def best(notes: str, key: str | None = None) -> Naming:
    return name_chord(notes.split(), key)[0]


@pytest.mark.parametrize("quality", EVERYDAY, ids=lambda quality: f"C{quality}")
def test_everyday_chords_are_named_on_every_root(quality: str) -> None:
    for root in ROOTS:
        chord = read_chord(root + quality)
        assert name_chord(chord.members)[0].chord == chord


@pytest.mark.parametrize(
    ("notes", "symbol"),
    # Common practice, no source.
    [
        # The bass decides between chords of the same notes.
        ("C4 E4 G4 A4", "C6"),
        ("A3 C4 E4 G4", "Am7"),
        ("C4 D4 G4", "Csus2"),
        ("G3 C4 D4", "Gsus4"),
        ("F3 Ab3 C4 D4", "Fm6"),
        ("D3 F3 Ab3 C4", "Dm7♭5"),
        # Inversions and other basses.
        ("E3 G3 C4", "C/E"),
        ("G3 C4 G4", "C5/G"),
        ("Bb2 C4 E4 G4", "C7/B♭"),
        ("G2 F3 A3 C4", "F/G"),
        ("D3 C4 E4 G4", "C/D"),
        ("E3 C4 G4 B4", "Cmaj7/E"),
        # Left-out fifths, and doublings.
        ("C3 E3 Bb3", "C7no5"),
        ("C3 E3 Bb3 Db4", "C7♭9no5"),
        ("E2 B2 E3 G#3 B3 E4", "E"),
        ("Eb2 Bb2 Eb3", "E♭5"),
        # The order of typing does not matter where octaves are known.
        ("C5 E4 A3 G4", "Am7"),
    ],
)
def test_notes_are_named_as_players_name_them(notes: str, symbol: str) -> None:
    assert str(best(notes).chord) == symbol


def test_readings_are_ranked_with_their_reasons() -> None:
    readings = name_chord("C E G A".split())

    assert [str(reading.chord) for reading in readings[:2]] == ["C6", "Am7/C"]
    assert [reading.rank for reading in readings] == list(range(1, len(readings) + 1))
    assert readings[0].reason == "R 3 5 6 of C6, with the root in the bass"
    assert readings[1].reason == "R ♭3 5 ♭7 of Am7, with its ♭3 in the bass"


def test_a_foreign_bass_and_a_missing_fifth_are_said() -> None:
    assert best("G2 F3 A3 C4").reason == "R 3 5 of F, over G, which is no note of it"
    assert "without a fifth" in best("C3 E3 Bb3").reason


def test_a_cluster_is_called_one() -> None:
    cluster = best("C4 Db4 D4")

    assert cluster.chord is None
    assert cluster.reason == "a cluster: C D♭ D"


def test_the_key_spells_numbers() -> None:
    first = name_chord([63, 66, 70], "Eb minor")[0]

    assert str(first.chord) == "E♭m"
    assert str(name_chord([63, 66, 70], "E")[0].chord) == "D♯m"


@pytest.mark.parametrize("notes", [[], ["C4"], ["C4", "C5"]])
def test_one_note_is_no_chord(notes: list[str]) -> None:
    assert name_chord(notes) == ()


def test_text_that_is_no_pitch_is_refused() -> None:
    with pytest.raises(ValueError, match="is not a pitch"):
        name_chord(["C4", "H4"])


@given(st.lists(NAMES, min_size=2, max_size=7))
def test_every_reading_sounds_the_notes_that_were_given(names: list[PitchName]) -> None:
    sounding = {name.pitch_class for name in names}
    for reading in name_chord(names):
        if isinstance(reading.chord, Chord):
            assert set(reading.chord.pitch_classes) == sounding
            assert reading.chord.bass == names[0]
            assert read_chord(str(reading.chord)) == reading.chord
