"""What may follow a chord's quality: alterations, additions, omissions, suspensions."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from sitegen.harmony.chord_degree import ChordDegree, read_degrees

Kind = Literal["raise", "suspend", "alter", "add", "omit"]

ALTERABLE = read_degrees("♭5 ♯5 ♭9 9 ♯9 11 ♯11 ♭13 13 2 ♭2 4 ♯4 6 ♭6")
"""The degrees that can be altered or, but for the fifths, added."""
SUSPENDED = read_degrees("2 ♭2 4 ♯4 9")
"""The degrees that can stand for the third."""
OMITTED = frozenset({3, 5, 7, 9, 11, 13})
"""The numbers that can be left out."""

# Leaving out a third or fifth that is not there is said for clearness: sus2(no3), 5(no3).
_OMITTED_ANYWAY = frozenset({3, 5})
_THIRD, _SEVENTH, _NINTH = 3, 7, 9
_OCTAVES = {2: 9, 4: 11}


@dataclass(frozen=True)
class Modifier:
    """One change to a quality.

    `raise` gives it the seventh `degree` and what belongs under it, `suspend` puts `degree` in
    place of the third, `alter` in place of the unaltered degree, `add` beside the others, `omit`
    takes away every degree of that number.
    """

    kind: Kind
    degree: ChordDegree


class UnfitModifierError(ValueError):
    """A modifier that makes no sense on its chord."""

    def __init__(self, modifier: Modifier, message: str) -> None:
        super().__init__(message)
        self.modifier = modifier


def build_degrees(
    base: frozenset[ChordDegree], modifiers: Iterable[Modifier]
) -> frozenset[ChordDegree]:
    """Return the degrees of a quality after all its modifiers, in whatever order they come.

    A major seventh takes the place of the minor one that a 9, 11 or 13 implies: m9(maj7). Raises
    UnfitModifierError for another second seventh, for a second third, and for the omission of
    what is not there.
    """
    order = ("raise", "suspend", "alter", "add", "omit")
    degrees = base
    for modifier in sorted(modifiers, key=lambda m: (order.index(m.kind), m.degree)):
        degrees = _APPLY[modifier.kind](degrees, modifier)
    return degrees


def _raise(degrees: frozenset[ChordDegree], modifier: Modifier) -> frozenset[ChordDegree]:
    if modifier.degree.number != _SEVENTH:
        return _joined(degrees, modifier.degree)
    if modifier.degree.alteration == 0 and ChordDegree(_NINTH) in degrees:
        degrees -= {ChordDegree(_SEVENTH, -1)}
    if _SEVENTH in {d.number for d in degrees}:
        raise UnfitModifierError(modifier, "the chord has a seventh already")
    return _joined(degrees, modifier.degree)


def _suspend(degrees: frozenset[ChordDegree], modifier: Modifier) -> frozenset[ChordDegree]:
    octave = ChordDegree(_OCTAVES.get(modifier.degree.number, 0), modifier.degree.alteration)
    kept = frozenset(d for d in degrees if d.number != _THIRD and d != octave)
    return _joined(kept, modifier.degree)


def _alter(degrees: frozenset[ChordDegree], modifier: Modifier) -> frozenset[ChordDegree]:
    unaltered = ChordDegree(modifier.degree.number)
    if modifier.degree != unaltered:
        degrees -= {unaltered}
    return _joined(degrees, modifier.degree)


def _add(degrees: frozenset[ChordDegree], modifier: Modifier) -> frozenset[ChordDegree]:
    if modifier.degree.number == _THIRD and _THIRD in {d.number for d in degrees}:
        raise UnfitModifierError(modifier, "the chord has a third already")
    return _joined(degrees, modifier.degree)


def _omit(degrees: frozenset[ChordDegree], modifier: Modifier) -> frozenset[ChordDegree]:
    number = modifier.degree.number
    left = frozenset(d for d in degrees if d.number != number)
    if left == degrees and number not in _OMITTED_ANYWAY:
        raise UnfitModifierError(modifier, f"the chord has no {number} to leave out")
    return left


def _joined(degrees: frozenset[ChordDegree], degree: ChordDegree) -> frozenset[ChordDegree]:
    """Add `degree` unless it, or the same note in another octave, is there."""
    if degree.same_note in {d.same_note for d in degrees}:
        return degrees
    return degrees | {degree}


_APPLY = {"raise": _raise, "suspend": _suspend, "alter": _alter, "add": _add, "omit": _omit}
