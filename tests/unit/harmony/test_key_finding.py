"""Keys found from notes and durations."""

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.harmony import find_key
from sitegen.harmony.key_finding import beliefs, key_evidence
from sitegen.score.key import MODES, Key
from sitegen.score.pitch import Pitch, PitchName

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


def test_a_scale_decides_by_where_it_begins_and_ends() -> None:
    # The seven notes are those of C major and of natural A minor alike: any rudiments book.
    up_from_c, up_from_a = find_key(notes("C D E F G A B C")), find_key(notes("A B C D E F G A"))

    assert [str(finding.key) for finding in up_from_c[:1]] == ["C major"]
    assert [str(finding.key) for finding in up_from_a[:1]] == ["A minor"]


def test_an_ambiguous_tune_names_its_rival_with_little_between() -> None:
    # Verse in A minor and refrain in C, as in many songs: common practice, no source.
    plain = find_key(notes("C E G C F A G B C E D G C"))
    torn = find_key(notes("A C E A B C D E G F E D G C E C"))

    assert {str(finding.key) for finding in torn[:2]} == {"A minor", "C major"}
    assert torn[0].fit - torn[1].fit < plain[0].fit - plain[1].fit


def test_the_bass_of_the_last_chord_counts_and_not_its_top() -> None:
    # The same four chords, ended on the chord of C with its fifth on top, and left on that of G.
    start = "C3 G3 E4 C5 F3 A3 F4 C5 G3 B3 D4 G4"

    def tonic_fit(end: str) -> float:
        sounding = [(Pitch.read(word), 1) for word in f"{start} {end}".split()]
        return next(f.fit for f in find_key(sounding) if str(f.key) == "C major")

    assert tonic_fit("C3 E3 C4 G4") > tonic_fit("E3 C4 G4 C5")


@pytest.mark.parametrize(
    ("tune", "key"),
    [
        # Scarborough Fair, and Old Joe Clark's first strain; traditional, from memory.
        (
            "D D A A A E F E D A C5 D5 C5 A B G A D5 D5 D5 C5 A A G F E C D A G F E D C D",
            "D dorian",
        ),
        ("E F# G F# E D E C# A3 E F# G F# E E F# G F# E D E C# A3 C# B3 A3 A3", "A mixolydian"),
    ],
)
def test_modes_are_found_when_asked_for(tune: str, key: str) -> None:
    found = find_key(notes(tune), modes=("major", "minor", "dorian", "mixolydian"))

    assert len(found) == 48
    assert str(found[0].key) == key


def test_numbers_are_taken_for_the_simpler_signature() -> None:
    found = find_key([(number, 1) for number in (61, 65, 68, 61, 63, 65, 66, 68, 70, 72)])

    assert str(found[0].key) == "D♭ major"


def test_all_keys_are_ranked_by_how_well_they_fit() -> None:
    found = find_key(notes("C E G C F A G B C"))

    assert len({finding.key for finding in found}) == 24
    assert [finding.fit for finding in found] == sorted((f.fit for f in found), reverse=True)
    assert sum(finding.fit for finding in found) == pytest.approx(1)
    assert all(0 <= finding.fit <= 1 for finding in found)


def test_silence_has_no_key() -> None:
    assert find_key([]) == ()
    assert find_key([(60, 0)]) == ()


@given(st.lists(st.tuples(st.integers(36, 84), DURATIONS), min_size=1, max_size=40))
def test_transposing_the_notes_transposes_the_fits(melody: list[tuple[int, Fraction]]) -> None:
    fits = {(f.key.tonic.pitch_class, f.key.mode): f.fit for f in find_key(melody)}
    for finding in find_key([(number + 5, duration) for number, duration in melody]):
        before = fits[(finding.key.tonic.pitch_class - 5) % 12, finding.key.mode]
        assert finding.fit == pytest.approx(before)


@given(
    st.lists(st.tuples(st.integers(36, 84), DURATIONS), min_size=1, max_size=40),
    st.sampled_from([2, 4, 3]),
)
def test_the_unit_of_durations_does_not_matter(
    melody: list[tuple[int, Fraction]], factor: int
) -> None:
    fits = {finding.key: finding.fit for finding in find_key(melody)}
    for finding in find_key([(number, duration * factor) for number, duration in melody]):
        assert finding.fit == pytest.approx(fits[finding.key])


@given(st.integers(-6, 5), st.sampled_from(MODES))
def test_the_scale_of_a_mode_played_up_and_down_is_that_mode(fifths: int, mode: str) -> None:
    key = Key(PitchName.at_fifths(fifths), mode)
    names = [*key.scale, key.tonic, *reversed(key.scale)]

    found = find_key([(Pitch(name, 4), 1) for name in names], modes=(mode,))

    assert found[0].key == key


def test_a_short_loop_is_less_sure_than_the_tune_that_goes_on() -> None:
    tune = notes(
        "C C G G A A G F F E E D D C G G F F E E D G G F F E E D C C G G A A G F F E E D D C"
    )

    fits = [find_key(tune[:count])[0].fit for count in (2, 7, 42)]

    assert fits == sorted(fits)
    assert fits[0] < 0.5
    assert fits[2] > 0.75


def test_striking_the_same_notes_again_is_no_surer() -> None:
    chord = [(number, 1) for number in (48, 55, 60, 64)]

    assert find_key(chord * 16)[0].fit < find_key(chord * 2)[0].fit + 0.1


@given(st.lists(st.tuples(st.integers(36, 84), DURATIONS), min_size=1, max_size=40))
def test_tempering_keeps_the_order_of_the_keys(melody: list[tuple[int, Fraction]]) -> None:
    evidence = key_evidence([(number, float(duration)) for number, duration in melody])
    found = find_key(melody)
    sums = beliefs(evidence, [finding.key for finding in found])

    assert all(a >= b - 1e-9 for a, b in pairwise(sums))
