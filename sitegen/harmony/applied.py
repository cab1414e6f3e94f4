"""Applied chords: what is named as dominant of another degree, and what as borrowed.

A chord and its key alone decide. The convention:

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

Sources: the definition of applied chords is that of any harmony book; where they are set off from
borrowed ones is common practice, no source.
"""

from dataclasses import dataclass

from sitegen.harmony.chord_degree import ChordDegree
from sitegen.harmony.key_degrees import degree_from
from sitegen.harmony.scales import is_diatonic, scale_fifth, scale_third
from sitegen.score.chord import Chord
from sitegen.score.interval import Interval
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

_FOURTH, _SEMITONE = Interval(3, 5), Interval(1, 1)
_PERFECT_FIFTH, _MINOR_THIRD = 7, 3
_DOMINANT_TRIADS = ({"R", "3", "5"}, {"R", "3", "♯5"})
_LEADING = ({"R", "♭3", "♭5"}, {"R", "♭3", "♭5", "♭♭7"}, {"R", "♭3", "♭5", "♭7"})
_FIFTH, _SUBTONIC = ChordDegree(5), ChordDegree(7, -1)


@dataclass(frozen=True)
class Target:
    """The degree that a chord is applied to, and the applied chord's own numeral, V or vii."""

    numeral: str
    name: PitchName
    small: bool


def find_target(chord: Chord, key: Key) -> Target | None:
    """Return what `chord` is applied to in `key`; None for a chord of its own degree."""
    if is_diatonic(chord, key):
        return None
    if _is_dominant(chord, key):
        return _target("V", _FOURTH.above_name(chord.root), key)
    if _is_leading(chord):
        target = _target("vii", _SEMITONE.above_name(chord.root), key)
        if target is None or "♭7" not in chord.degrees:
            return target
        return None if target.small or chord.root in key.scale else target
    return None


def _is_dominant(chord: Chord, key: Key) -> bool:
    degrees = set(chord.degrees)
    if "3" not in degrees:
        return False
    if "♭7" in degrees:
        return True
    return degrees in _DOMINANT_TRIADS and chord.root != key.tonic


def _is_leading(chord: Chord) -> bool:
    return set(chord.degrees) in _LEADING


def _target(numeral: str, name: PitchName, key: Key) -> Target | None:
    degree = degree_from(key.tonic, name)
    is_fifth = degree == _FIFTH
    if name == key.tonic or degree == _SUBTONIC:
        return None
    if is_fifth and key.is_minor:
        return Target(numeral, name, small=False)
    if scale_fifth(name, key) != _PERFECT_FIFTH:
        return None
    return Target(numeral, name, small=scale_third(name, key) == _MINOR_THIRD)
