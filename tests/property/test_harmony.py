"""What holds of every chord, key and note: transposition, respelling, names that read back."""

import string

from hypothesis import given
from hypothesis import strategies as st

from sitegen.harmony import (
    ChordSymbolError,
    degree,
    find_two_readings,
    key_degree,
    name_chord,
    read_chord,
    role,
    roman,
    roman_line,
)
from sitegen.harmony.qualities import SPELLINGS
from sitegen.score.chord import Chord, NoChord
from sitegen.score.interval import Interval
from sitegen.score.key import MODES, Key
from sitegen.score.pitch import PitchName

NAMES = st.builds(PitchName, st.sampled_from("ABCDEFG"), st.integers(-1, 1))
QUALITIES = sorted({quality.name for quality in SPELLINGS.values() if quality.named})
CHANGES = st.sampled_from(["", "(♭9)", "(♯11)", "add9", "no5", "no3", "(♭5)"])
SUFFIXES = st.builds(str.__add__, st.sampled_from(QUALITIES), CHANGES)


def fault_of(text: str) -> ChordSymbolError | None:
    try:
        read_chord(text)
    except ChordSymbolError as wrong:
        return wrong
    return None


def is_read(text: str) -> bool:
    return fault_of(text) is None


CHORDS = st.builds("{}{}/{}".format, NAMES, SUFFIXES, NAMES).filter(is_read)
LINES = st.lists(CHORDS, min_size=1, max_size=6)
TONICS = st.integers(-5, 6).map(PitchName.at_fifths)
KEYS = st.builds(Key, TONICS, st.sampled_from(MODES))
# No further than a writer goes in one step, so that double signs stay readable.
INTERVALS = st.sampled_from(
    [
        Interval(0, 1),
        Interval(1, 1),
        Interval(1, 2),
        Interval(2, 3),
        Interval(3, 5),
        Interval(5, 9),
    ]
)
# The same keys by another name: a diminished second up, D♭ is C♯.
ENHARMONIC = Interval(1, 0)
SYMBOL_SIGNS = "ABCDEFGHabm#♭♯♮−-Δ°ø+/()0123456789majdsuno., "


def chord_of(text: str) -> Chord:
    chord = read_chord(text)
    assert isinstance(chord, Chord)
    return chord


def moved(text: str, by: Interval) -> Chord:
    chord = chord_of(text)
    root, bass = by.above_name(chord.root), by.above_name(chord.bass)
    members = tuple(by.above_name(member) for member in chord.members)
    return Chord(root, chord.quality, members, chord.degrees, bass)


def moved_key(key: Key, by: Interval) -> Key:
    return Key(by.above_name(key.tonic), key.mode)


@given(LINES, KEYS, INTERVALS)
def test_numerals_are_the_same_in_every_key(line: list[str], key: Key, by: Interval) -> None:
    there, home = [moved(text, by) for text in line], moved_key(key, by)

    assert [roman(chord, home) for chord in there] == [roman(text, key) for text in line]
    assert roman_line(there, home) == roman_line(line, key)


@given(LINES, KEYS)
def test_numerals_are_the_same_in_the_enharmonic_key(line: list[str], key: Key) -> None:
    there, home = [moved(text, ENHARMONIC) for text in line], moved_key(key, ENHARMONIC)

    assert home.tonic.pitch_class == key.tonic.pitch_class
    assert roman_line(there, home) == roman_line(line, key)


@given(NAMES, CHORDS, KEYS, INTERVALS | st.just(ENHARMONIC))
def test_degrees_and_roles_are_the_same_in_every_key(
    name: PitchName, text: str, key: Key, by: Interval
) -> None:
    note, chord = by.above_name(name), moved(text, by)

    assert degree(note, chord) == degree(name, text)
    assert role(note, chord) == role(name, text)
    assert key_degree(note, moved_key(key, by)) == key_degree(name, key)


@given(CHORDS)
def test_every_member_has_the_name_that_the_symbol_gives_it(text: str) -> None:
    chord = chord_of(text)

    named = [degree(member, chord) for member in chord.members]
    assert named == list(chord.degrees)


@given(NAMES, CHORDS)
def test_a_role_does_not_hang_on_spelling(name: PitchName, text: str) -> None:
    assert role(ENHARMONIC.above_name(name), text) == role(name, text)


@given(CHORDS, INTERVALS)
def test_transposed_notes_have_the_transposed_name(text: str, by: Interval) -> None:
    here, there = named(chord_of(text)), named(moved(text, by))

    if here is None or there is None:
        assert here is there
        return
    assert there.quality == here.quality
    for near, far in ((here.root, there.root), (here.bass, there.bass)):
        assert far.pitch_class == (near.pitch_class + by.semitones) % 12


def named(chord: Chord) -> Chord | None:
    found = name_chord([chord.bass, *chord.members])
    return found[0].chord if found else None  # a root alone is no chord


@given(CHORDS)
def test_a_name_reads_back_to_the_notes_that_sound(text: str) -> None:
    notes = [chord_of(text).bass, *chord_of(text).members]
    sounding = {name.pitch_class for name in notes}
    for reading in name_chord(notes):
        if reading.chord is None:
            continue
        back = read_chord(str(reading.chord))
        # A rootless reading sounds all of its chord but the root, and says so.
        absent = {back.root.pitch_class} if reading.without and back.root else set()
        assert set(back.pitch_classes) - absent == sounding
        assert not absent & sounding


@given(CHORDS)
def test_a_printed_symbol_reads_back_equal(text: str) -> None:
    chord = read_chord(text)

    assert read_chord(str(chord)) == chord
    assert read_chord(str(chord).replace("♭", "b").replace("♯", "#")) == chord


@given(st.text(max_size=20) | st.text(string.printable, max_size=12) | st.text(SYMBOL_SIGNS))
def test_any_text_is_read_or_refused_at_a_place_in_it(text: str) -> None:
    find_two_readings(text)
    wrong = fault_of(text)
    if wrong is None:
        assert isinstance(read_chord(text), Chord | NoChord)
    else:
        assert 0 <= wrong.start <= wrong.end <= len(text)
        assert wrong.message
