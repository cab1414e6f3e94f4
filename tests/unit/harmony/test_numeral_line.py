"""Roman numerals of progressions, each chord read with the next in view."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.harmony import read_chord, roman, roman_line
from sitegen.score.chord import Chord
from sitegen.score.interval import Interval
from sitegen.score.key import MODES, Key
from sitegen.score.pitch import PitchName

QUALITIES = " m 7 m7 maj7 m7b5 dim dim7 + 7sus4 9 7b5".split(" ")
NAMES = st.builds(PitchName, st.sampled_from("ABCDEFG"), st.integers(-1, 1))
SYMBOLS = st.builds("{}{}".format, NAMES, st.sampled_from(QUALITIES))
INTERVALS = st.sampled_from([Interval(1, 1), Interval(2, 3), Interval(3, 5), Interval(5, 9)])


def numerals(progression: str, key: str) -> str:
    return " ".join(roman_line(progression.split(), key))


# Kostka and Payne, Tonal Harmony: secondary functions, mixture, augmented sixths; Aldwell and
# Schachter, Harmony and Voice Leading: the same. Worked from their rules, from memory.
@pytest.mark.parametrize(
    ("key", "progression", "expected"),
    [
        # Secondary dominants and leading-tone chords that resolve, also by way of their like.
        ("C", "C D G C", "I V/V V I"),
        ("C", "C A A7 Dm G7 C", "I V/ii V7/ii ii V7 I"),
        ("C", "F D7/F# C/G G7 C", "IV V65/V I64 V7 I"),
        ("C", "C F#dim7 G C#dim7 Dm", "I vii°7/V V vii°7/ii ii"),
        ("C", "C E7 F Dm", "I V7/vi IV ii"),  # deceptive
        ("C", "C C7 F C", "I V7/IV IV I"),
        ("C", "E7 A7 D7 G7 C", "V7/vi V7/ii V7/V V7 I"),  # named against the key, no V/V/V
        # In minor: of iv, of the relative major, and the leading-tone chords of the key's own.
        ("C minor", "Cm C/E Fm G7 Cm", "i V6/iv iv V7 i"),
        ("C minor", "Cm Bb7 Eb Fm", "i V7/♭III ♭III iv"),
        ("C minor", "Cm Bb/D Eb", "i V6/♭III ♭III"),
        ("C minor", "Cm Ddim/F Eb", "i vii°6/♭III ♭III"),
        ("C minor", "Cm Adim/C Bb", "i vii°6/♭VII ♭VII"),
        ("C minor", "Ddim/F G Cm", "ii°6 V i"),
        # The Picardy third, and a cadence that goes on from one.
        ("C minor", "Fm G C", "iv V I"),
        ("C minor", "G7 C C Fm", "V7 I I iv"),
        # The cadential six-four keeps its notes' name; the Neapolitan its root's.
        ("C", "Dm7/F C/G G7 C", "ii65 I64 V7 I"),
        ("C minor", "Cm Db/F G Cm", "i ♭II6 V i"),
        # Augmented sixths, in the letters of chord symbols and in their own.
        ("C minor", "Fm/Ab Ab7 G", "iv6 Ger65 V"),
        ("C minor", "Ab7 Cm/G G", "Ger65 i64 V"),
        ("C minor", "Ab7no5 G", "It6 V"),
        ("C minor", "Ab7b5 G", "Fr43 V"),
        ("C", "D7b5/Ab G7", "Fr43 V7"),
        ("C minor", "Ab7 Db", "V7/♭II ♭II"),
        ("C minor", "Ab7 Cm", "♭VI7 i"),
    ],
)
def test_progressions_of_harmony_books(key: str, progression: str, expected: str) -> None:
    assert numerals(progression, key) == expected


# Songbook and jazz practice: no source but common teaching.
@pytest.mark.parametrize(
    ("key", "progression", "expected"),
    [
        # Major triads that do not resolve are named by their roots, as borrowed ones are.
        ("C", "C D F C", "I II IV I"),
        ("C", "C Eb F Bb", "I ♭III IV ♭VII"),
        ("C", "C Bb Eb F", "I ♭VII ♭III IV"),
        ("A minor", "Am G C F", "i ♭VII ♭III ♭VI"),
        ("A minor", "Am C/E F D", "i ♭III6 ♭VI IV"),
        ("A minor", "Am G F E", "i ♭VII ♭VI V"),
        # Sevenths off their way stay applied.
        ("C", "C D7 F C", "I V7/V IV I"),
        # The blues, and sevenths at home.
        ("C", "C7 F7 C7 G7 F7 C7", "I7 IV7 I7 V7 IV7 I7"),
        ("C", "C7 F7 C7 A7 D7 G7 C7", "I7 IV7 I7 V7/ii V7/V V7 I7"),
        ("G mixolydian", "G7 C7 G7", "I7 IV7 I7"),
        # The ii of an applied dominant.
        ("C", "C Gm7 C7 Fmaj7", "I ii7/IV V7/IV IVmaj7"),
        ("C", "Bm7b5 E7 Am7", "iiø7/vi V7/vi vi7"),
        ("C", "F#m7b5 B7 Em7", "iiø7/iii V7/iii iii7"),
        ("C", "C Am7 D7 G7", "I vi7 V7/V V7"),
        ("C", "G Am7 D7 G", "V ii7/V V7/V V"),
        ("C", "C A7sus4 A7 Dm7", "I V7sus4/ii V7/ii ii7"),
        ("C", "F F#m7b5 Fm C", "IV ♯ivø7 iv I"),
        # Tritone substitutes.
        ("C", "Dm7 Db7 Cmaj7", "ii7 subV7 Imaj7"),
        ("C", "Em7 Eb7 Dm7 Db7 C6", "iii7 subV7/ii ii7 subV7 Iadd6"),
        ("C", "Dm7 Ab9 G7", "ii7 subV9/V V7"),
        ("C", "F Fm Bb7 C", "IV iv ♭VII7 I"),  # no substitute: the whole step up
        ("C", "Eb7 Ab C", "V7/♭VI ♭VI I"),
        # N.C. is read across.
        ("C", "C D N.C. G", "I V/V  V"),
    ],
)
def test_progressions_of_songs(key: str, progression: str, expected: str) -> None:
    assert numerals(progression, key) == expected


def test_no_chords_have_no_numerals() -> None:
    assert roman_line([], "C") == ()
    assert roman_line(["N.C."], "C") == ("",)


@given(SYMBOLS, NAMES, st.sampled_from(MODES))
def test_a_chord_alone_is_read_as_by_itself(symbol: str, tonic: PitchName, mode: str) -> None:
    key = Key(tonic, mode)
    assert roman_line([symbol], key) == (roman(symbol, key),)


@given(st.lists(SYMBOLS, max_size=6), NAMES, st.sampled_from(MODES), INTERVALS)
def test_lines_survive_transposition(
    symbols: list[str], tonic: PitchName, mode: str, interval: Interval
) -> None:
    here = [chord for chord in map(read_chord, symbols) if isinstance(chord, Chord)]
    over = interval.above_name
    there = [read_chord(f"{over(chord.root)}{chord.quality}") for chord in here]
    moved = roman_line(there, Key(over(tonic), mode))
    assert moved == roman_line(here, Key(tonic, mode))


@given(st.lists(SYMBOLS, min_size=1, max_size=6), NAMES, st.sampled_from(MODES))
def test_repeating_a_chord_does_not_change_its_numeral(
    symbols: list[str], tonic: PitchName, mode: str
) -> None:
    key = Key(tonic, mode)
    doubled = [symbol for symbol in symbols for _ in range(2)]
    numbered = roman_line(doubled, key)
    assert numbered[::2] == numbered[1::2] == roman_line(symbols, key)
