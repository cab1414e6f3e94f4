"""Symbols that writers use in two ways."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.harmony import find_two_readings, read_chord

# The symbol, as it is read, and as others mean it. Common practice, no source.
DOUBTFUL = [
    ("C2", "Cadd9", "Csus2"),
    ("C4", "Csus4", "Cadd11"),
    ("Csus9", "C5(9)", "C9sus4"),
    ("C11", "C9(11)", "C7sus4(9)"),
    ("C°", "Cdim", "Cdim7"),
    ("Fo", "Fdim", "Fdim7"),
    ("C-9", "Cm9", "C(b9)"),
    ("C−9", "Cm9", "C(b9)"),
    ("C+9", "C9#5", "Cadd9"),
    ("C7+9", "C7#9", "C9#5"),
    ("C7(+9)", "C7#9", "C9#5"),
    ("Bb7+", "Bb7#5", "Bbmaj7"),
    ("Cm7+", "Cm7#5", "Cm(maj7)"),
    ("Cm+7", "Cm(maj7)", "Cm7#5"),
    ("C7/4", "C7add4", "C7sus4"),
    ("C9/6", "C9add6", "C6/9"),
    ("Cmaj#11", "Cadd#11", "Cmaj7#11"),
    ("CM(#5)", "Caug", "Cmaj7#5"),
    ("Cmaj(b5)", "C(b5)", "Cmaj7b5"),
    ("C2/G", "Cadd9/G", "Csus2/G"),
    ("Cb9", "Cb7add9", "C(b9)"),
    ("E#5", "E#(no3)", "E(#5)"),
]
CLEAR = (
    "C Cm C5 C7 C-7 C-maj7 C-Δ7 C+7 C7-5 C7-9 Cm7b5 C-7b5 Cmaj7 C9 Cmaj9 C7b9 Cadd9 Csus Csus2 "
    "Csus2sus4 C6/9 C69 C13 Calt Cdim Cdim7 Eb9 Bb13 C#5 F#9 C/E C7/E N.C. CΔ Cø H7"
)
ROOTS = st.builds(str.__add__, st.sampled_from("ABCDEFG"), st.sampled_from(["", "b", "#"]))


def sound(symbol: str) -> tuple[int, ...]:
    return read_chord(symbol).pitch_classes


@pytest.mark.parametrize(("symbol", "ours", "theirs"), DOUBTFUL)
def test_a_doubtful_symbol_tells_both_readings(symbol: str, ours: str, theirs: str) -> None:
    two = find_two_readings(symbol)

    assert two is not None
    assert sound(two.ours) == sound(ours) == sound(symbol)
    assert sound(two.theirs) == sound(theirs) != sound(symbol)


@pytest.mark.parametrize("symbol", CLEAR.split())
def test_a_clear_symbol_tells_nothing(symbol: str) -> None:
    assert find_two_readings(symbol) is None


@given(ROOTS, st.sampled_from([symbol[1:] for symbol, *_ in DOUBTFUL if symbol[0] == "C"]))
def test_both_readings_are_clear_themselves(root: str, suffix: str) -> None:
    two = find_two_readings(root + suffix)
    if two is not None:
        assert read_chord(two.ours) == read_chord(root + suffix) != read_chord(two.theirs)
        assert find_two_readings(two.ours) is None
        assert find_two_readings(two.theirs) is None


@given(st.text(alphabet="ABCDEFGb#♭♯-+°o/()0123456789majsu ", max_size=12))
def test_any_text_has_two_readings_or_none(text: str) -> None:
    two = find_two_readings(text)
    if two is not None:
        assert two.ours != two.theirs
