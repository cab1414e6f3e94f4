"""The degrees that a set of sounding notes can be over a root."""

from collections.abc import Iterator

from sitegen.harmony.chord_degree import ROOT, ChordDegree, read_degrees

_FIFTH = ChordDegree(5)
# What a note is over a root, by semitones, in a chord that has a third.
_OVER_THIRD = dict(enumerate("R ♭9 9 ♯9 3 11 ♯11 5 ♭13 13 ♭7 7".split()))
_FLAT_THIRD, _THIRD, _FLAT_FIFTH, _PERFECT_FIFTH, _SHARP_FIFTH = 3, 4, 6, 7, 8
_SIXTH, _SEVENTHS = 9, frozenset({10, 11})
_DIMINISHED = frozenset({0, 3, 6, 9})


def degrees_over_root(semitones: frozenset[int]) -> Iterator[frozenset[ChordDegree]]:
    """Yield the chords that notes so many semitones above a root make, the root among them.

    Where a perfect fifth is missing there are two: with the altered note as fifth, or with the
    fifth left out. Nothing for notes with two sevenths, which are no chord of thirds; all others
    have a name.
    """
    if semitones >= _SEVENTHS:
        return
    if _PERFECT_FIFTH in semitones:
        yield _degrees(semitones, None)
        return
    for fifth in (_FLAT_FIFTH, _SHARP_FIFTH):
        if fifth in semitones:
            yield _degrees(semitones, fifth)
    yield _degrees(semitones, None)


def _degrees(semitones: frozenset[int], altered_fifth: int | None) -> frozenset[ChordDegree]:
    names = {number: _OVER_THIRD[number] for number in semitones}
    has_seventh = bool(_SEVENTHS & semitones)
    if _FLAT_THIRD in semitones and _THIRD not in semitones:
        names[_FLAT_THIRD] = "♭3"
    if not {_FLAT_THIRD, _THIRD} & semitones:
        names |= _suspended(semitones)
    if altered_fifth is not None:
        names[altered_fifth] = "♭5" if altered_fifth == _FLAT_FIFTH else "♯5"
    if _SIXTH in semitones and not has_seventh:
        is_diminished = semitones >= _DIMINISHED and altered_fifth == _FLAT_FIFTH
        names[_SIXTH] = "♭♭7" if is_diminished and _THIRD not in semitones else "6"
    return read_degrees(" ".join(names.values()))


def _suspended(semitones: frozenset[int]) -> dict[int, str]:
    """Return what stands for the third: the fourth, or else the second."""
    if 5 in semitones:  # noqa: PLR2004 - the fourth in semitones
        return {5: "4"}
    return {2: "2"} if 2 in semitones else {}  # noqa: PLR2004 - the second in semitones


def lacks_fifth(degrees: frozenset[ChordDegree]) -> bool:
    """Tell whether no fifth, perfect or altered, is among the degrees."""
    return all(degree.number != _FIFTH.number for degree in degrees)


def lacks_third(degrees: frozenset[ChordDegree]) -> bool:
    """Tell whether neither a third nor what is suspended for it is among the degrees."""
    return not {2, 3, 4} & {degree.number for degree in degrees} and degrees != {ROOT, _FIFTH}
