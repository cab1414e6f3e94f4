"""Music in plain words, for whoever listens to a page: no sign that a screen reader skips.

Accidentals are words ("E flat 4"), lengths are named ("dotted eighth"), counts are said as
players say them ("the and of 2").
"""

import re
from fractions import Fraction
from functools import lru_cache

from sitegen.score.chord import Chord, NoChord
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch, PitchName, signs
from sitegen.score.tempo import Tempo

_ALTERED = {0: "", 1: " sharp", 2: " double sharp", -1: " flat", -2: " double flat"}
_VALUES = {
    Fraction(8): "double whole",
    Fraction(4): "whole",
    Fraction(2): "half",
    Fraction(1): "quarter",
    Fraction(1, 2): "eighth",
    Fraction(1, 4): "sixteenth",
    Fraction(1, 8): "thirty-second",
    Fraction(1, 16): "sixty-fourth",
}
# Tuplets by how many stand in the time of the next smaller power of two.
_TUPLETS = {3: "triplet", 5: "quintuplet", 7: "septuplet", 9: "nonuplet"}
_COUNTS = {
    Fraction(1, 2): "the and of",
    Fraction(1, 4): "the e of",
    Fraction(3, 4): "the a of",
    Fraction(1, 3): "the la of",
    Fraction(2, 3): "the li of",
}
_NUMERALS = {"I": "one", "II": "two", "III": "three", "IV": "four", "V": "five"}
_NUMERALS |= {"VI": "six", "VII": "seven"}
_NUMERAL = re.compile(r"([♭♯]*)([IV]+|[iv]+)(.*)")
_SIXTHS = {"It": "Italian", "Fr": "French", "Ger": "German"}
_SIXTH = re.compile(r"(It|Fr|Ger)[0-9]*")
_OF = re.compile(r"/(?=[♭♯]*[IViv])")
_QUALITY = re.compile(r"maj|min|dim|aug|sus|add|alt|omit|no|[m°øoΔ+/(),-]|[♭♯]+|\d+|[^\s]")
_WHOLE_QUALITIES = {"": "major", "5": "power chord"}
_QUALITY_WORDS = {
    "maj": "major",
    "Δ": "major",
    "min": "minor",
    "m": "minor",
    "-": "minor",
    "dim": "diminished",
    "°": "diminished",
    "o": "diminished",
    "ø": "half-diminished",
    "aug": "augmented",
    "+": "augmented",
    "sus": "suspended",
    "alt": "altered",
    "omit": "without",
    "no": "without",
    "♭": "flat",
    "♭♭": "double flat",
    "♯": "sharp",
    "♯♯": "double sharp",
    "/": "",
    "(": "",
    ")": "",
    ",": "",
}


def spoken_name(name: PitchName) -> str:
    """Return a pitch name in words: "E flat", "F double sharp"."""
    altered = _ALTERED.get(name.alteration)
    if altered is None:
        word = "sharp" if name.alteration > 0 else "flat"
        altered = f" {abs(name.alteration)} times {word}"
    return name.letter + altered


def spoken_pitch(pitch: Pitch) -> str:
    """Return a pitch in words: "E flat 4"."""
    return f"{spoken_name(pitch.name)} {pitch.octave}"


def spoken_key(key: Key) -> str:
    """Return a key in words: "E flat minor"."""
    return f"{spoken_name(key.tonic)} {key.mode}"


def spoken_tempo(tempo: Tempo) -> str:
    """Return a tempo in words: "96", "dotted quarter 58"; a quarter is not named."""
    number = f"{float(tempo.beats_per_minute):g}"
    return number if tempo.beat == 1 else f"{tempo.beat_name} {number}"


def spoken_chord(chord: Chord | NoChord) -> str:
    """Return a chord in words: "E flat suspended 2", "C minor 7 over B flat", "no chord"."""
    if isinstance(chord, NoChord):
        return "no chord"
    quality = _WHOLE_QUALITIES.get(chord.quality) or _spoken_quality(chord.quality)
    bass = f" over {spoken_name(chord.bass)}" if chord.bass != chord.root else ""
    return f"{spoken_name(chord.root)} {quality}{bass}"


def _spoken_quality(quality: str) -> str:
    tokens = _QUALITY.findall(quality)
    return " ".join(filter(None, (_QUALITY_WORDS.get(token, token) for token in tokens)))


def spoken_degree(degree: str) -> str:
    """Return a degree in words: "root", "flat 3", "sharp 11"."""
    return "root" if degree == "R" else _spoken_quality(degree)


def spoken_roman(roman: str) -> str:
    """Return a Roman numeral in words: "two minor 7", "five 7 of five", "flat six".

    Capitals cannot be heard, so a small numeral says "minor" unless it says more. The augmented
    sixths and the tritone substitute have their names.
    """
    return " of ".join(_spoken_numeral(part) for part in _OF.split(roman))


def _spoken_numeral(numeral: str) -> str:
    sixth = _SIXTH.fullmatch(numeral)
    if sixth is not None:
        return f"{_SIXTHS[sixth[1]]} augmented sixth"
    if numeral.startswith("sub"):
        return f"tritone substitute {_spoken_numeral(numeral.removeprefix('sub'))}"
    match = _NUMERAL.fullmatch(numeral)
    if match is None or match[2].upper() not in _NUMERALS:
        return _spoken_quality(numeral)
    if match[3] == "5":
        root = (_spoken_quality(match[1]), _NUMERALS[match[2].upper()])
        return " ".join(filter(None, (*root, "power chord")))
    minor = "minor" if match[2].islower() and not re.match(r"[°øo]|dim", match[3]) else ""
    words = (_spoken_quality(match[1]), _NUMERALS[match[2].upper()], minor)
    return " ".join(filter(None, (*words, _spoken_quality(match[3]))))


def spoken_text(text: str) -> str:
    """Return an author's words with the accidentals of its pitch names said: "drop D flat"."""
    named = re.sub(r"(?<!\w)[A-G](?:b+|#+|[♭♯]+)(?=-?\d|\W|$)", _said_name, text)
    return named.replace("♭", " flat").replace("♯", " sharp")


def _said_name(match: re.Match[str]) -> str:
    name = spoken_name(PitchName.read(signs(match[0])))
    follows = match.string[match.end() : match.end() + 1]
    return f"{name} " if follows.isdigit() else name


@lru_cache(maxsize=1024)
def spoken_length(length: Fraction) -> str:
    """Return a length in quarter notes as a note value: "quarter", "dotted eighth", "".

    Empty for a length that no single note, plain, dotted or of a tuplet, can show.
    """
    if length in _VALUES:
        return _VALUES[length]
    if length * 2 / 3 in _VALUES:
        return f"dotted {_VALUES[length * 2 / 3]}"
    for count, word in _TUPLETS.items():
        time = 1 << (count.bit_length() - 1)
        if length * count / time in _VALUES:
            return f"{word} {_VALUES[length * count / time]}"
    return ""


def spoken_beats(beats: Fraction) -> str:
    """Return a number of beats in words: "1 beat", "2 1/2 beats", "3/4 of a beat"."""
    whole, rest = divmod(beats, 1)
    if not whole:
        return f"{rest} of a beat"
    number = f"{whole} {rest}" if rest else str(whole)
    return f"{number} {'beat' if beats == 1 else 'beats'}"


def spoken_count(beat: Fraction) -> str:
    """Return a counted beat as it is said: "2", "the and of 2", "the a of 4", "1 and 2/5"."""
    whole, rest = divmod(beat, 1)
    if not rest:
        return str(whole)
    if rest in _COUNTS:
        return f"{_COUNTS[rest]} {whole}"
    return f"{whole} and {rest}"
