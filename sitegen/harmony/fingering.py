"""What a detuned or capoed player fingers against what sounds."""

from functools import lru_cache

from sitegen.harmony.arguments import AnyKey, as_key
from sitegen.score.chord import Chord, NoChord
from sitegen.score.interval import Interval
from sitegen.score.key import Key

# How far along the line of fifths a respelling may lie: three augmented unisons suffice for any
# key with a signature.
_FARTHEST = 21


def fingering_interval(shift: int, key: AnyKey | None) -> Interval:
    """Return the spelled interval from sounding to fingered names.

    `shift` is how many semitones the instrument sounds off its fingered pitch: capo 2 is 2, half
    a step down -1. Of the spellings, the one whose fingered key has the fewest accidentals is
    taken (E♭ minor half a step down is fingered in E minor, by a rising A1; D♭ in D, F minor in
    F♯ minor); of two alike, the simpler interval, then flats. Without a key it is the simplest
    interval. No shift, or whole octaves, leave every name as it is. Raises ValueError for text
    that is no key.
    """
    if shift % 12 == 0:
        return Interval(-shift // 12 * 7, -shift)
    return _simplest(shift, as_key(key).fifths if key is not None else 0)


@lru_cache(maxsize=1024)
def _simplest(shift: int, fifths: int) -> Interval:
    places = [p for p in range(-_FARTHEST, _FARTHEST + 1) if (7 * p + shift) % 12 == 0]
    best = min(places, key=lambda place: (abs(fifths + place), abs(place), fifths + place))
    return _interval(best, -shift)


def fingered_key(key: AnyKey, shift: int) -> Key:
    """Return the key that is fingered when `key` sounds; see `fingering_interval`."""
    sounding = as_key(key)
    return Key(fingering_interval(shift, sounding).above_name(sounding.tonic), sounding.mode)


def fingered_chord(chord: Chord | NoChord, interval: Interval) -> Chord | NoChord:
    """Return the chord with every name moved by `interval`; N.C. stays what it is."""
    if not isinstance(chord, Chord):
        return chord
    members = tuple(interval.above_name(name) for name in chord.members)
    root, bass = interval.above_name(chord.root), interval.above_name(chord.bass)
    return Chord(root, chord.quality, members, chord.degrees, bass)


def _interval(fifths: int, semitones: int) -> Interval:
    """Return the interval of so many semitones that lies `fifths` along the line of fifths."""
    octaves = (semitones - 7 * fifths) // 12
    return Interval(4 * fifths + 7 * octaves, semitones)
