"""Roman numerals in one convention, and those of music21."""

import re
from typing import Any

from sitegen.score.chord import Chord
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

_FLAT_IN_MINOR = ("III", "VI", "VII")
_NUMERAL = re.compile(r"([b♭]*|[#♯]*)([IV]+|[iv]+)(.*)")
_INVERSIONS = {"5": ("", "6", "64"), "7": ("7", "65", "43", "42")}
_MARKS = {"diminished": "°", "half-diminished": "ø", "augmented": "+"}


def equalize(figure: str, key: Key, *, is_ours: bool) -> str:
    """Return a numeral in the convention that all are compared in, ours without `maj`."""
    numeral, _, goal = re.sub(r"\[.*?\]", "", _plain(figure)).partition("/")
    if not is_ours:
        numeral, goal = _against_major(numeral, key), _against_major(goal, key)
    return numeral + (f"/{goal.upper()}" if goal else "")


def _plain(figure: str) -> str:
    figure = re.sub(r"([0-9])/(?=[0-9])", r"\1", figure.replace("maj", "").replace("o", "°"))
    return re.sub(r"(?<![0-9])2(?=$|/)", "42", figure)


def _against_major(numeral: str, key: Key) -> str:
    match = _NUMERAL.fullmatch(numeral)
    if match is None:
        return numeral
    sign = match[1].replace("b", "♭").replace("#", "♯")
    if key.mode == "minor" and match[2] in _FLAT_IN_MINOR:
        sign = f"♭{sign}"
    return sign + match[2] + match[3]


def library_figure(pitches: Any, key: Any) -> str:  # noqa: ANN401 - values of music21
    """Return music21's numeral of a chord, with its secondary dominants off, its default."""
    from music21.chord import Chord as Notes  # noqa: PLC0415 - takes a second
    from music21.roman import romanNumeralFromChord  # noqa: PLC0415 - takes a second

    found = romanNumeralFromChord(Notes(pitches), key)
    goal = found.secondaryRomanNumeral
    # Its figures count the notes of the scale, V75#3 in minor: only the inversion is asked.
    inversions = _INVERSIONS["7" if found.containsSeventh() else "5"]
    figures = dict(enumerate(inversions)).get(found.inversion(), "?")
    sign = found.frontAlterationString + found.romanNumeralAlone
    mark = _MARKS.get(found.impliedQuality, "")
    return f"{sign}{mark}{figures}" + (f"/{goal.figure}" if goal else "")


def library_numeral(chord: Chord, key: Key) -> str:
    """Return music21's numeral of one of our chords, in the convention that all share."""
    from music21.key import Key as TheirKey  # noqa: PLC0415 - takes a second
    from music21.pitch import Pitch  # noqa: PLC0415 - takes a second

    names = [chord.bass, *(name for name in chord.members if name != chord.bass)]
    pitches: list[Any] = []
    for name in names:
        pitches.append(Pitch(_theirs(name) + "3"))
        while len(pitches) > 1 and pitches[-1].ps <= pitches[-2].ps:
            pitches[-1].octave += 1
    tonic = TheirKey(_theirs(key.tonic), key.mode)
    return equalize(library_figure(pitches, tonic), key, is_ours=False)


def _theirs(name: PitchName) -> str:
    return str(name).replace("♭", "-").replace("♯", "#")
