"""Roman numerals in major, minor and the modes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.harmony import read_chord, roman
from sitegen.score.chord import Chord
from sitegen.score.interval import Interval
from sitegen.score.key import MODES, Key
from sitegen.score.pitch import PitchName

QUALITIES = " m 5 sus2 sus4 7 m7 maj7 m7b5 dim dim7 + 6 m6 add9 7b9 7sus4 9 13 mmaj7".split(" ")
NAMES = st.builds(PitchName, st.sampled_from("ABCDEFG"), st.integers(-1, 1))
INTERVALS = st.sampled_from([Interval(1, 1), Interval(2, 3), Interval(3, 5), Interval(5, 9)])


def numerals(progression: str, key: str) -> str:
    return " ".join(roman(symbol, key) for symbol in progression.split())


@pytest.mark.parametrize(
    ("key", "progression", "expected"),
    [
        # The chords on the steps of the scales: any harmony book.
        ("C", "C Dm Em F G Am Bdim", "I ii iii IV V vi vii°"),
        ("C", "Cmaj7 Dm7 Em7 Fmaj7 G7 Am7 Bm7b5", "Imaj7 ii7 iii7 IVmaj7 V7 vi7 viiø7"),
        ("A minor", "Am Bdim C Dm Em F G", "i ii° ♭III iv v ♭VI ♭VII"),
        ("A minor", "E E7 G#dim G#dim7 Caug Bm7b5", "V V7 vii° vii°7 ♭III+ iiø7"),
        ("D dorian", "Dm Em F G Am Bdim C", "i ii ♭III IV v vi° ♭VII"),
        ("E phrygian", "Em F G Am Bdim C Dm", "i ♭II ♭III iv v° ♭VI ♭vii"),
        ("F lydian", "F G Am Bdim C Dm Em", "I II iii ♯iv° V vi vii"),
        ("G mixolydian", "G Am Bdim C Dm Em F", "I ii iii° IV v vi ♭VII"),
        ("B locrian", "Bdim C Dm Em F G Am", "i° ♭II ♭iii iv ♭V ♭VI ♭vii"),
        # Borrowed from the parallel minor, and the Neapolitan: any harmony book.
        ("C", "Fm Ab Bb Eb Db Fm6 Dm7b5", "iv ♭VI ♭VII ♭III ♭II ivadd6 iiø7"),
        ("C", "Db/F Bb7 Ab7 F7", "♭II6 ♭VII7 ♭VI7 IV7"),
        ("A minor", "D D7 A Bb Bb/D", "IV IV7 I ♭II ♭II6"),
        # Applied chords: any harmony book.
        ("C", "D7 A7 E7 B7 C7", "V7/V V7/ii V7/vi V7/iii V7/IV"),
        ("C", "D A D7/F# A7b9", "V/V V/ii V65/V V7♭9/ii"),
        ("C", "C#dim7 F#dim7 G#dim7 F#m7b5", "vii°7/ii vii°7/V vii°7/vi viiø7/V"),
        ("A minor", "A7 B7 C7 D#dim7", "V7/iv V7/V V7/♭VI vii°7/V"),
        (
            "Eb",
            "Eb G7/D Cm Eb7/Bb Ab Abm6 Eb/Bb F7 Bb7",
            "I V43/vi vi V43/IV IV ivadd6 I64 V7/V V7",
        ),
        # Not applied: nothing to resolve to, or at home in the key.
        ("A minor", "G7 F7", "♭VII7 ♭VI7"),
        ("C", "Bdim7 Ebdim7 Em7b5 C+", "vii°7 ♭iii°7 iiiø7 I+"),
        ("G mixolydian", "G7 C7", "I7 IV7"),
        # Without a third: common practice, no source.
        ("Eb minor", "Ebsus2 Gbsus2 Ab5 Db5 Eb5", "isus2 ♭IIIsus2 iv5 ♭VII5 i5"),
        ("C", "Fsus2 Gsus4 D5 F#5 Bbsus2", "IVsus2 Vsus4 ii5 ♯IV5 ♭VIIsus2"),
        ("A minor", "E5 E7sus4", "v5 V7sus4"),
        # Inversions have figures where figured bass has them, else the bass's degree.
        ("C", "C/E C/G G7/B G7/D G7/F", "I6 I64 V65 V43 V42"),
        ("C", "C/D Cmaj7/E C5/G Bb/C Am7/G", "I/2 Imaj65 I5/5 ♭VII/1 vi42"),
        ("C", "Bdim/D Bm7b5/D Bdim7/D C6 C6/9", "vii°6 viiø65 vii°65 Iadd6 I6/9"),
        ("C", "Fmaj7/A Fmaj7/E G9/B C/B", "IVmaj65 IVmaj42 V9/7 I/7"),
        ("A minor", "Am/G Am/C A7/B", "i42 i6 V7/iv/2"),
        ("A minor", "Ammaj7/C Cmaj7#5/E", "imaj65 ♭III+maj65"),
    ],
)
def test_progressions_have_their_numerals(key: str, progression: str, expected: str) -> None:
    assert numerals(progression, key) == expected


# Worked from harmony books as remembered; from memory, no page at hand.
@pytest.mark.parametrize(
    ("key", "progression", "expected"),
    [
        ("G", "G Em Am D7 G", "I vi ii V7 I"),  # the doo-wop turnaround
        ("A minor", "Am G F E", "i ♭VII ♭VI V"),  # the Andalusian cadence
        ("D", "D A/C# Bm F#m G D/F# G A", "I V6 vi iii IV I6 IV V"),  # a ground bass in D
        ("A", "A G D A", "I ♭VII IV I"),  # double plagal
        ("C", "Dm7 G7 Cmaj7", "ii7 V7 Imaj7"),
        ("C minor", "Dm7b5 G7b9 Cm", "iiø7 V7♭9 i"),
    ],
)
def test_familiar_progressions(key: str, progression: str, expected: str) -> None:
    assert numerals(progression, key) == expected


def test_no_chord_has_no_numeral() -> None:
    assert roman("N.C.", "C") == ""


@given(NAMES, st.sampled_from(QUALITIES), NAMES, NAMES, st.sampled_from(MODES), INTERVALS)
def test_numerals_survive_transposition(
    root: PitchName,
    quality: str,
    bass: PitchName,
    tonic: PitchName,
    mode: str,
    interval: Interval,
) -> None:
    here = read_chord(f"{root}{quality}/{bass}")
    assert isinstance(here, Chord)
    over = interval.above_name
    there = read_chord(f"{over(root)}{here.quality}/{over(bass)}")
    assert roman(there, Key(over(tonic), mode)) == roman(here, Key(tonic, mode))
