"""Keys found from notes and durations."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.harmony import find_key
from sitegen.score.pitch import Pitch

DURATIONS = st.fractions(min_value=Fraction(1, 16), max_value=8)


def notes(text: str) -> list[tuple[Pitch, Fraction]]:
    return [(Pitch.read(word, 4), Fraction(1)) for word in text.split()]


@pytest.mark.parametrize(
    ("melody", "key"),
    # Traditional tunes, from memory.
    [
        ("C C G G A A G F F E E D D C", "C major"),
        ("Eb Eb Bb Bb C Bb Ab Ab G G F F Eb", "E♭ major"),
        ("F# F# C# C# D# D# C# B B A# A# G# G# F#", "F♯ major"),
        ("A C B A E A B C D E F E D C B A G# A", "A minor"),
        ("Eb Gb F Eb Bb Eb F Gb Ab Bb Cb Bb Ab Gb F Eb D Eb", "E♭ minor"),
    ],
)
def test_the_key_of_a_tune_is_found(melody: str, key: str) -> None:
    assert str(find_key(notes(melody))[0].key) == key


def test_numbers_are_taken_for_the_simpler_signature() -> None:
    found = find_key([(number, 1) for number in (61, 65, 68, 61, 63, 65, 66, 68, 70, 72)])

    assert str(found[0].key) == "D♭ major"


def test_all_keys_are_ranked_by_how_well_they_fit() -> None:
    found = find_key(notes("C E G C F A G B C"))

    assert len({finding.key for finding in found}) == 24
    assert [finding.fit for finding in found] == sorted((f.fit for f in found), reverse=True)
    assert all(-1 <= finding.fit <= 1 for finding in found)


def test_silence_has_no_key() -> None:
    assert find_key([]) == ()
    assert find_key([(60, 0)]) == ()


@given(st.lists(st.tuples(st.integers(36, 84), DURATIONS), min_size=1, max_size=40))
def test_transposing_the_notes_transposes_the_fits(melody: list[tuple[int, Fraction]]) -> None:
    fits = {(f.key.tonic.pitch_class, f.key.mode): f.fit for f in find_key(melody)}
    for finding in find_key([(number + 5, duration) for number, duration in melody]):
        before = fits[(finding.key.tonic.pitch_class - 5) % 12, finding.key.mode]
        assert finding.fit == pytest.approx(before)
