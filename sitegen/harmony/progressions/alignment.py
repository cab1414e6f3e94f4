"""Two lines of chords laid beside each other at the least cost.

The weighted edit distance of Wagner and Fischer (The string-to-string correction problem, 1974),
which aligns as Needleman and Wunsch do (1970): chords are put in each other's place for their
`chord_cost`, or left out for `GAP`. It is normalised after Yujian and Bo (A normalized
Levenshtein distance metric, IEEE TPAMI 29, 2007): 2 d / (GAP (n + m) + d), from 0 to 1, again a
metric, since `chord_cost` is one and all gaps cost the same. The least over the twelve
transpositions of one side is a metric of progressions in any key, since moving both sides
changes nothing. All from memory; the properties are tested.
"""

from collections.abc import Iterable, Sequence
from fractions import Fraction

from msgspec import Struct

from sitegen.harmony.progressions.rows import Line
from sitegen.harmony.progressions.substitution import GAP, shifted_costs

Costs = Sequence[Sequence[int]]
"""For every chord of one line what it costs to put each different chord of another there."""
ANY_KEY = tuple(range(12))
"""All transpositions, in semitones upwards."""


class Pair(Struct, frozen=True):
    """Places of two lines that stand beside each other, None where one has no counterpart."""

    first: int | None
    second: int | None
    cost: int


class Nearness(Struct, frozen=True):
    """How near two lines come: the first moved up by `shift` semitones, at a cost, 0 to 1."""

    shift: int
    cost: int
    distance: Fraction


def nearest(first: Line, second: Line, shifts: Sequence[int] = ANY_KEY) -> Nearness:
    """Return the transposition of `first`, of those in `shifts`, that is nearest to `second`.

    The first of `shifts` is taken unless another is nearer. Those that cannot be nearer are not
    worked out.
    """
    lengths = len(first) + len(second)
    dearest = GAP * lengths  # all chords of both left out
    found = _nearest_below(dearest, first, second, shifts) if first and second else None
    shift, cost = found or (shifts[0], dearest)
    return Nearness(shift, cost, _normalise(cost, lengths))


def nearest_within(
    farthest: Fraction, first: Line, second: Line, shifts: Sequence[int] = ANY_KEY
) -> Nearness | None:
    """Return what `nearest` does where the distance is at most `farthest`, else None.

    Lines far apart, which most are, are told from each other's chords alone. Both have a chord
    at least.
    """
    lengths = len(first) + len(second)
    # The greatest cost whose normalised distance is not over `farthest`.
    most = farthest * GAP * lengths // (2 - farthest)
    found = _nearest_below(most + 1, first, second, shifts)
    if found is None:
        return None
    shift, cost = found
    return Nearness(shift, cost, _normalise(cost, lengths))


def _nearest_below(
    least: int, first: Line, second: Line, shifts: Sequence[int]
) -> tuple[int, int] | None:
    """Return the nearest transposition and its cost, None where all cost `least` or more."""
    tables = _cost_tables(first, second)
    bounds = {shift: _least_cost(tables[shift], first, second) for shift in shifts}
    best: int | None = None
    for shift in (shifts[0], *sorted(shifts[1:], key=bounds.__getitem__)):
        if bounds[shift] < least:
            cost = _edit_cost(tables[shift], first, second, least)
            if cost < least:
                best, least = shift, cost
    return None if best is None else (best, least)


def _normalise(cost: int, lengths: int) -> Fraction:
    return Fraction(2 * cost, GAP * lengths + cost) if cost else Fraction(0)


def align(first: Line, second: Line, shift: int = 0) -> tuple[Pair, ...]:
    """Return the cheapest alignment of two lines, the first moved up by `shift` semitones.

    Chords beside chords are preferred where a gap costs the same. Both have a chord at least.
    """
    prices = _cost_tables(first, second)[shift]
    costs = [[prices[one][other] for other in second.places] for one in first.places]
    table = [[GAP * column for column in range(len(second) + 1)]]
    for line in costs:
        table.append(_next_line(table[-1], line, range(len(second))))
    return tuple(_trace(table, costs))


def _cost_tables(first: Line, second: Line) -> list[Costs]:
    """Return the costs between the different chords of two lines, for each of 12 shifts."""
    by_chord = [
        tuple(zip(*[shifted_costs(one, other) for other in second.chords], strict=True))
        for one in first.chords
    ]
    return list(zip(*by_chord, strict=True))


def _least_cost(costs: Costs, first: Line, second: Line) -> int:
    """Return a cost that no alignment undercuts: every chord with what suits it best."""
    fewest_gaps = GAP * max(len(second) - len(first), 0)
    cheapest = [min(line) for line in costs]
    return fewest_gaps + sum([min(GAP, cheapest[place]) for place in first.places])


def _edit_cost(costs: Costs, first: Line, second: Line, limit: int) -> int:
    """Return the cost of the best alignment, or `limit` where it is not less."""
    line = [GAP * column for column in range(len(second) + 1)]
    for place in first.places:
        line = _next_line(line, costs[place], second.places)
        if min(line) >= limit:
            return limit
    return line[-1]


def _next_line(above: Sequence[int], prices: Sequence[int], places: Iterable[int]) -> list[int]:
    """Return the next line of the table of Wagner and Fischer."""
    corner, left = above[0], above[0] + GAP
    line = [left]
    for place, up in zip(places, above[1:], strict=True):
        gap = (left if left < up else up) + GAP  # noqa: FURB136 - calls cost half the time here
        cost = corner + prices[place]
        corner, left = up, cost if cost < gap else gap  # noqa: FURB136 - the same
        line.append(left)
    return line


def _trace(table: Costs, costs: Costs) -> list[Pair]:
    """Return the pairs on the cheapest way back through the table."""
    row, column = len(table) - 1, len(table[0]) - 1
    pairs = []
    while row or column:
        here = table[row][column]
        if row and column and here == table[row - 1][column - 1] + costs[row - 1][column - 1]:
            row, column = row - 1, column - 1
            pairs.append(Pair(row, column, costs[row][column]))
        elif row and here == table[row - 1][column] + GAP:
            row -= 1
            pairs.append(Pair(row, None, GAP))
        else:
            column -= 1
            pairs.append(Pair(None, column, GAP))
    return pairs[::-1]
