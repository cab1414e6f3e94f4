"""Chains of roots that fall by fifths, or by fourths.

The descending-fifths sequence of the harmony books (Kostka and Payne, *Tonal Harmony*, the
chapter on the circle of fifths; Aldwell and Schachter, *Harmony and Voice Leading*, on sequences;
both from memory) goes through all degrees of the scale and so has one diminished fifth among the
perfect ones, from IV to vii° in major, from ♭VI to ii° in minor. A tritone that is spelled as a
fifth is therefore a link here, one for every six perfect ones at most. Falling fourths are rock's
plagal chains: W. Everett, *The Foundations of Rock* (2009), from memory.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from sitegen.analysis.reading import Fact
from sitegen.analysis.roots.chord_line import HeldChord
from sitegen.analysis.roots.wording import names_said, places_of, stretch_said
from sitegen.score.interval import Interval

_FEWEST, _FEWEST_TOLD = 3, 4
_UP_A_FOURTH, _TRITONE, _UP_A_FIFTH = 5, 6, 7
_MOST_TOLD = 2
_FIFTHS_IN_A_SCALE = 6
_FALLING_DIMINISHED_FIFTH = Interval(3, 6)

Line = Sequence[HeldChord]
"""The chords at which the root changes."""


def chain_facts(lines: Sequence[Line]) -> list[Fact]:
    """Return the longest chain of falling fifths and that of falling fourths."""
    found = [
        ("falling-fifths", "fifths", _chains(lines, _UP_A_FOURTH)),
        ("falling-fourths", "fourths", _chains(lines, _UP_A_FIFTH)),
    ]
    return [_fact(path, word, chains) for path, word, chains in found if chains]


def chained_tritones(lines: Sequence[Line]) -> frozenset[int]:
    """Return the index of every chord that a chain of fifths comes to by a diminished one."""
    return frozenset(
        second.number
        for chain in _chains(lines, _UP_A_FOURTH)
        for first, second in pairwise(chain)
        if _size(first, second) == _TRITONE
    )


def _fact(path: str, word: str, chains: Sequence[Line]) -> Fact:
    longest = max(chains, key=len)
    told = [chain for chain in chains if len(chain) >= _FEWEST_TOLD][:_MOST_TOLD]
    sentence = " ".join(
        f"{stretch_said(chain)}: the roots fall by {word}, "
        f"{names_said(held.chord.root for held in chain)}."
        for chain in told
    )
    count = len(longest)
    return Fact(path, count, str(count), "roots in a row", places_of(longest), sentence)


def _chains(lines: Sequence[Line], size: int) -> list[Line]:
    return [chain for line in lines for chain in _links(line, size) if len(chain) >= _FEWEST]


def _links(line: Line, size: int) -> Iterator[Line]:
    """Yield every longest stretch in which each root moves up by `size` semitones."""
    start, since_tritone = 0, _FIFTHS_IN_A_SCALE
    for place in range(1, len(line) + 1):
        moved = _size(line[place - 1], line[place]) if place < len(line) else 0
        if moved == size:
            since_tritone += 1
        elif _is_diminished_link(line, place, size, since_tritone):
            since_tritone = 0
        else:
            yield line[start:place]
            start, since_tritone = place, _FIFTHS_IN_A_SCALE


def _is_diminished_link(line: Line, place: int, size: int, since_tritone: int) -> bool:
    """Tell whether a diminished fifth stands between perfect ones, as the scale has it."""
    if size != _UP_A_FOURTH or since_tritone < _FIFTHS_IN_A_SCALE or place + 1 >= len(line):
        return False
    first, second = line[place - 1].chord.root, line[place].chord.root
    goes_on = _size(line[place], line[place + 1]) == size
    return goes_on and Interval.between_names(first, second) == _FALLING_DIMINISHED_FIFTH


def _size(first: HeldChord, second: HeldChord) -> int:
    return (second.root - first.root) % 12
