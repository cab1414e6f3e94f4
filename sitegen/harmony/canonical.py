"""The one way in which a chord's quality is printed: equal degrees, equal text."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from sitegen.harmony.chord_degree import ROOT, ChordDegree
from sitegen.harmony.modifiers import ALTERABLE, Modifier, UnfitModifierError, build_degrees
from sitegen.harmony.qualities import QUALITIES, Quality
from sitegen.score.chord import Chord
from sitegen.score.pitch import PitchName

_THIRD, _FIFTH, _SEVENTH, _NINTH = 3, 5, 7, 9
_SECOND_AND_FOURTH = frozenset({2, 4})


@dataclass(frozen=True)
class _Part:
    """One modifier as it is printed, and how far it takes the name from the simplest one."""

    text: str
    modifier: Modifier
    cost: float


def make_chord(
    root: PitchName,
    degrees: frozenset[ChordDegree],
    bass: PitchName | None = None,
    written: str = "",
) -> Chord:
    """Return the chord of these degrees over `root`; raises ValueError when they have no name."""
    stack = sorted(degrees)
    members = tuple(degree.above(root) for degree in stack)
    names = tuple(str(degree) for degree in stack)
    return Chord(root, name_quality(degrees).text, members, names, bass or root, written)


@dataclass(frozen=True, order=True)
class QualityName:
    """The canonical name of some degrees: a quality of the table, `base`, and what modifies it.

    `cost` counts the modifiers, omissions more than once; `rank` is the place in the table.
    """

    cost: float
    rank: int
    text: str
    base: str


@lru_cache(maxsize=4096)
def name_quality(degrees: frozenset[ChordDegree]) -> QualityName:
    """Return the canonical name, `m7♭5`: a quality of the table with the fewest modifiers.

    Raises ValueError when no quality of the table leads to these degrees.
    """
    options: list[QualityName] = []
    for rank, quality in enumerate(QUALITIES):
        if not quality.named or not degrees - quality.degrees <= ALTERABLE:
            continue
        parts = tuple(_parts(quality, degrees))
        if _leads_to(quality, parts, degrees):
            cost = sum(part.cost for part in parts)
            options.append(QualityName(cost, rank, _print(quality, parts), quality.name))
    if not options:
        raise ValueError(f"no chord is made of {' '.join(map(str, sorted(degrees)))}")
    return min(options)


def _seventh(degrees: frozenset[ChordDegree]) -> set[ChordDegree]:
    return {degree for degree in degrees if degree.number == _SEVENTH}


def _leads_to(quality: Quality, parts: tuple[_Part, ...], degrees: frozenset[ChordDegree]) -> bool:
    try:
        return build_degrees(quality.degrees, [part.modifier for part in parts]) == degrees
    except UnfitModifierError:
        return False


def _print(quality: Quality, parts: tuple[_Part, ...]) -> str:
    changes = "".join(part.text for part in parts)
    if not quality.name and changes.startswith(("♭", "♯")):
        # E♭5 is E flat without a third; E(♭5) is E with a flat fifth.
        return f"({changes})"
    return quality.name + changes


def _parts(quality: Quality, degrees: frozenset[ChordDegree]) -> Iterator[_Part]:
    """Yield what leads from `quality` to `degrees`, in the order of print."""
    extra = sorted(degrees - quality.degrees)
    missing = {degree.number for degree in quality.degrees - degrees}
    has_third = _THIRD in {degree.number for degree in degrees}
    for degree in tuple(extra):
        if degree.number in _SECOND_AND_FOURTH and not has_third:
            yield _Part(f"sus{degree}", Modifier("suspend", degree), 1)
            extra.remove(degree)
    for degree in [d for d in extra if _is_bare(d, degrees)]:
        cost = 1.1 if degree.number in missing else 1
        yield _Part(str(degree), Modifier("alter", degree), cost)
    for degree in [d for d in extra if not _is_bare(d, degrees)]:
        yield _Part(f"add{degree}", Modifier("add", degree), 1)
    yield from _omissions(missing, degrees)


def _is_bare(degree: ChordDegree, degrees: frozenset[ChordDegree]) -> bool:
    """Tell whether an alteration is printed as such, ♭9, and not as an addition, add♭9."""
    if degree.alteration == 0 or ChordDegree(degree.number) in degrees:
        return False
    return degree.number == _FIFTH or (degree.number >= _NINTH and bool(_seventh(degrees)))


def _omissions(missing: set[int], degrees: frozenset[ChordDegree]) -> Iterator[_Part]:
    present = {degree.number for degree in degrees}
    for number in sorted(missing - present):
        if number == _THIRD and present & _SECOND_AND_FOURTH:
            continue
        cost = {_THIRD: 1.5, _FIFTH: 1.2}.get(number, 3)
        yield _Part(f"no{number}", Modifier("omit", ChordDegree(number)), cost)


def degrees_of(chord: Chord) -> frozenset[ChordDegree]:
    """Return a chord's degrees as values; the root is always among them."""
    return frozenset(ChordDegree.read(name) for name in chord.degrees) | {ROOT}
