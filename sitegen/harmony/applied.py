"""Applied chords: what a chord by itself is named as dominant of, and what as borrowed.

A chord and its key alone decide here; `sitegen.harmony.goals` reads on to the next chord. The
convention:

- A chord that one of the key's scales holds is never applied (`scales.is_diatonic`): ♭VII7 and
  IV7 in minor are themselves, not V7/♭III or V7/♭VII. Nor is a chord on the tonic's fifth with a
  major third, or its leading-tone chord, which belong to the tonic in every mode; nor a major
  triad on the tonic of a minor key, which is borrowed from major.
- A major or augmented triad or a dominant seventh chord outside the key is V of the degree a
  fifth below its root; a diminished triad or seventh chord is vii° of the degree a semitone
  above, a half-diminished one only of a major degree and from a root outside the scale. C7 in C
  major so is V7/IV; a blues writer would call it I7.
- The target must be a degree of the scale with a perfect fifth, neither the tonic nor ♭VII; in
  minor keys the fifth degree counts as a major triad.
- All else is named by its root, as borrowed: ♭III ♭VI ♭VII iv ♭II in major, IV in minor, ♭VII7.

Sources: the definition of applied chords is that of any harmony book (Kostka and Payne, Tonal
Harmony, the chapters on secondary functions; from memory); where they are set off from borrowed
ones is common practice, no source.
"""

from dataclasses import dataclass

from sitegen.harmony.chord_degree import ChordDegree
from sitegen.harmony.key_degrees import degree_from
from sitegen.harmony.scales import is_diatonic, scale_fifth, scale_third
from sitegen.score.chord import Chord
from sitegen.score.interval import Interval
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

FOURTH, SEMITONE = Interval(3, 5), Interval(1, 1)
_PERFECT_FIFTH, _MINOR_THIRD = 7, 3
_MAJOR_TRIAD = {"R", "3", "5"}
_DOMINANT_TRIADS = (_MAJOR_TRIAD, {"R", "3", "♯5"})
DIMINISHED_TRIAD = {"R", "♭3", "♭5"}
_LEADING = (DIMINISHED_TRIAD, DIMINISHED_TRIAD | {"♭♭7"}, DIMINISHED_TRIAD | {"♭7"})
_FIFTH, _SUBTONIC = ChordDegree(5), ChordDegree(7, -1)


@dataclass(frozen=True)
class Target:
    """The degree that a chord is applied to, and the applied chord's own numeral.

    The numeral is V, vii, ii or subV; `small` tells whether the degree's own chord is minor.
    """

    numeral: str
    name: PitchName
    small: bool


def find_target(chord: Chord, key: Key) -> Target | None:
    """Return what `chord` is applied to in `key`; None for a chord of its own degree."""
    if is_diatonic(chord, key):
        return None
    if _is_dominant(chord, key):
        return _target("V", FOURTH.above_name(chord.root), key)
    if is_leading(chord):
        target = _target("vii", SEMITONE.above_name(chord.root), key)
        if target is None or "♭7" not in chord.degrees:
            return target
        return None if target.small or chord.root in key.scale else target
    return None


def is_major_triad(chord: Chord) -> bool:
    """Tell whether the chord is a plain major triad, in any inversion."""
    return set(chord.degrees) == _MAJOR_TRIAD


def is_dominant_seventh(chord: Chord) -> bool:
    """Tell whether the chord has a major third and a minor seventh, whatever else it holds."""
    return {"3", "♭7"} <= set(chord.degrees)


def is_leading(chord: Chord) -> bool:
    """Tell whether the chord is a diminished triad, a diminished or half-diminished seventh."""
    return set(chord.degrees) in _LEADING


def target_at(numeral: str, name: PitchName, key: Key) -> Target | None:
    """Return the target on a degree of the scale; None for one without a perfect fifth."""
    if degree_from(key.tonic, name) == _FIFTH and key.is_minor:
        return Target(numeral, name, small=False)
    if scale_fifth(name, key) != _PERFECT_FIFTH:
        return None
    return Target(numeral, name, small=scale_third(name, key) == _MINOR_THIRD)


def _is_dominant(chord: Chord, key: Key) -> bool:
    if is_dominant_seventh(chord):
        return True
    return set(chord.degrees) in _DOMINANT_TRIADS and chord.root != key.tonic


def _target(numeral: str, name: PitchName, key: Key) -> Target | None:
    if name == key.tonic or degree_from(key.tonic, name) == _SUBTONIC:
        return None
    return target_at(numeral, name, key)
