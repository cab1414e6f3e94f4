"""Hatchings: each its own lines, which go on from tile to tile."""

import re
from itertools import pairwise

import pytest

from sitegen.figures.hatching import hatch_pattern

SIGNS = "/\\x-|+"
Point = tuple[int, int]


def lines(sign: str) -> list[tuple[Point, Point]]:
    """Return the ends of every line of a hatching."""
    path = hatch_pattern("one", sign, "white", "black")[1].get("d", "")
    found = []
    for x, y, kind, numbers in re.findall(r"M(-?\d+) ?(-?\d+)([lhv])([-\d ]+)", path):
        steps = [int(number) for number in re.findall(r"-?\d+", numbers)]
        across, down = {"l": steps, "h": [*steps, 0], "v": [0, *steps]}[kind]
        start = (int(x), int(y))
        found.append((start, (start[0] + across, start[1] + down)))
    assert len(found) == path.count("M") > 0
    return found


def side(sign: str) -> int:
    return int(hatch_pattern("one", sign, "white", "black").get("width", "0"))


def test_signs_look_like_their_hatchings() -> None:
    slopes = {
        sign: {
            ((x2 > x1) - (x2 < x1), (y2 > y1) - (y2 < y1)) for (x1, y1), (x2, y2) in lines(sign)
        }
        for sign in SIGNS
    }
    # Down the page is a larger y: what rises to the right has y fall.
    assert slopes["/"] == {(1, -1)}
    assert slopes["\\"] == {(1, 1)}
    assert slopes["x"] == {(1, -1), (1, 1)}
    assert slopes["-"] == {(1, 0)}
    assert slopes["|"] == {(0, 1)}
    assert slopes["+"] == {(1, 0), (0, 1)}


@pytest.mark.parametrize("sign", SIGNS)
def test_lines_go_on_from_tile_to_tile_at_even_distances(sign: str) -> None:
    width = side(sign)
    for rising in (True, False):
        # Where a line would meet the left edge (or the top, an upright one), folded into a tile.
        met = sorted(
            {
                (x1 if x1 == x2 else y1 - x1 * (y2 - y1) / (x2 - x1)) % width
                for (x1, y1), (x2, y2) in lines(sign)
                if (y2 < y1 or x1 == x2) == rising
            }
        )
        if met:
            gaps = {after - before for before, after in pairwise([*met, met[0] + width])}
            assert len(gaps) == 1


@pytest.mark.parametrize("sign", SIGNS)
def test_every_line_crosses_the_whole_tile(sign: str) -> None:
    width = side(sign)
    for (x1, y1), (x2, y2) in lines(sign):
        for low, high in ((min(x1, x2), max(x1, x2)), (min(y1, y2), max(y1, y2))):
            assert low == high or (low <= 0 and high >= width) or sign in "/\\x"
        # A slanting line ends outside of the tile, so that its square ends cannot be seen.
        inside = [all(0 <= n <= width for n in end) for end in ((x1, y1), (x2, y2))]
        assert sign in "-|+" or not any(inside)


def test_an_unknown_sign_is_refused() -> None:
    with pytest.raises(KeyError):
        hatch_pattern("one", "?", "white", "black")
