"""Figures of a line that come again: the search for recurring runs of notes.

A figure is three notes or more of one phrase that start within two bars' time of each other. It is
told by its staff steps from note to note and the gaps between their starts, so that a repetition,
a sequence by step (accidentals as the scale has them) and an exact transposition are all the same
figure; the length of its last note is free. It is trivial, and no figure, when it does nothing
but repeat one pitch, or one gap with one step (a run of a scale). Statements of a figure do not
overlap: they are taken from the left, each at the first place after the one before.

The search names every run of two notes at the allowed starts, then gives runs of one note more
their names from the pair (name, next move), as long as any name stands twice (R. M. Karp, R. E.
Miller and A. L. Rosenberg, "Rapid Identification of Repeated Patterns", 1972). It covers the
first `MOST_NOTES` notes of a line.
"""

from bisect import bisect_left
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from sitegen.analysis.melody.line import MelodicLine
from sitegen.analysis.melody.phrases import Phrase

FEWEST_NOTES = 3
MOST_NOTES = 1000


@dataclass(frozen=True)
class Figure:
    """A run of `length` notes of a line, stated at each index of `starts`, two or more."""

    length: int
    starts: tuple[int, ...]

    def notes(self, statement: int) -> range:
        """Return the indices of the notes of one statement."""
        return range(self.starts[statement], self.starts[statement] + self.length)


def recurring(
    line: MelodicLine, phrases: Iterable[Phrase], starts: Iterable[int]
) -> Iterator[tuple[int, list[int]]]:
    """Return the length of every run that is no trivial one and its starts, the shortest first.

    It starts at two or more of `starts`; its statements may overlap.
    """
    moves = [*zip(line.moves, line.gaps, strict=True)]
    groups = [[start for start in starts if start < MOST_NOTES]]
    limits = _limits(line, phrases, groups[0])
    length = 1
    while groups:
        length += 1
        groups = [group for old in groups for group in _split(old, moves, limits, length)]
        if length >= FEWEST_NOTES:
            for group in groups:
                if not _is_trivial(moves[group[0] : group[0] + length - 1]):
                    yield length, group


def apart(length: int, starts: Iterable[int]) -> Figure | None:
    """Return the figure of the statements that do not overlap, None for fewer than two."""
    found: list[int] = []
    for start in starts:
        if not found or start >= found[-1] + length:
            found.append(start)
    return Figure(length, tuple(found)) if len(found) > 1 else None


def _limits(line: MelodicLine, phrases: Iterable[Phrase], starts: list[int]) -> dict[int, int]:
    """Return for each start the index that a figure from there has to end before."""
    stops = [phrase.stop for phrase in phrases]
    limits, end, phrase = {}, 0, 0
    for start in starts:
        while stops[phrase] <= start:
            phrase += 1
        until = line.starts[start] + 2 * line.pulse.wholes[line.bars[start]]
        end = bisect_left(line.starts, until, end)
        limits[start] = min(stops[phrase], end)
    return limits


def _split(
    group: list[int], moves: list[tuple[int, int]], limits: dict[int, int], length: int
) -> list[list[int]]:
    """Return the starts that still agree with their last note added, two or more together."""
    found: dict[tuple[int, int], list[int]] = {}
    for start in group:
        if start + length <= limits[start]:
            found.setdefault(moves[start + length - 2], []).append(start)
    return [starts for starts in found.values() if len(starts) > 1]


def _is_trivial(moves: list[tuple[int, int]]) -> bool:
    return len({*moves}) == 1 or not any(move for move, _ in moves)
