"""The figures behind a numeral: its quality as numerals spell it, and its inversion."""

import re
from dataclasses import replace

from sitegen.score.chord import Chord
from sitegen.score.interval import Interval

_TRIADS = {"": "", "m": "", "dim": "°", "+": "+"}
_SEVENTHS = {"7": "", "m7": "", "dim7": "°", "m7♭5": "ø", "7♯5": "+"}
_SEVENTHS |= {"maj7": "maj", "mmaj7": "maj", "maj7♯5": "+maj"}
_TRIAD_INVERSIONS = {"3": "6", "5": "64"}
_SEVENTH_INVERSIONS = {"3": "65", "5": "43", "7": "42"}
_MINOR_SEVENTH = Interval(6, 10)
_HALF_DIMINISHED = re.compile(r"m(7|9|11)♭5")
_SIXTH = re.compile(r"6(?!/)")


def seventh_in_bass(chord: Chord) -> Chord:
    """Return a major or minor triad over its own minor seventh as the seventh chord it makes."""
    if chord.bass == chord.root or chord.quality not in ("", "m"):
        return chord
    if Interval.between_names(chord.root, chord.bass) != _MINOR_SEVENTH:
        return chord
    members, degrees = (*chord.members, chord.bass), (*chord.degrees, "♭7")
    return replace(chord, quality=f"{chord.quality}7", members=members, degrees=degrees)


def bass_text(chord: Chord) -> str | None:
    """Return the figure of a chord's inversion: "" in root position, None where it has none."""
    if chord.bass == chord.root:
        return ""
    if chord.bass not in chord.members:
        return None
    degree = chord.degrees[chord.members.index(chord.bass)].lstrip("♭♯")
    if chord.quality in _TRIADS:
        return _TRIAD_INVERSIONS.get(degree)
    if chord.quality in _SEVENTHS:
        return _SEVENTH_INVERSIONS.get(degree)
    return None


def suffix_text(chord: Chord, figure: str) -> str:
    """Return what follows the numeral: quality and figure of inversion, V65, ii7, vii°43."""
    if figure:
        return {**_TRIADS, **_SEVENTHS}[chord.quality] + figure
    return _quality_text(chord.quality)


def _quality_text(quality: str) -> str:
    if quality.startswith("dim"):
        return "°" + quality.removeprefix("dim")
    if _HALF_DIMINISHED.match(quality):
        return _HALF_DIMINISHED.sub(r"ø\1", quality)
    if quality.startswith("m") and not quality.startswith("maj"):
        quality = quality.removeprefix("m")
    return _SIXTH.sub("add6", quality, count=1) if quality.startswith("6") else quality
