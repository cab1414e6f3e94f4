"""The one name of each set of degrees."""

from itertools import combinations

import pytest

from sitegen.harmony import read_chord
from sitegen.harmony.canonical import make_chord, name_quality
from sitegen.harmony.chord_degree import read_degrees
from sitegen.harmony.readings import degrees_over_root
from sitegen.score.pitch import PitchName


@pytest.mark.parametrize(
    ("degrees", "name"),
    # Common practice, no source: the shortest name that a player would write.
    [
        ("R 3 5", ""),
        ("R ♭3 ♭5 ♭7", "m7♭5"),
        ("R 3 ♭7", "7no5"),
        ("R 5 ♭7", "7no3"),
        ("R 3 5 ♭7 13", "7add13"),
        ("R 3 5 ♭7 ♭9 13", "13♭9"),
        ("R 3 5 ♭7 9 ♯11", "9♯11"),
        ("R 4 5 7", "maj7sus4"),
        ("R 2 4 5", "sus2sus4"),
        ("R 3 ♭5", "(♭5)"),
        ("R 3 5 9 ♯9", "add9add♯9"),
    ],
)
def test_degrees_have_the_shortest_name(degrees: str, name: str) -> None:
    assert name_quality(read_degrees(degrees)).text == name


def test_degrees_that_make_no_chord_have_no_name() -> None:
    with pytest.raises(ValueError, match="no chord is made of R ♭3 3"):
        name_quality(read_degrees("R ♭3 3"))


def test_whatever_sounds_over_a_root_has_a_name_that_reads_back() -> None:
    sounding = [c for size in range(12) for c in combinations(range(1, 12), size)]
    readings = [d for c in sounding for d in degrees_over_root(frozenset({0, *c}))]

    assert len(readings) > len(sounding)
    for degrees in readings:
        chord = make_chord(PitchName("C"), degrees)
        assert read_chord(str(chord)) == chord
