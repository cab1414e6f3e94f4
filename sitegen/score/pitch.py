"""Spelled pitches: a letter, an alteration and, for a pitch, an octave (C4 = middle C).

Octaves follow scientific pitch notation (Acoustical Society of America; C4 is MIDI 60).
"""

import re

from msgspec import Struct

LETTERS = "CDEFGAB"
_STEPS = {letter: step for step, letter in enumerate(LETTERS)}
NATURAL_CLASSES = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}
# Places of the natural letters on the line of fifths, C = 0.
_FIFTHS = {"F": -1, "C": 0, "G": 1, "D": 2, "A": 3, "E": 4, "B": 5}
_ALTERATIONS = {"": 0, "♮": 0, "♭": -1, "♭♭": -2, "♭♭♭": -3, "♯": 1, "♯♯": 2, "♯♯♯": 3}
_SIGNS = {value: sign for sign, value in _ALTERATIONS.items() if sign != "♮"}
_TO_SIGNS = str.maketrans({"b": "♭", "#": "♯", "x": "𝄪"})
_NAME = re.compile(r"([A-G])([b#x♭♯♮𝄪𝄫]*)")
_PITCH = re.compile(r"([A-G][b#x♭♯♮𝄪𝄫]*)(-?\d+)?")


def signs(text: str) -> str:
    """Return accidentals typed as b # x 𝄪 𝄫 written with ♭ ♯ only."""
    return text.translate(_TO_SIGNS).replace("𝄪", "♯♯").replace("𝄫", "♭♭")


class PitchName(Struct, frozen=True, gc=False):
    """A spelled pitch class: letter A to G and alteration in semitones (♭ = -1, ♯ = 1)."""

    letter: str
    alteration: int = 0

    def __str__(self) -> str:
        return self.letter + alteration_sign(self.alteration)

    @property
    def pitch_class(self) -> int:
        """The pitch class, C = 0."""
        return (NATURAL_CLASSES[self.letter] + self.alteration) % 12

    @property
    def fifths(self) -> int:
        """The place on the line of fifths, C = 0, G = 1, F = -1, B♭ = -2."""
        return _FIFTHS[self.letter] + 7 * self.alteration

    @property
    def step(self) -> int:
        """The letter's place in C D E F G A B, from 0."""
        return _STEPS[self.letter]

    @classmethod
    def at_fifths(cls, fifths: int) -> "PitchName":
        """Return the name at a place on the line of fifths, C = 0."""
        letter = "FCGDAEB"[(fifths + 1) % 7]
        return cls(letter, (fifths - _FIFTHS[letter]) // 7)

    @classmethod
    def read(cls, text: str) -> "PitchName":
        """Return the name written as `Eb`, `E♭`, `F##`, ...; raises ValueError for other text."""
        match = _NAME.fullmatch(text)
        alteration = _ALTERATIONS.get(signs(match[2])) if match else None
        if match is None or alteration is None:
            raise ValueError(f'"{text}" is not a pitch name')
        return cls(match[1], alteration)


class Pitch(Struct, frozen=True, gc=False):
    """A spelled pitch in an octave; B♯3 and C4 sound alike and are different pitches."""

    name: PitchName
    octave: int

    def __str__(self) -> str:
        return f"{self.name}{self.octave}"

    @property
    def midi(self) -> int:
        """The MIDI note number, C4 = 60; may leave 0 to 127 for extreme octaves."""
        return 12 * (self.octave + 1) + NATURAL_CLASSES[self.name.letter] + self.name.alteration

    @property
    def place(self) -> int:
        """The diatonic place: staff steps above C0, whatever the alteration."""
        return 7 * self.octave + self.name.step

    @classmethod
    def of(cls, name: PitchName, midi: int) -> "Pitch":
        """Return the pitch with this name that sounds as `midi`; the classes must agree."""
        octave, rest = divmod(midi - NATURAL_CLASSES[name.letter] - name.alteration, 12)
        if rest:
            raise ValueError(f"{name} does not sound as MIDI note {midi}")
        return cls(name, octave - 1)

    @classmethod
    def read(cls, text: str, octave: int | None = None) -> "Pitch":
        """Return the pitch written as `Eb4`; `octave` stands in where none is written.

        Raises ValueError for other text and when no octave is known.
        """
        match = _PITCH.fullmatch(text)
        if match is None:
            raise ValueError(f'"{text}" is not a pitch')
        if match[2] is None and octave is None:
            raise ValueError(f'"{text}" has no octave')
        name = PitchName.read(match[1])
        return cls(name, int(match[2]) if match[2] is not None else int(octave or 0))


def alteration_sign(alteration: int) -> str:
    """Return the signs for an alteration in semitones: -1 is ♭, 2 is ♯♯."""
    sign = "♭" if alteration < 0 else "♯"
    return _SIGNS.get(alteration, sign * abs(alteration))
