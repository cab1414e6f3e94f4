"""The scales that a key's chords are made of."""

from functools import lru_cache

from sitegen.harmony.chord_degree import ChordDegree
from sitegen.score.chord import Chord
from sitegen.score.interval import Interval
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName


@lru_cache(maxsize=256)
def scales_of(key: Key) -> tuple[frozenset[PitchName], ...]:
    """Return the scales at home in a key, its own first.

    With a minor third there is also the scale with the leading tone (harmonic minor), in minor
    itself the one with raised sixth and seventh too (melodic minor).
    """
    own = frozenset(key.scale)
    if not key.is_minor:
        return (own,)
    sixth, seventh = key.scale[5:]
    harmonic = own - {seventh} | {ChordDegree(7).above(key.tonic)}
    if key.mode != "minor":
        return own, harmonic
    return own, harmonic, harmonic - {sixth} | {ChordDegree(6).above(key.tonic)}


def is_diatonic(chord: Chord, key: Key) -> bool:
    """Tell whether one of the key's scales holds all members of the chord."""
    return any(scale.issuperset(chord.members) for scale in scales_of(key))


def scale_third(root: PitchName, key: Key) -> int | None:
    """Return the semitones of the third that the scale has over `root`; None outside the scale."""
    return _over(root, key, 2)


def scale_fifth(root: PitchName, key: Key) -> int | None:
    """Return the semitones of the fifth that the scale has over `root`; None outside the scale."""
    return _over(root, key, 4)


def _over(root: PitchName, key: Key, steps: int) -> int | None:
    if root not in key.scale:
        return None
    other = key.scale[(key.scale.index(root) + steps) % 7]
    return Interval.between_names(root, other).semitones
