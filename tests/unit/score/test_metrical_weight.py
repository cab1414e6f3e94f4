"""The weight of every place of a bar."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.score.meter import Meter
from sitegen.score.metrical_weight import beat_level, metrical_weight

meters = st.builds(
    lambda groups, unit: Meter(tuple(groups), unit),
    st.lists(st.integers(1, 6), min_size=1, max_size=6),
    st.sampled_from([2, 4, 8, 16]),
)
positions = st.fractions(min_value=0, max_value=16, max_denominator=24)


def _weights(meter: str, step: Fraction) -> list[int]:
    found = Meter.read(meter)
    return [metrical_weight(found, n * step) for n in range(int(found.length / step))]


@pytest.mark.parametrize(
    ("meter", "step", "weights"),
    [
        # Longuet-Higgins and Lee (1984), the tree of 4/4, from memory.
        ("4/4", Fraction(1, 2), [0, -3, -2, -3, -1, -3, -2, -3]),
        (
            "4/4",
            Fraction(1, 4),
            [0, -4, -3, -4, -2, -4, -3, -4, -1, -4, -3, -4, -2, -4, -3, -4],
        ),
        # The same authors' trees of 3/4 and 6/8, from memory: three times two, two times three.
        ("3/4", Fraction(1, 2), [0, -2, -1, -2, -1, -2]),
        ("6/8", Fraction(1, 2), [0, -2, -2, -1, -2, -2]),
        ("2/4", Fraction(1, 2), [0, -2, -1, -2]),
        ("2/2", Fraction(1), [0, -2, -1, -2]),
        ("9/8", Fraction(1, 2), [0, -2, -2, -1, -2, -2, -1, -2, -2]),
        ("12/8", Fraction(1, 2), [0, -3, -3, -2, -3, -3, -1, -3, -3, -2, -3, -3]),
        # Unlike groups: our own reading, no source.
        ("2+2+3/8", Fraction(1, 2), [0, -2, -1, -2, -1, -2, -2]),
        ("3+2/4", Fraction(1), [0, -2, -2, -1, -2]),
        ("4+3/8", Fraction(1, 2), [0, -3, -2, -3, -1, -3, -3]),
        ("1/4", Fraction(1, 2), [0, -1]),
    ],
)
def test_places_weigh_what_the_meter_makes_them(
    meter: str, step: Fraction, weights: list[int]
) -> None:
    assert _weights(meter, step) == weights


def test_triplets_lie_one_level_under_the_beat() -> None:
    common = Meter.read("4/4")
    beat, third, sixth = (metrical_weight(common, Fraction(n, 6)) for n in (6, 2, 1))
    assert (beat, third, sixth) == (-2, -3, -4)


@pytest.mark.parametrize(
    ("meter", "strong"),
    [
        ("4/4", [1, 3]),
        ("2/4", [1]),
        ("3/4", [1]),
        ("6/8", [1]),
        ("12/8", [1, 7]),
        ("5/4", [1, 4]),
        ("1/4", []),
    ],
)
def test_strong_beats_weigh_more_than_the_beat_level(meter: str, strong: list[int]) -> None:
    found = Meter.read(meter)
    level = beat_level(found)
    weights = [metrical_weight(found, n * found.beat) for n in range(found.count)]
    assert [n for n, weight in enumerate(weights, 1) if weight > level] == strong


@given(meters)
def test_the_downbeat_alone_weighs_nothing(meter: Meter) -> None:
    weights = [metrical_weight(meter, n * meter.beat) for n in range(meter.count)]
    assert weights[0] == 0
    assert all(weight < 0 for weight in weights[1:])


@given(meters, positions)
def test_every_bar_weighs_alike(meter: Meter, position: Fraction) -> None:
    assert metrical_weight(meter, position) == metrical_weight(meter, position + meter.length)


@given(meters, positions)
def test_what_lies_between_counts_is_weaker_than_every_count(
    meter: Meter, position: Fraction
) -> None:
    counts = [metrical_weight(meter, n * meter.beat) for n in range(meter.count)]
    weight = metrical_weight(meter, position)
    if (position / meter.beat).denominator > 1:
        assert weight < min(counts)
    else:
        assert weight in counts


@given(meters)
def test_groups_start_heavier_than_what_they_hold(meter: Meter) -> None:
    counts = [metrical_weight(meter, n * meter.beat) for n in range(meter.count)]
    starts = [sum(meter.groups[:n]) for n in range(len(meter.groups))]
    inside = [weight for n, weight in enumerate(counts) if n not in starts]
    assert all(weight < min(counts[n] for n in starts) for weight in inside)


@given(meters)
def test_the_beat_level_is_the_weight_of_a_count(meter: Meter) -> None:
    counts = {metrical_weight(meter, n * meter.beat) for n in range(meter.count)}
    assert beat_level(meter) in counts
