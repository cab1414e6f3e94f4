"""Loops: the shortest cell that comes round, and the rotation that names a circle."""

from collections.abc import Hashable, Sequence
from dataclasses import dataclass

_LONGEST_CELL = 32
_FEWEST_TIMES = 2


@dataclass(frozen=True)
class Loop:
    """A cell of `length` bars that is played `times` in full, one pass after the other.

    `first` is the place of its first bar among the played ones. `whole` says that the passes
    are all there is.
    """

    first: int
    length: int
    times: int
    whole: bool

    @property
    def end(self) -> int:
        """The place after the last bar of its last full pass."""
        return self.first + self.times * self.length


def find_loop(bars: Sequence[Hashable]) -> Loop | None:
    """Return the loop whose full passes make up more than half of the bars; None without one.

    Bars are compared by what they hold. A cell has at least two different bars, at most 32; of
    several loops the one that covers most bars is taken, then the one with the shortest cell,
    then the earliest.
    """
    names: dict[Hashable, int] = {}
    row = [names.setdefault(bar, len(names)) for bar in bars]
    covered, found = len(row) // 2, None
    for period in range(1, min(_LONGEST_CELL, len(row) // _FEWEST_TIMES) + 1):
        start, length = _longest_run(row, period)
        times = length // period
        if times >= _FEWEST_TIMES and times * period > covered:
            covered = times * period
            found = Loop(start, period, times, covered == len(row))
    return found


def _longest_run(row: Sequence[int], period: int) -> tuple[int, int]:
    """Return start and length of the longest stretch in which all comes back after `period`."""
    best = (0, 0)
    start = 0
    for place in range(len(row) - period + 1):
        if place + period == len(row) or row[place] != row[place + period]:
            length = place - start + period
            if length > best[1]:
                best = (start, length)
            start = place + 1
    return best


def shortest_period(row: Sequence[Hashable]) -> int:
    """Return the length of the shortest beginning that, repeated in full, is the whole row.

    By the failure function of Knuth, Morris and Pratt (1977).
    """
    borders = [0] * len(row)
    for place in range(1, len(row)):
        length = borders[place - 1]
        while length and row[place] != row[length]:
            length = borders[length - 1]
        borders[place] = length + (row[place] == row[length])
    period = len(row) - (borders[-1] if row else 0)
    return period if period and len(row) % period == 0 else len(row)


def least_rotation(row: Sequence[tuple[str, int]]) -> int:
    """Return where the rotation of a row starts that comes first in order; 0 for an empty row.

    After Booth, Lexicographically least circular substrings (Information Processing Letters 10,
    1980), in the form with two candidates that are extended side by side; linear.
    """
    first, second, same = 0, 1, 0
    length = len(row)
    while max(first, second) < length and same < length:
        left, right = row[(first + same) % length], row[(second + same) % length]
        if left == right:
            same += 1
            continue
        if left > right:
            first += same + 1
        else:
            second += same + 1
        if first == second:
            second += 1
        same = 0
    return min(first, second) if length else 0
