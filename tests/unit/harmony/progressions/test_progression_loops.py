"""Loops: what comes round, and where a circle starts."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from unit.harmony.progressions.bars_aloud import bars

from sitegen.harmony.progressions import Loop
from sitegen.harmony.progressions.loops import find_loop, least_rotation, shortest_period

CIRCLES = st.lists(st.tuples(st.sampled_from("ab"), st.integers(0, 1)), max_size=12)


@given(CIRCLES)
def test_the_least_rotation_comes_first_of_all_rotations(row: list[tuple[str, int]]) -> None:
    start = least_rotation(row)
    rotations = [row[n:] + row[:n] for n in range(max(len(row), 1))]
    assert row[start:] + row[:start] == min(rotations)


@given(CIRCLES)
def test_the_shortest_period_is_the_shortest_beginning_that_makes_up_the_row(
    row: list[tuple[str, int]],
) -> None:
    lengths = [n for n in range(1, len(row) + 1) if row[:n] * (len(row) // n) == row]
    assert shortest_period(row) == min(lengths, default=0)


@given(st.lists(st.sampled_from("abc"), max_size=24))
def test_a_loop_is_what_it_says(row: list[str]) -> None:
    loop = find_loop(row)
    if loop is not None:
        passes = row[loop.first : loop.end]
        assert passes == passes[: loop.length] * loop.times
        assert loop.times >= 2
        assert len(passes) * 2 > len(row)
        assert loop.whole == (passes == row)


@pytest.mark.parametrize(
    ("text", "loop"),
    [
        ("C | G | Am | F | C | G | Am | F", Loop(0, 4, 2, whole=True)),
        ("C | G | C | G | C | G", Loop(0, 2, 3, whole=True)),
        ("Am | F | C | G | Am | F | C | G | Am | F | Dm | E", Loop(0, 4, 2, whole=False)),
        ("N.C. | Em | A9 | Em | A9", Loop(1, 2, 2, whole=False)),
        ("C | C G | C | C G", Loop(0, 2, 2, whole=True)),
    ],
)
def test_a_cell_that_comes_round_is_found(text: str, loop: Loop) -> None:
    assert bars(text).loop == loop


@pytest.mark.parametrize(
    "text",
    [
        "C | G | Am | F",
        "C | C | C | C",
        "C | F | C | G",
        # The same chords in another rhythm come round for the ear, and not as a cell of bars.
        "C | F | C F",
        # Twelve-bar blues: nothing in it comes round (common practice, no source).
        "C7 | F7 | C7 | C7 | F7 | F7 | C7 | C7 | G7 | F7 | C7 | G7",
    ],
)
def test_where_nothing_comes_round_there_is_no_loop(text: str) -> None:
    assert bars(text).loop is None


def test_bars_are_drawn_together_to_chords() -> None:
    steps = bars("Em7 | Em7 | A9 | N.C. | A9 D").steps
    told = [f"{s.chord} {s.duration} {s.bar} {s.last_bar} {s.offset}" for s in steps]
    assert told == ["Em7 8 1 2 0", "A9 6 3 5 0", "D 2 5 5 2"]
    assert all(a.chord != b.chord for a, b in pairwise(steps))
