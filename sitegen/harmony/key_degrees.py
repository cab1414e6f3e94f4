"""Notes and numerals against the tonic: every degree is compared with the major scale."""

from functools import lru_cache

from sitegen.harmony.arguments import AnyKey, AnyPitch, as_key, as_name
from sitegen.harmony.chord_degree import ChordDegree
from sitegen.score.pitch import PitchName, alteration_sign


def key_degree(pitch: AnyPitch, key: AnyKey) -> str:
    """Return a note's degree in the key, "1", "♭3", "♯4", against the major scale on the tonic.

    The third of a minor key is ♭3, as rock and pop writers count. The letter decides: F♯ in C is
    ♯4, G♭ is ♭5. Raises ValueError for text that is no pitch or no key.
    """
    found = degree_from(as_key(key).tonic, as_name(pitch))
    return f"{alteration_sign(found.alteration)}{found.number}"


@lru_cache(maxsize=2048)
def degree_from(tonic: PitchName, name: PitchName) -> ChordDegree:
    """Return the degree, 1 to 7, of a name counted from `tonic`."""
    number = (name.step - tonic.step) % 7 + 1
    natural = ChordDegree(number).above(tonic)
    return ChordDegree(number, name.alteration - natural.alteration)
