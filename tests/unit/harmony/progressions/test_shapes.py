"""Keys for looking up progressions."""

from hypothesis import given
from unit.harmony.progressions.bars_aloud import bars, intervals, moved, progressions

from sitegen.harmony.progressions import (
    Progression,
    compare,
    core_loop_shape,
    core_shape,
    loop_shape,
    shape,
)
from sitegen.score.interval import Interval

SHAPES = (shape, core_shape, loop_shape, core_loop_shape)


@given(progressions(), intervals())
def test_shapes_are_the_same_in_any_key(progression: Progression, interval: Interval) -> None:
    other = moved(progression, interval)
    assert [of(progression) for of in SHAPES] == [of(other) for of in SHAPES]


@given(progressions(most=4), progressions(most=4))
def test_equal_shapes_are_what_comparing_finds(first: Progression, second: Progression) -> None:
    if not first.steps or not second.steps:
        return
    kind = compare(first, second).kind
    if shape(first) == shape(second):
        assert kind in {"same", "same in another key", "rotation", "same but for extensions"}
    if kind in {"same", "same in another key"}:
        assert shape(first) == shape(second)
    if kind == "same but for extensions":
        assert core_shape(first) == core_shape(second)
    if kind == "rotation":
        assert core_loop_shape(first) == core_loop_shape(second)


def test_a_shape_can_be_read() -> None:
    cadence = bars("Dm7 | G7 | Cmaj7")
    assert shape(cadence) == "037a 5 047a 5 047b"
    assert core_shape(cadence) == "minor 5 major 5 major"
    assert core_loop_shape(cadence) == "major 2 minor 5 major 5"
    assert shape(bars("C | G/B")) == "047 7 047/4"
    assert shape(bars("N.C.")) == loop_shape(bars("N.C.")) == ""


def test_how_often_a_loop_is_played_is_no_part_of_its_shape() -> None:
    once, often = bars("C | G | Am | F"), bars("C | G | Am | F | C | G | Am | F")
    halved = bars("C G | Am F | C G | Am F")
    assert shape(once) == shape(often) == shape(halved)


def test_a_loop_has_one_shape_wherever_it_starts() -> None:
    starts = ["C | G | Am | F", "G | Am | F | C", "Am | F | C | G", "F | C | G | Am"]
    assert len({shape(bars(text)) for text in starts}) == 4
    assert len({loop_shape(bars(text)) for text in starts}) == 1
