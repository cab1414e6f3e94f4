"""What is left of a chord without its extensions: its root and the family of its triad.

Two chords with the same root and family are the same chord "up to extensions":

- 6, 7, 9, 11, 13 and added notes fall away, those of dominants too: C7, C9 and C6 are C, since
  a dominant may take or leave its seventh (Kostka and Payne, Tonal Harmony, from memory) and
  blues players take it on every degree. mir_eval's `triads` reduces the same way.
- A slash falls away: inversions and pedal basses are the chord over another bass.
- A fifth is part of the family in diminished and augmented chords: Bm7♭5 and Bdim7 are
  diminished. In a chord with major third and minor seventh the fifth is an alteration of a
  dominant, and so 7♭5, 7♯5 and alt are major, as C(♭5) is.
- Chords without a third: with a fourth they are `suspended` (sus4, 7sus4, 9sus4, sus2sus4),
  without one `power` (5, sus2). A sus2 has the notes of a power chord with a ninth, and rock
  guitarists play it as one; a fourth wants to go down to the third (our own choice, no source).
"""

from functools import lru_cache
from typing import Literal

from msgspec import Struct

from sitegen.harmony.chord_degree import ChordDegree
from sitegen.score.chord import Chord

Family = Literal["major", "minor", "diminished", "augmented", "suspended", "power"]
"""The family of a triad."""
Kind = Literal[Family, "dominant", "half-diminished"]
"""A family, with the sevenths apart that other chords stand in for."""


class Core(Struct, frozen=True, gc=False):
    """A chord's root as a pitch class and everything that comparing asks of it.

    `notes` are the semitones over the root, the bass behind a slash, in hexadecimal digits:
    "037a", "047/4". They are equal for chords that differ in spelling only.
    """

    root: int
    notes: str
    family: Family
    kind: Kind


def core(chord: Chord) -> Core:
    """Return a chord's core."""
    root = chord.root.pitch_class
    notes, family, kind = _sort(chord.degrees)
    bass = (chord.bass.pitch_class - root) % 12
    return Core(root, f"{notes}/{bass:x}" if bass else notes, family, kind)


@lru_cache(maxsize=1024)
def _sort(degrees: tuple[str, ...]) -> tuple[str, Family, Kind]:
    semitones = {0, *(ChordDegree.read(degree).semitones for degree in degrees)}
    kind = _kind(frozenset(degrees))
    return "".join(f"{n:x}" for n in sorted(semitones)), family_of(kind), kind


def family_of(kind: Kind) -> Family:
    """Return the family that a kind belongs to."""
    if kind == "dominant":
        return "major"
    return "diminished" if kind == "half-diminished" else kind


def _kind(degrees: frozenset[str]) -> Kind:
    altered = "5" not in degrees
    if "3" in degrees:
        if "♭7" in degrees:
            return "dominant"
        return "augmented" if altered and "♯5" in degrees else "major"
    if "♭3" in degrees:
        if altered and "♭5" in degrees:
            return "half-diminished" if "♭7" in degrees else "diminished"
        return "minor"
    return "suspended" if "4" in degrees else "power"
