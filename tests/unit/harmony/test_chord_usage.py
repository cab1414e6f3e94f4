"""What kinds of chords and basses cost against each other; common practice, no source."""

import pytest

from sitegen.harmony.chord_degree import ChordDegree, read_degrees
from sitegen.harmony.chord_usage import foreign_bass_cost, inversion_cost, kind_cost


@pytest.mark.parametrize(
    ("usual", "rarer"),
    [
        ("R 3 5", "R 3 5 ♭7"),
        ("R 3 5 ♭7", "R 3 ♭7"),
        ("R 3 5 ♭7 9", "R 3 5 ♭7 11"),
        ("R 3 5 ♭7 9 13", "R 3 5 ♭7 13"),
        ("R 3 5 ♭7 ♭9", "R ♭3 5 ♭7 ♭9"),
        ("R 3 ♭5 ♭7", "R 3 ♭7 ♯11"),
        ("R ♭3 5 ♭7 9 11 13", "R ♭3 5 ♭7 9 13"),
        ("R 3 5", "R 3"),
    ],
)
def test_some_chords_are_more_usual_than_others(usual: str, rarer: str) -> None:
    assert kind_cost(read_degrees(usual)) < kind_cost(read_degrees(rarer))


def test_inversions_cost_more_the_higher_the_degree_in_the_bass() -> None:
    degrees = read_degrees("R 3 5 ♭7 9")
    costs = [inversion_cost(degrees, degree) for degree in sorted(degrees)]

    assert costs == sorted(set(costs))
    assert costs[0] == 0


def test_a_suspension_is_inverted_less_than_a_triad() -> None:
    triad, suspended = read_degrees("R 3 5"), read_degrees("R 4 5")

    assert inversion_cost(suspended, ChordDegree(5)) > inversion_cost(triad, ChordDegree(5))


def test_a_ninth_is_a_more_usual_foreign_bass_than_a_tritone() -> None:
    triad = read_degrees("R 3 5")

    assert foreign_bass_cost(triad, 2) < foreign_bass_cost(triad, 6)
