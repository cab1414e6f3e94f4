"""Roman numerals: a chord in a key, as writers on rock and pop name it."""

from functools import lru_cache

from sitegen.harmony.applied import Target, find_target
from sitegen.harmony.arguments import AnyChord, AnyKey, as_chord, as_key
from sitegen.harmony.figures import bass_text, seventh_in_bass, suffix_text
from sitegen.harmony.key_degrees import degree_from, key_degree
from sitegen.harmony.scales import scale_third
from sitegen.score.chord import Chord
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName, alteration_sign

NUMERALS = ("I", "II", "III", "IV", "V", "VI", "VII")
_FIFTH = 5


def roman(chord: AnyChord, key: AnyKey) -> str:
    """Return the numeral of a chord in a key; "" for N.C.

    - Degrees are compared with the major scale on the tonic, in every mode: the chords on the
      natural degrees of a minor key are ♭III, ♭VI and ♭VII, that on its leading tone is vii°.
    - Capitals for a major third, small letters for a minor one. A chord without a third (5, sus)
      takes the case of the scale's triad on its root, i5 and IVsus2 and ♭VIIsus2; capitals on a
      root outside the scale and for a suspended seventh chord on the fifth degree, V7sus4.
    - Suffixes are those of the symbol: V7, ♭VImaj7, IVadd9, but ii7 (not iim7), ° for dim, ø7
      for m7♭5. An added sixth is Iadd6, since I6 is an inversion.
    - Inversions of triads (6 64) and sevenths (65 43 42) have their figures: V65, ii42, IVmaj65. A
      triad over its own minor seventh (B♭/A♭) is the seventh chord in third inversion, V42. Every
      other bass is an Arabic number after a slash, the bass as a degree of the key: I/2, V9/7,
      i5/5.
    - V7/ii: a Roman number after a slash is the degree that the chord is dominant or leading-tone
      chord of; see `sitegen.harmony.applied` for what counts as applied and what as borrowed.

    A chord by itself cannot tell where it leads: `roman_line` reads progressions. The degrees are
    those of de Clercq and Temperley, A corpus analysis of rock harmony (2011), the figures those
    of Kostka and Payne, Tonal Harmony (both from memory).

    Raises ValueError for text that is no chord or no key.
    """
    sounding, home = as_chord(chord), as_key(key)
    if not isinstance(sounding, Chord):
        return ""
    return _name(sounding, home)


@lru_cache(maxsize=4096)
def _name(symbol: Chord, key: Key) -> str:
    chord = seventh_in_bass(symbol)
    return write_numeral(chord, key, find_target(chord, key))


def write_numeral(chord: Chord, key: Key, target: Target | None) -> str:
    """Return the numeral of a chord that is applied to `target`, or to nothing.

    A substitute for the dominant of the tonic itself is written without its goal, subV7.
    """
    figure, bass = bass_text(chord), ""
    if figure is None:
        figure, bass = "", f"/{key_degree(chord.bass, key)}"
    suffix = suffix_text(chord, figure)
    if target is None:
        return f"{_numeral(chord.root, key, small=_is_small(chord, key))}{suffix}{bass}"
    goal = "" if target.name == key.tonic else f"/{_numeral(target.name, key, small=target.small)}"
    return f"{target.numeral}{suffix}{goal}{bass}"


def _numeral(name: PitchName, key: Key, *, small: bool) -> str:
    degree = degree_from(key.tonic, name)
    numeral = NUMERALS[degree.number - 1]
    return alteration_sign(degree.alteration) + (numeral.lower() if small else numeral)


def _is_small(chord: Chord, key: Key) -> bool:
    if "3" in chord.degrees or "♭3" in chord.degrees:
        return "♭3" in chord.degrees
    dominant = "♭7" in chord.degrees and "4" in chord.degrees
    if dominant and degree_from(key.tonic, chord.root).number == _FIFTH:
        return False
    return scale_third(chord.root, key) == 3  # noqa: PLR2004
