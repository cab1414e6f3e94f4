"""Which stretches of a bar are tuplets: thirds, fifths, ... of a beat, or of several."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from math import lcm

from sitegen.engraving.hierarchy import Cell, Division
from sitegen.engraving.values import is_power_of_two

# A tuplet over more than one beat is only written for simple divisions of the whole.
_WIDEST_COUNT = 13


@dataclass(frozen=True)
class Tuplet:
    """`count` notes of the written value `unit` (quarter notes) in the time of `time_of`."""

    start: Fraction
    length: Fraction
    count: int
    time_of: int

    @cached_property
    def end(self) -> Fraction:
        """The offset of whatever follows."""
        return self.start + self.length

    @cached_property
    def unit(self) -> Fraction:
        """The written length of one unit in quarter notes."""
        return self.length / self.time_of


def find_tuplets(cell: Cell, edges: set[Fraction]) -> tuple[Tuplet, ...]:
    """Return the tuplets that notes with these onsets and ends need, from left to right.

    `edges` are quarter notes from the meter's first beat. A tuplet takes up the smallest cell
    that it fills: an eighth, a beat, half a bar. It stands over several beats where every one
    of them is divided so and notes cross from one to the next (quarter triplets).
    """
    if not _odd_edges(cell, edges):
        return _duplets(cell, edges)
    if _is_tuplet(cell, edges):
        return (_tuplet(cell, edges),)
    return tuple(found for inner in cell.cells for found in find_tuplets(inner, edges))


def _inside(cell: Cell, edges: set[Fraction]) -> list[Fraction]:
    return sorted(edge for edge in edges if cell.start < edge < cell.end)


def _odd_edges(cell: Cell, edges: set[Fraction]) -> list[Fraction]:
    odd = {edge for edge in edges if not is_power_of_two(edge.denominator)}
    return _inside(cell, odd) if odd else []


def _grid(cell: Cell, edges: set[Fraction]) -> int:
    """Return into how many equal pieces the cell must fall for its edges to lie on them."""
    shares = [(edge - cell.start) / cell.length for edge in _inside(cell, edges)]
    return lcm(*(share.denominator for share in shares))


def _odd_part(number: int) -> int:
    return number // (number & -number)


def _is_tuplet(cell: Cell, edges: set[Fraction]) -> bool:
    crossed = [edge not in edges for edge in cell.edges]
    divided = [bool(_odd_edges(inner, edges)) for inner in cell.cells]
    if cell.holds_beats:
        grid = _grid(cell, edges)
        simple = _odd_part(grid) <= _WIDEST_COUNT and grid // _odd_part(grid) <= 2  # noqa: PLR2004
        return _has_plain_length(cell) and simple and all(crossed) and all(divided)
    if cell.division is Division.GROUPS or _is_mixed(cell, edges):
        return False
    if cell.division is Division.COMPOUND:
        return any(_crosses_odd(cell, edge, edges) for edge in cell.edges)
    return any(crossed) or (all(divided) and len({_grid(c, edges) for c in cell.cells}) == 1)


def _is_mixed(cell: Cell, edges: set[Fraction]) -> bool:
    """Return whether divisions of different kinds meet in a cell: fifths beside sevenths.

    Each is then a tuplet of its own, and notes are tied from one to the other.
    """
    inside = max(_odd_part(_grid(inner, edges)) for inner in cell.cells)
    return inside < _odd_part(_grid(cell, edges))


def _crosses_odd(cell: Cell, edge: Fraction, edges: set[Fraction]) -> bool:
    """Return whether a note over `edge` begins or ends off the plain divisions."""
    if edge in edges:
        return False
    inside = [cell.start, *_inside(cell, edges), cell.end]
    before = max(place for place in inside if place < edge)
    after = min(place for place in inside if place > edge)
    return not all(is_power_of_two(place.denominator) for place in (before, after))


def _has_plain_length(cell: Cell) -> bool:
    return _odd_part(cell.length.numerator) in (1, 3)


def _tuplet(cell: Cell, edges: set[Fraction]) -> Tuplet:
    grid = _grid(cell, edges)
    filled = len(_inside(cell, edges)) == grid - 1
    count = grid if filled else _odd_part(grid)
    return Tuplet(cell.start, cell.length, count, _time_of(cell, count))


def _time_of(cell: Cell, count: int) -> int:
    """Return how many plain units the tuplet replaces: the most that are fewer than `count`."""
    time_of = _odd_part(cell.length.numerator)
    while 2 * time_of <= count:
        time_of *= 2
    return time_of


def _duplets(cell: Cell, edges: set[Fraction]) -> tuple[Tuplet, ...]:
    """Return the duplets and quadruplets of compound beats.

    The three of 2+2+3 is no compound beat: where the eighth is counted throughout, players
    read dotted eighths (common practice, no source).
    """
    if not cell.inner or len({inner.length for inner in cell.inner}) > 1:
        return ()
    if cell.division is not Division.COMPOUND:
        return tuple(found for inner in cell.inner for found in _duplets(inner, edges))
    grid = _grid(cell, edges) if _inside(cell, edges) else 1
    if grid not in (2, 4):
        return ()
    return (Tuplet(cell.start, cell.length, grid, 3),)
