"""Names for notes that come as MIDI numbers."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.harmony import degree, line_goals, spell, spell_note
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

KEYS = st.sampled_from(["C", "Eb minor", "F# minor", "D dorian", "Bb", "B", "Gb"])
SYMBOLS = st.sampled_from(["C", "F#m7", "Ebsus2", "Bb7", "A7", "Dm7b5", "N.C."])


@pytest.mark.parametrize(
    ("midi", "key", "symbol", "name"),
    # Common practice, no source.
    [
        (71, "Eb minor", None, "C♭5"),
        (59, "Eb minor", "Ebsus2", "C♭4"),
        # B♭ is in the key: no A♯, whatever sounds below; and the reverse.
        (70, "D minor", "F#m7", "B♭4"),
        (70, "F# minor", "F#m7", "A♯4"),
        (70, "D minor", "F#", "A♯4"),
        (68, "A minor", None, "G♯4"),
        (68, "A minor", "E7", "G♯4"),
        (66, "C", None, "F♯4"),
        (63, "C", None, "E♭4"),
        (70, "C", None, "B♭4"),
        (68, "C", None, "A♭4"),
        (61, "C", None, "C♯4"),
        (70, "A minor", None, "B♭4"),
        (68, "C", "Fm", "A♭4"),
        (68, "C", "E7", "G♯4"),
        (61, "C", "D7", "C♯4"),
        (61, "C", "Fm", "D♭4"),
        (68, "C", "G7", "A♭4"),
        (68, "A minor", "C", "A♭4"),
        (68, "A minor", "Cno5", "G♯4"),
        (60, "C", "Am7/C", "C4"),
        (63, None, "B7", "D♯4"),
        (64, None, "Ebm7", "F♭4"),
        (63, None, None, "E♭4"),
        (61, None, None, "C♯4"),
        (66, None, "N.C.", "F♯4"),
        (38, "C", "C/D", "D2"),
    ],
)
def test_a_note_is_spelled_for_its_chord_and_key(
    midi: int, key: str | None, symbol: str | None, name: str
) -> None:
    assert str(spell_note(midi, key, symbol)) == name


@pytest.mark.parametrize(
    ("key", "symbol", "midi", "goal", "name", "said"),
    # What the note is called over the chord. Common practice, no source.
    [
        # Chords outside the key have their own names: applied dominants and their leading tones.
        ("C", "A7", 61, 62, "C♯4", "3"),
        ("C", "B7", 63, 64, "D♯4", "3"),
        ("C", "E7", 68, 69, "G♯4", "3"),
        ("C", "C7", 70, 69, "B♭4", "♭7"),
        ("C", "C#dim7", 70, 69, "B♭4", "♭♭7"),
        ("C", "F#dim7", 63, 62, "E♭4", "♭♭7"),
        ("Eb", "G7", 59, 60, "B3", "3"),
        ("E", "D#7", 67, 68, "F♯♯4", "3"),
        # Borrowed chords and the tritone substitute have flats.
        ("C", "Fm", 68, 67, "A♭4", "♭3"),
        ("C", "Ab", 63, 62, "E♭4", "5"),
        ("C", "Db7", 71, 72, "C♭5", "♭7"),
        # In the key, foreign to the chord: the key's name.
        ("D minor", "F#m7", 70, 69, "B♭4", "3"),
        ("F# minor", "F#m7", 70, 71, "A♯4", "3"),
        ("E", "C", 68, 69, "G♯4", "♯5"),
        ("Ab", "C7", 68, 67, "A♭4", "♭13"),
        # Tensions of dominants.
        ("C", "G7", 68, 67, "A♭4", "♭9"),
        ("C", "G7", 70, 69, "B♭4", "♭3"),
        ("C", "G7#9", 70, 72, "A♯4", "♯9"),
        ("C", "G7b9", 68, 69, "A♭4", "♭9"),
        ("C", "C7#11", 66, 65, "F♯4", "♯11"),
        ("C", "F7", 71, 72, "B4", "♯11"),
        # Blue notes: the ♭3 and ♭7 stay flat when they rise, the tritone is ♯11 up and ♭5 down.
        ("C", "C7", 63, 64, "E♭4", "♭3"),
        ("C", "C7", 63, 60, "E♭4", "♭3"),
        ("C", "C7#9", 63, 64, "D♯4", "♯9"),
        ("A", "A7", 60, 61, "C4", "♭3"),
        ("E", "E", 74, 75, "D5", "♭7"),
        ("C", "C7", 66, 67, "F♯4", "♯11"),
        ("C", "C7", 66, 65, "G♭4", "♭5"),
        ("A", "A7", 63, 62, "E♭4", "♭5"),
        ("A minor", "Am7", 63, 62, "E♭4", "♭5"),
        # A bass walks into the next chord: sharp from below, flat from above.
        ("C", "G7", 44, 45, "G♯2", "♭9"),
        ("C", "C", 49, 50, "C♯3", "♭9"),
        ("C", "Dm7", 39, 40, "D♯2", "♭9"),
        ("C", "G", 51, 52, "D♯3", "♯5"),
        ("F", "C7", 49, 50, "C♯3", "♭9"),
        ("C", "Am7", 51, 50, "E♭3", "♭5"),
        ("C", "Em7", 46, 45, "B♭2", "♭5"),
        ("C", "Dm7", 44, 43, "A♭2", "♭5"),
        ("C", "C", 56, 55, "A♭3", "♭13"),
        ("Eb", "Bb7", 47, 48, "B2", "♭9"),
        # The ♯4 of the key falls as it rises, where its flat is not said either.
        ("C", None, 66, 65, "F♯4", ""),
        ("C", "G7", 66, 65, "F♯4", "7"),
        # The 7 of a dominant's passing line keeps its sharp.
        ("C", "D7", 61, 60, "C♯4", "7"),
        ("C", None, 70, 71, "A♯4", ""),
        ("C", None, 61, 60, "D♭4", ""),
        ("A minor", None, 63, 64, "D♯4", ""),
        (None, None, 63, 64, "D♯4", ""),
        (None, None, 66, 65, "G♭4", ""),
    ],
)
def test_a_note_has_the_name_of_its_degree_and_its_way(
    key: str | None, symbol: str | None, midi: int, goal: int, name: str, said: str
) -> None:
    pitch = spell_note(midi, key, symbol, goal)
    assert (str(pitch), degree(pitch, symbol) if symbol else "") == (name, said)


@given(st.integers(0, 127), st.none() | KEYS, st.none() | SYMBOLS, st.none() | st.integers(0, 127))
def test_a_spelled_note_sounds_as_before(
    midi: int, key: str | None, symbol: str | None, goal: int | None
) -> None:
    assert spell_note(midi, key, symbol, goal).midi == midi


@given(st.integers(30, 90), st.none() | KEYS, st.none() | SYMBOLS, st.integers(2, 30))
def test_a_goal_further_off_changes_nothing(
    midi: int, key: str | None, symbol: str | None, distance: int
) -> None:
    assert spell_note(midi, key, symbol, midi + distance) == spell_note(midi, key, symbol)


@pytest.mark.parametrize(
    ("moments", "goals"),
    [
        ([[43], [44], [45]], [44, 45, None]),
        # A repeated note goes where its last one goes, across rests.
        ([[44], [44], [], [45]], [45, 45, None, None]),
        # Where notes sound together there is no line.
        ([[44], [45, 48], [47]], [None, None, None]),
        ([], []),
    ],
)
def test_a_line_goes_to_its_next_other_note(
    moments: list[list[int]], goals: list[int | None]
) -> None:
    assert line_goals(moments) == goals


@pytest.mark.parametrize(
    ("numbers", "signature", "names"),
    # Scales: any rudiments book.
    [
        ([60, 62, 64, 65, 67, 69, 71, 72], None, "C4 D4 E4 F4 G4 A4 B4 C5"),
        ([63, 65, 66, 68, 70, 71, 73, 75], -6, "E♭4 F4 G♭4 A♭4 B♭4 C♭5 D♭5 E♭5"),
        ([63, 65, 66, 68, 70, 71, 73, 75], 6, "D♯4 E♯4 F♯4 G♯4 A♯4 B4 C♯5 D♯5"),
        ([57, 59, 60, 62, 64, 65, 68, 69], 0, "A3 B3 C4 D4 E4 F4 G♯4 A4"),
        ([62, 64, 65, 67, 69, 70, 73, 74], None, "D4 E4 F4 G4 A4 B♭4 C♯5 D5"),
        ([67, 66, 67, 60, 64, 67], 0, "G4 F♯4 G4 C4 E4 G4"),
        # Chromatic steps, sharps up in C and in A♭, and the flats that go down. Common practice.
        ([60, 61, 62, 63, 64, 65, 66, 67], 0, "C4 C♯4 D4 D♯4 E4 F4 F♯4 G4"),
        (
            [72, 71, 70, 69, 68, 67, 65, 64, 63, 62, 61, 60],
            0,
            "C5 B4 B♭4 A4 A♭4 G4 F4 E4 E♭4 D4 D♭4 C4",
        ),
        ([68, 69, 70, 71, 72, 73, 74, 75], -4, "A♭4 A4 B♭4 B4 C5 D♭5 D5 E♭5"),
        # Applied dominants of A minor and of F, chord by chord: E7 Am, C7 F. Any harmony book.
        ([52, 59, 62, 68, 57, 60, 64, 69], 0, "E3 B3 D4 G♯4 A3 C4 E4 A4"),
        ([48, 64, 67, 70, 53, 65, 69, 72], 0, "C3 E4 G4 B♭4 F3 F4 A4 C5"),
        # The augmented sixth A♭ F♯ that opens to an octave on G. Any harmony book.
        ([56, 60, 63, 66, 55, 59, 62, 67], -3, "A♭3 C4 E♭4 F♯4 G3 B3 D4 G4"),
        # The Neapolitan sixth in A minor before the dominant. Any harmony book.
        (
            [50, 62, 65, 70, 52, 64, 68, 71, 57, 64, 69, 72],
            0,
            "D3 D4 F4 B♭4 E3 E4 G♯4 B4 A3 E4 A4 C5",
        ),
    ],
)
def test_lines_are_spelled_in_their_key(
    numbers: list[int], signature: int | None, names: str
) -> None:
    assert " ".join(map(str, spell(numbers, signature))) == names


@pytest.mark.parametrize("signature", range(-6, 6))
@pytest.mark.parametrize(
    ("numbers", "places"),
    # The chromatic scale of a major key, raised notes up, lowered notes and the ♯4 down: Kostka
    # and Payne, Tonal Harmony; Read, Music Notation (from memory). Places in fifths from C.
    [
        (range(60, 73), "0 7 2 9 4 -1 6 1 8 3 10 5 0"),
        (range(72, 59, -1), "0 5 -2 3 -4 1 6 -1 4 -3 2 -5 0"),
        ([69, 68, 67, 65, 64, 63, 62, 61, 60], "3 -4 1 -1 4 -3 2 -5 0"),
        ([76, 75, 76, 74, 73, 74], "4 9 4 2 7 2"),
        ([64, 65, 64, 62, 63, 62, 60, 61, 60], "4 -1 4 2 -3 2 0 -5 0"),
    ],
)
def test_chromatic_steps_go_up_in_sharps_and_down_in_flats(
    numbers: list[int], places: str, signature: int
) -> None:
    moved = [number + 7 * signature for number in numbers]
    names = [pitch.name.fifths - signature for pitch in spell(moved, signature)]
    assert " ".join(map(str, names)) == places


@given(st.lists(st.integers(0, 127), max_size=60), st.none() | st.integers(-7, 7))
def test_a_spelled_line_sounds_as_before(numbers: list[int], signature: int | None) -> None:
    assert [pitch.midi for pitch in spell(numbers, signature)] == numbers


@given(st.lists(st.integers(30, 90), max_size=60), st.integers(-7, 6))
def test_a_line_a_fifth_higher_has_names_a_fifth_higher(
    numbers: list[int], signature: int
) -> None:
    names = [pitch.name.fifths + 1 for pitch in spell(numbers, signature)]
    risen = spell([number + 7 for number in numbers], signature + 1)

    assert [pitch.name.fifths for pitch in risen] == names


@given(st.lists(st.integers(0, 127), max_size=60), st.integers(-7, 7))
def test_notes_of_the_signature_keep_its_names(numbers: list[int], signature: int) -> None:
    scale = Key(PitchName.at_fifths(signature)).scale
    classes = {name.pitch_class for name in scale}
    given_names = {pitch.name for pitch in spell(numbers, signature)}

    assert {name for name in given_names if name.pitch_class in classes} <= set(scale)
