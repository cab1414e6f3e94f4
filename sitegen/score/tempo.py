"""Tempos as beats a minute of a named note value."""

import re
from dataclasses import dataclass
from fractions import Fraction

SLOWEST, FASTEST = 10, 600
BEATS: dict[str, Fraction] = {
    "half": Fraction(2),
    "dotted half": Fraction(3),
    "quarter": Fraction(1),
    "dotted quarter": Fraction(3, 2),
    "eighth": Fraction(1, 2),
    "dotted eighth": Fraction(3, 4),
    "sixteenth": Fraction(1, 4),
}
"""The length in quarter notes of the note values that a tempo can count."""

_SIGNS = {"♩.": "dotted quarter", "♩": "quarter", "♪.": "dotted eighth", "♪": "eighth"}
_WRITTEN = re.compile(
    r"\s*(?:([a-z][a-z -]*?)(?: notes?)?\s*=\s*)?(\d{1,4}(?:\.\d{1,2})?)\s*(?:bpm)?\s*"
)
_QUARTER = Fraction(1)


@dataclass(frozen=True)
class Tempo:
    """A tempo in beats a minute; `beat` is the length of that beat in quarter notes."""

    beats_per_minute: Fraction
    beat: Fraction = _QUARTER

    @property
    def quarters_per_minute(self) -> Fraction:
        """The same tempo counted in quarter notes."""
        return self.beats_per_minute * self.beat

    @property
    def beat_name(self) -> str:
        """The name of the note value that is counted."""
        return next(name for name, length in BEATS.items() if length == self.beat)

    def __str__(self) -> str:
        number = float(self.beats_per_minute)
        return f"{self.beat_name} = {number:g}"


def read_tempo(text: str, *, compound: bool = False) -> Tempo:
    """Return the tempo written as `96`, `96 bpm`, `♩ = 96` or `dotted quarter = 58`.

    A bare number counts quarters, and dotted quarters where the meter is `compound`.
    Raises ValueError with a sentence for the author.
    """
    words = text.lower()
    for sign, name in _SIGNS.items():
        words = words.replace(sign, name)
    match = _WRITTEN.fullmatch(words)
    if match is None or not words.isascii():
        raise ValueError(f'"{text.strip()}" is not a tempo such as 96 or dotted quarter = 58')
    word = (match[1] or ("dotted quarter" if compound else "quarter")).replace("-", " ")
    if word not in BEATS:
        raise ValueError(f'"{word}" is not a note value that a tempo counts')
    number = Fraction(match[2])
    if not SLOWEST <= number <= FASTEST:
        raise ValueError(f"a tempo lies between {SLOWEST} and {FASTEST} beats a minute")
    return Tempo(number, BEATS[word])
