"""Chord symbols as MusicXML's `harmony`: a kind of the standard and the degrees that differ.

What each kind holds is told with `kind-value` in the MusicXML 4.0 schema (W3C, 2021). Its
13ths hold the 11th and its suspensions no seventh, so that symbols as common as C13 and C7sus4
are told with degrees. A degree that is added is counted against the dominant chord, whose seventh
is minor; one that is altered against the kind's own (`degree-alter` in the same schema).
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from sitegen.harmony.chord_degree import ChordDegree, read_degrees

_KINDS: Mapping[str, frozenset[ChordDegree]] = {
    kind: read_degrees(degrees)
    for kind, degrees in {
        "major": "R 3 5",
        "minor": "R ♭3 5",
        "diminished": "R ♭3 ♭5",
        "augmented": "R 3 ♯5",
        "dominant": "R 3 5 ♭7",
        "major-seventh": "R 3 5 7",
        "minor-seventh": "R ♭3 5 ♭7",
        "diminished-seventh": "R ♭3 ♭5 ♭♭7",
        "augmented-seventh": "R 3 ♯5 ♭7",
        "half-diminished": "R ♭3 ♭5 ♭7",
        "major-minor": "R ♭3 5 7",
        "major-sixth": "R 3 5 6",
        "minor-sixth": "R ♭3 5 6",
        "dominant-ninth": "R 3 5 ♭7 9",
        "major-ninth": "R 3 5 7 9",
        "minor-ninth": "R ♭3 5 ♭7 9",
        "dominant-11th": "R 3 5 ♭7 9 11",
        "major-11th": "R 3 5 7 9 11",
        "minor-11th": "R ♭3 5 ♭7 9 11",
        "dominant-13th": "R 3 5 ♭7 9 11 13",
        "major-13th": "R 3 5 7 9 11 13",
        "minor-13th": "R ♭3 5 ♭7 9 11 13",
        "suspended-second": "R 2 5",
        "suspended-fourth": "R 4 5",
        "power": "R 5",
    }.items()
}
_SEVENTH, _NINTH = 7, 9


@dataclass(frozen=True)
class DegreeChange:
    """One `degree` element: what is done to the degree `number` of the kind."""

    number: int
    alteration: int
    action: Literal["add", "alter", "subtract"]


@dataclass(frozen=True)
class ChordKind:
    """A kind of the standard and what leads from it to the chord."""

    kind: str
    changes: tuple[DegreeChange, ...]


@lru_cache(maxsize=1024)
def chord_kind(degrees: frozenset[ChordDegree]) -> ChordKind:
    """Return the kind with the fewest changes; of equals the one that holds most of the chord.

    Kinds are known by their sevenths and ninths: those are left alone where another way leads
    there. Programs differ about which seventh is added, too.
    """
    options = [
        (_cost(changes), -len(held & degrees), rank, ChordKind(kind, changes))
        for rank, (kind, held) in enumerate(_KINDS.items())
        for changes in [tuple(_changes(held, degrees))]
    ]
    return min(options, key=lambda option: option[:3])[3]


def _cost(changes: tuple[DegreeChange, ...]) -> int:
    touched = [change for change in changes if change.number == _SEVENTH]
    lost = [c for c in changes if c.number == _NINTH and c.action == "subtract"]
    return len(changes) + 2 * len(touched) + len(lost)


def _changes(
    held: frozenset[ChordDegree], wanted: frozenset[ChordDegree]
) -> Iterator[DegreeChange]:
    gone, new = held - wanted, sorted(wanted - held)
    altered = set()
    for degree in sorted(gone):
        other = next((n for n in new if n.number == degree.number and n not in altered), None)
        if other is None:
            yield DegreeChange(degree.number, 0, "subtract")
        else:
            altered.add(other)
            yield DegreeChange(degree.number, other.alteration - degree.alteration, "alter")
    for degree in new:
        if degree not in altered:
            yield DegreeChange(degree.number, _over_dominant(degree), "add")


def _over_dominant(degree: ChordDegree) -> int:
    return degree.alteration + (degree.number == _SEVENTH)
