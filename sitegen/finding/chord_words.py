"""What types of chords are called in words, by their canonical suffixes."""

import re

from sitegen.harmony.qualities import QUALITIES

# Handbook names (common practice, no source); a name that the table lacks is told by its parts.
_NAMES = {
    "": "major triad",
    "m": "minor triad",
    "5": "power chord",
    "dim": "diminished triad",
    "+": "augmented triad",
    "sus2": "suspended second",
    "sus4": "suspended fourth",
    "sus9": "suspended ninth",
    "6": "sixth",
    "m6": "minor sixth",
    "6/9": "six-nine",
    "m6/9": "minor six-nine",
    "7": "dominant seventh",
    "maj7": "major seventh",
    "m7": "minor seventh",
    "mmaj7": "minor with major seventh",
    "dim7": "diminished seventh",
    "dimmaj7": "diminished with major seventh",
    "m7♭5": "half-diminished seventh",
    "9": "dominant ninth",
    "maj9": "major ninth",
    "m9": "minor ninth",
    "mmaj9": "minor ninth with major seventh",
    "dim9": "diminished ninth",
    "11": "dominant eleventh",
    "maj11": "major eleventh",
    "m11": "minor eleventh",
    "mmaj11": "minor eleventh with major seventh",
    "13": "dominant thirteenth",
    "maj13": "major thirteenth",
    "m13": "minor thirteenth",
    "mmaj13": "minor thirteenth with major seventh",
    "7sus4": "suspended seventh",
    "9sus4": "suspended ninth with seventh",
    "13sus4": "suspended thirteenth",
    "alt": "altered dominant",
    "add9": "added ninth",
    "madd9": "minor with added ninth",
    "7♯5": "augmented seventh",
    "maj7♯5": "augmented with major seventh",
    "(♭5)": "major with flat fifth",
}
_STEMS = sorted({quality.name for quality in QUALITIES} & _NAMES.keys(), key=len, reverse=True)
_CHANGE = re.compile(r"(add|no|sus)?([♭♯]*)(\d+)")
_DEGREES = {
    "2": "second", "3": "third", "4": "fourth", "5": "fifth", "6": "sixth", "7": "seventh",
    "9": "ninth", "11": "eleventh", "13": "thirteenth",
}  # fmt: skip
_DOES = {None: "", "add": "added ", "no": "without ", "sus": "suspended "}
_SIGNS = {"♭": "flat ", "♯": "sharp "}


def chord_words(suffix: str) -> str:
    """Return a chord type by name, its suffix behind it: "minor seventh (m7)".

    `suffix` is canonical (see `sitegen.harmony.canonical`). A type without a name of its own is
    told from the nearest that has one: "dominant seventh, sharp ninth (7♯9)".
    """
    words = _NAMES.get(suffix) or _by_parts(suffix)
    return f"{words} ({suffix.strip('()')})" if suffix else words


def _by_parts(suffix: str) -> str:
    plain = suffix.replace("(", "").replace(")", "")
    for stem in _STEMS:
        changes = plain.removeprefix(stem)
        if plain.startswith(stem) and not _CHANGE.sub("", changes):
            told = [_change(*found) for found in _CHANGE.findall(changes)]
            return ", ".join((_NAMES[stem], *told))
    return f"chord {suffix}"


def _change(does: str, signs: str, number: str) -> str:
    sign = "".join(_SIGNS[sign] for sign in signs)
    return f"{_DOES[does or None]}{sign}{_DEGREES.get(number, number)}"
