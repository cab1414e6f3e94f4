"""What it costs to put one chord in the place of another, 0 to 100.

The cost is that of the cheapest chain of the substitutions that handbooks list, at most 100.
So it is a metric: nothing for a chord and itself, the same both ways, and no detour is cheaper;
and it is the same for both chords moved by the same interval. The order of the costs follows
how many notes two chords share and whether they share their function, after

- Riemann's exchanges of a triad (relative, leading tone, parallel), each of which keeps two
  notes: Cohn, Audacious Euphony (2012), from memory;
- the substitutions of jazz teaching: tritone substitute, rootless dominant, ii for the
  suspended V, minor sixth for half-diminished: Levine, The Jazz Theory Book (1995), from memory.

The figures themselves are ours. They measure what can stand in for what, and not how far
harmony moves from one chord to the next: Lerdahl's chord distance (Tonal Pitch Space, 2001) has
C nearer to G than to A minor, while A minor is the one that takes the place of C.
"""

from functools import cache
from heapq import heappop, heappush
from typing import get_args

from sitegen.harmony.progressions.cores import Core, Kind

EXTENSION = 10
"""The same root and family with other notes on top, or over another bass."""
GAP = 50
"""A chord more or less; to leave one out and put in another is as dear as any substitution."""
FARTHEST = 2 * GAP
"""The cost of chords that no substitution joins."""

# From a chord of the first kind to one of the second, whose root lies so many semitones higher.
_EXCHANGES: tuple[tuple[Kind, Kind, int, int], ...] = (
    ("major", "dominant", 0, EXTENSION),
    ("diminished", "half-diminished", 0, EXTENSION),
    ("power", "major", 0, 20),
    ("power", "minor", 0, 20),
    ("diminished", "diminished", 3, 15),  # one dim7 has four names
    ("augmented", "augmented", 4, 15),  # one augmented triad has three
    ("suspended", "major", 0, 25),
    ("suspended", "dominant", 0, 25),
    ("suspended", "minor", 0, 25),
    ("suspended", "power", 0, 25),
    ("suspended", "power", 5, 30),  # Gsus4 has the notes of Csus2
    ("dominant", "diminished", 4, 25),  # G7, G7♭9 without their root
    ("dominant", "half-diminished", 4, 25),  # G9 without its root
    ("half-diminished", "minor", 3, 20),  # Bm7♭5 has the notes of Dm6
    ("minor", "half-diminished", 0, 30),
    ("augmented", "major", 0, 30),
    ("augmented", "dominant", 0, 30),
    ("minor", "diminished", 0, 35),
    ("major", "minor", 9, 40),  # relative: C, Am
    ("major", "minor", 0, 40),  # parallel: C, Cm
    ("major", "minor", 4, 45),  # leading-tone exchange: C, Em
    ("dominant", "dominant", 6, 40),  # tritone substitute: G7, D♭7
    ("suspended", "minor", 7, 40),  # G9sus4 is Dm7 over G
)
KINDS: tuple[Kind, ...] = get_args(Kind)
"""The kinds of chords that exchanges speak of."""


def chord_cost(first: Core, second: Core, shift: int = 0) -> int:
    """Return what it costs to put one chord in the place of another: 0 to 100, a metric.

    `shift` is how many semitones the first is moved up before.
    """
    return shifted_costs(first, second)[shift]


def shifted_costs(first: Core, second: Core) -> tuple[int, ...]:
    """Return the costs for the first chord moved up by 0 to 11 semitones."""
    start = (first.root - second.root) % 12
    costs = _falling_costs(first.kind, second.kind, first.notes == second.notes)
    return costs[start : start + 12]


@cache
def _falling_costs(first: Kind, second: Kind, alike: bool) -> tuple[int, ...]:
    """Return the costs where the second root lies 0, 11, 10, ... 0, 11, ... semitones higher."""
    costs = [max(cost, EXTENSION) for cost in costs_of_exchange()[first, second]]
    costs[0] = 0 if alike else costs[0]
    return (costs[0], *costs[:0:-1]) * 2


@cache
def costs_of_exchange() -> dict[tuple[Kind, Kind], tuple[int, ...]]:
    """Return the cost between two kinds of chord for every interval of their roots."""
    return {pair: costs for kind in KINDS for pair, costs in _costs_from(kind).items()}


def _costs_from(kind: Kind) -> dict[tuple[Kind, Kind], tuple[int, ...]]:
    """Return the costs of the cheapest chains from one kind (Dijkstra 1959)."""
    costs = {(other, interval): FARTHEST for other in KINDS for interval in range(12)}
    costs[kind, 0] = 0
    waiting: list[tuple[int, Kind, int]] = [(0, kind, 0)]
    while waiting:
        cost, here, at = heappop(waiting)
        for there, interval, price in _neighbours()[here]:
            place = there, (at + interval) % 12
            if cost + price < costs[place]:
                costs[place] = cost + price
                heappush(waiting, (cost + price, *place))
    return {(kind, other): tuple(costs[other, n] for n in range(12)) for other in KINDS}


@cache
def _neighbours() -> dict[Kind, list[tuple[Kind, int, int]]]:
    found: dict[Kind, list[tuple[Kind, int, int]]] = {kind: [] for kind in KINDS}
    for first, second, interval, price in _EXCHANGES:
        found[first].append((second, interval, price))
        found[second].append((first, -interval % 12, price))
    return found
