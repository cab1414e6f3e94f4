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
# What jazz handbooks list on top of them (from memory).
HANDBOOK = (
    "7b9 7#9 7b5 7#5 7#11 7b9#9 7b9#11 7#5#9 7b9b13 13 13b9 13#11 9#11 11 maj13 maj9#11 maj7#5 "
    "maj7b5 mmaj9 m11 m13 m7add13 m9b5 m11b5 m6/9 9sus4 13sus4 7sus4b9 7sus4b9b13 add11 madd11 "
    "6/9#11"
).split()
NAMES = st.builds(PitchName, st.sampled_from("ABCDEFG"), st.integers(-1, 1))


def best(notes: str, key: str | None = None) -> Naming:
    return name_chord(notes.split(), key)[0]


@pytest.mark.parametrize("quality", EVERYDAY, ids=lambda quality: f"C{quality}")
def test_everyday_chords_are_named_on_every_root(quality: str) -> None:
    for root in ROOTS:
        chord = read_chord(root + quality)
        assert name_chord(chord.members)[0].chord == chord


@pytest.mark.parametrize("quality", HANDBOOK, ids=lambda quality: f"C{quality}")
def test_rich_and_altered_chords_are_named_in_root_position(quality: str) -> None:
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
        # An inversion of an everyday chord comes before a rare chord on its bass.
        ("C3 Eb3 Ab3", "A♭/C"),
        ("A3 C4 E4 F4", "Fmaj7/A"),
        ("E3 G3 C4 D4", "Cadd9/E"),
        # The fuller chord of two with a name, and slash chords in practice.
        ("G2 F3 A3 C4 D4", "G9sus4"),
        ("F2 C4 E4 G4", "C/F"),
        ("C3 D4 F#4 A4", "D7/C"),
        ("C3 Bb3 D4 F4", "B♭/C"),
        # A dominant with its upper structure.
        ("C3 E3 G3 Bb3 D4 F#4 A4", "C13♯11"),
        # Left-out fifths, and doublings.
        ("C3 E3 Bb3", "C7no5"),
        ("C3 E3 Bb3 Db4", "C7♭9no5"),
        ("C3 Bb3 D4 E4 A4", "C13no5"),
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


def test_an_upper_structure_is_said() -> None:
    reason = best("C3 E3 G3 Bb3 D4 F#4 A4").reason

    assert reason == "R 3 5 ♭7 9 ♯11 13 of C13♯11 (D over C7), with the root in the bass"


def test_a_suspension_without_its_fifth_stands_behind_the_slash_chord() -> None:
    symbols = [str(reading.chord) for reading in name_chord("G2 F3 A3 C4".split())]

    assert symbols.index("F/G") < symbols.index("G9sus4no5")


@pytest.mark.parametrize(
    ("notes", "chord"),
    # The left-hand voicings of jazz pianists, from memory.
    [
        ("E3 Bb3 D4 G4", "C9/E"),
        ("Bb3 E4 A4 D5", "C13no5/B♭"),
        ("F3 A3 C4 E4", "Dm9/F"),
        ("G#3 B3 D4 F4", "E7♭9/G♯"),
    ],
)
def test_a_chord_whose_root_does_not_sound_is_ranked_low_and_said(notes: str, chord: str) -> None:
    readings = name_chord(notes.split())
    rootless = next(reading for reading in readings if str(reading.chord) == chord)

    assert rootless.without == ("R",)
    assert "without its root" in rootless.reason
    assert rootless.rank > 1
    assert not readings[0].without


@pytest.mark.parametrize(
    ("notes", "reason"),
    [
        ("C4 Db4 D4", "a cluster: C D♭ D"),
        ("E4 F4 G4", "a cluster: E F G"),
        ("B3 C4 C#4 D4 E4", "a cluster: B C C♯ D E"),
        ("C4 Db4", "two notes, a minor second from C up to D♭"),
        ("C4 F#4", "two notes, a tritone from C up to F♯"),
    ],
)
def test_what_is_no_chord_is_called_by_its_name(notes: str, reason: str) -> None:
    found = best(notes)

    assert found.chord is None
    assert found.reason == reason


def test_a_row_of_seconds_can_still_be_a_chord() -> None:
    readings = name_chord("C4 D4 E4".split())

    assert str(readings[0].chord) == "Cadd9no5"
    assert "a cluster: C D E" in [reading.reason for reading in readings]


def test_the_key_spells_numbers() -> None:
    first = name_chord([63, 66, 70], "Eb minor")[0]

    assert str(first.chord) == "E♭m"
    assert str(name_chord([63, 66, 70], "E")[0].chord) == "D♯m"


def test_numbers_without_a_key_have_the_root_that_players_write() -> None:
    chords = ([61, 65, 68], [61, 64, 68], [66, 70, 73], [70, 73, 76, 79], [65, 68, 71, 74])

    symbols = [str(name_chord(numbers)[0].chord) for numbers in chords]
    assert symbols == ["D♭", "C♯m", "F♯", "B♭dim7", "Fdim7"]


@pytest.mark.parametrize(
    ("numbers", "key", "symbol"),
    [
        # The same notes over a third bass.
        ([64, 67, 69, 72], "C", "C6/E"),
        ([64, 67, 69, 72], "A minor", "Am7/E"),
        # A diminished seventh stands on the leading tone of its key.
        ([62, 65, 68, 71], "C minor", "Bdim7/D"),
        ([62, 65, 68, 71], "Eb minor", "Ddim7"),
        ([62, 65, 68, 71], None, "Ddim7"),
    ],
)
def test_the_key_breaks_ties(numbers: list[int], key: str | None, symbol: str) -> None:
    assert str(name_chord(numbers, key)[0].chord) == symbol


def test_an_odd_spelling_ranks_alike_in_every_key() -> None:
    # A♯11 and B♭11 over D sound and rank alike, whichever root a player would write.
    odd, plain = (
        name_chord([chord.bass, *chord.members])[0].chord
        for chord in map(read_chord, ("A#11/D", "A11/Db"))
        if isinstance(chord, Chord)
    )

    assert isinstance(odd, Chord)
    assert isinstance(plain, Chord)
    assert odd.quality == plain.quality


def test_the_melody_is_counted_in_or_left_out() -> None:
    notes = "C3 E3 G3 D5".split()

    assert str(name_chord(notes)[0].chord) == "Cadd9"
    without = name_chord(notes, melody="out")[0]
    assert str(without.chord) == "C"
    assert without.reason.endswith("under a melody on D, its 9")


def test_a_melody_that_another_voice_doubles_stays_in_the_chord() -> None:
    assert str(name_chord("C3 E3 G3 E5".split(), melody="out")[0].chord) == "C"
    assert name_chord("C3 E5".split(), melody="out") == ()


def test_doublings_and_the_order_of_typing_change_nothing() -> None:
    assert name_chord("A4 G5 C4 E6 E4 C5".split()) == name_chord("C4 E4 G4 A4".split())


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
            expected = sounding
            if reading.without:
                expected = sounding | {reading.chord.root.pitch_class}
                assert expected != sounding
            assert set(reading.chord.pitch_classes) == expected
            assert reading.chord.bass.pitch_class == names[0].pitch_class
            assert read_chord(str(reading.chord)) == reading.chord


@given(st.sets(st.integers(36, 84), min_size=2, max_size=8), st.integers(1, 11))
def test_transposed_numbers_are_read_alike(numbers: set[int], interval: int) -> None:
    here = name_chord(sorted(numbers))
    there = name_chord([number + interval for number in sorted(numbers)])

    assert [_moved(reading, interval) for reading in here] == [_moved(r, 0) for r in there]


def _moved(reading: Naming, interval: int) -> tuple[object, ...]:
    chord = reading.chord
    if chord is None:
        return None, reading.cost
    root, bass = chord.root.pitch_class, chord.bass.pitch_class
    place = (root + interval) % 12, (bass + interval) % 12
    return *place, chord.quality, reading.cost, reading.without


@given(st.sets(st.integers(0, 11), min_size=2))
def test_whatever_sounds_has_readings_ranked_by_their_cost(classes: set[int]) -> None:
    readings = name_chord(sorted(classes))

    assert readings
    costs = [reading.cost for reading in readings]
    assert costs == sorted(costs)
    assert [reading.rank for reading in readings] == list(range(1, len(readings) + 1))
