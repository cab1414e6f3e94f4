"""How the root of one chord moves to that of the next, in words."""

from functools import lru_cache

from sitegen.harmony.arguments import AnyChord, as_chord
from sitegen.score.chord import Chord
from sitegen.score.interval import Interval
from sitegen.score.pitch import PitchName

_TRITONE = 6
_WORDS = {
    "A1": "a semitone",
    "m2": "a semitone",
    "M2": "a whole tone",
    "A2": "an augmented second",
    "d3": "a diminished third",
    "m3": "a minor third",
    "M3": "a major third",
    "A3": "an augmented third",
    "d4": "a diminished fourth",
    "P4": "a fourth",
}
_BY_SEMITONES = ("", "m2", "M2", "m3", "M3", "P4")


def root_motion(before: AnyChord, after: AnyChord) -> str:
    """Return how the root moves, the smaller way round: "up a fourth", "down a minor third".

    The spelling counts, C to D♯ is "up an augmented second"; six semitones are "a tritone" either
    way. "" for the same root, however spelled, and where there is no chord. Raises
    ChordSymbolError for text that is no chord.
    """
    first, second = as_chord(before), as_chord(after)
    if not isinstance(first, Chord) or not isinstance(second, Chord):
        return ""
    return name_motion(first.root, second.root)


@lru_cache(maxsize=1024)
def name_motion(first: PitchName, second: PitchName) -> str:
    """Return how one name moves to another, as `root_motion` says it of two roots."""
    semitones = (second.pitch_class - first.pitch_class) % 12
    if semitones in {0, _TRITONE}:
        return "a tritone" if semitones else ""
    if semitones < _TRITONE:
        return f"up {_words(Interval.between_names(first, second), semitones)}"
    return f"down {_words(Interval.between_names(second, first), 12 - semitones)}"


def _words(interval: Interval, semitones: int) -> str:
    """Return an interval's name; a far-fetched spelling is named by its size."""
    if interval.semitones == semitones and interval.name in _WORDS:
        return _WORDS[interval.name]
    return _WORDS[_BY_SEMITONES[semitones]]
