"""The write-ups that have most in common with each write-up.

What two of them share counts by its kind and by how few others have it (the inverse document
frequency of Sparck Jones, "A statistical interpretation of term specificity", 1972). What more
than `COMMON` write-ups share makes nobody a candidate: so the work grows with their number and not
with its square.
"""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import log

from sitegen.article import FrontMatter
from sitegen.finding.entry import Entry
from sitegen.finding.kinship.circles import circle, loops_of, say_circle
from sitegen.finding.kinship.signs import LOOP, Sign, signs_of

MOST = 3
"""How many are named below a write-up."""
COMMON = 100
_CANDIDATES = 24
_REASONS = 2
_LEAST = 0.5

Filed = tuple[FrontMatter, Entry]


@dataclass(frozen=True)
class Kin:
    """A write-up that belongs to another: its place in the list, and why, in words."""

    place: int
    reason: str


def find_kin(filed: Sequence[Filed], most: int = MOST) -> tuple[tuple[Kin, ...], ...]:
    """Return for each write-up those that it has most in common with, the closest first.

    The same list gives the same answer; of equals the one that stands first comes first.
    """
    family = _Family(filed)
    return tuple(family.kin_of(place, most) for place in range(len(filed)))


class _Family:
    """All write-ups with their signs, and who has each sign."""

    def __init__(self, filed: Sequence[Filed]) -> None:
        self._filed = filed
        self._signs = [signs_of(front, entry) for front, entry in filed]
        self._holders: dict[Sign, list[int]] = defaultdict(list)
        for place, signs in enumerate(self._signs):
            for sign in signs:
                self._holders[sign].append(place)
        count = len(filed)
        self._worth = {
            sign: sign.weight * log(1 + count / len(holders))
            for sign, holders in self._holders.items()
        }

    def kin_of(self, place: int, most: int) -> tuple[Kin, ...]:
        scores = self._scores(place)
        near = sorted(scores, key=lambda other: (-scores[other], other))[:_CANDIDATES]
        shared = {other: self._shared(place, other) for other in near}
        totals = {other: sum(self._worth[sign] for sign in shared[other]) for other in near}
        best = sorted(near, key=lambda other: (-totals[other], other))[:most]
        return tuple(
            Kin(other, self._reason(place, other, shared[other]))
            for other in best
            if totals[other] >= _LEAST
        )

    def _scores(self, place: int) -> Mapping[int, float]:
        """Return who shares something that is not common, and how much that counts."""
        scores: dict[int, float] = defaultdict(float)
        for sign in self._signs[place]:
            holders = self._holders[sign]
            if len(holders) <= COMMON:
                for other in holders:
                    scores[other] += self._worth[sign]
        scores.pop(place, None)
        return scores

    def _shared(self, place: int, other: int) -> list[Sign]:
        """Return what two write-ups share, what counts most first."""
        theirs = set(self._signs[other])
        shared = [sign for sign in self._signs[place] if sign in theirs]
        return sorted(shared, key=lambda sign: -self._worth[sign])

    def _reason(self, place: int, other: int, shared: Sequence[Sign]) -> str:
        """Return what counts most in words, no kind of thing twice."""
        first = {sign.what: sign for sign in reversed(shared)}
        chosen = [sign for sign in shared if first[sign.what] is sign][:_REASONS]
        return "; ".join(self._say(sign, place, other) for sign in chosen)

    def _say(self, sign: Sign, place: int, other: int) -> str:
        if sign.what != LOOP:
            return sign.say()
        row, their_row = (
            next(row for row in loops_of(self._filed[one][1]) if circle(row) == sign.value)
            for one in (place, other)
        )
        return say_circle(row, their_row)
