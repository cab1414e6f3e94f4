"""Instruments: what they are tuned to, and how what is read or fingered differs from what sounds.

Open strings in scientific pitch notation; guitar MIDI 40 45 50 55 59 64 and bass 28 33 38 43
are the usual handbook values.
"""

from collections import Counter
from dataclasses import dataclass

from sitegen.score.interval import Interval
from sitegen.score.pitch import Pitch

MOST_FRETS = 36
FEWEST_STRINGS, MOST_STRINGS = 4, 8


@dataclass(frozen=True)
class Tuning:
    """Open strings as they sound without a capo, lowest string first."""

    name: str
    strings: tuple[Pitch, ...]

    def __len__(self) -> int:
        return len(self.strings)


@dataclass(frozen=True)
class Fretted:
    """A fretted instrument: its tuning, its capo and the standard tuning it departs from.

    Strings are numbered from 1, the highest-sounding place of the tablature, as players do.
    Fret numbers count from the capo.
    """

    tuning: Tuning
    standard: Tuning
    capo: int = 0

    def sounding(self, string: int, fret: int) -> int:
        """Return the MIDI number that `string` (1 = top) gives at `fret` above the capo."""
        return self.tuning.strings[-string].midi + self.capo + fret

    @property
    def shift(self) -> int:
        """Semitones from the fingered to the sounding pitch.

        The shape under the fingers has the name it would have in the nearest tuning of the same
        build at concert pitch: half a step down gives -1 and so does drop C♯, which is drop D
        half a step down; drop D itself gives 0. Read off the tuning as the difference from
        standard that most strings share (the smallest, where two are shared equally).
        """
        if len(self.tuning) != len(self.standard):
            return self.capo
        pairs = zip(self.tuning.strings, self.standard.strings, strict=True)
        counts = Counter(low.midi - plain.midi for low, plain in pairs)
        return min(counts, key=lambda d: (-counts[d], abs(d), d)) + self.capo


@dataclass(frozen=True)
class Reading:
    """An instrument that reads another pitch than sounds: `interval` from sounding to read."""

    name: str
    interval: Interval


@dataclass(frozen=True)
class Instrument:
    """What a part is played on.

    `family` is the part's usual name ("guitar", "bass", "voice", "drums", ...); `fretted` is
    set for a part with strings, `reading` for one that reads in another key or octave, and
    `clef` ("treble" or "bass") where the author asks for one.
    """

    family: str
    fretted: Fretted | None = None
    reading: Reading | None = None
    clef: str = ""


def _tuning(name: str, text: str) -> Tuning:
    return Tuning(name, tuple(Pitch.read(word) for word in text.split()))


def lowered(tuning: Tuning, name: str, interval: Interval) -> Tuning:
    """Return `tuning` with each string moved by `interval`."""
    return Tuning(name, tuple(interval.above(pitch) for pitch in tuning.strings))


STANDARD: dict[tuple[str, int], Tuning] = {
    ("guitar", 6): _tuning("standard", "E2 A2 D3 G3 B3 E4"),
    ("guitar", 7): _tuning("standard", "B1 E2 A2 D3 G3 B3 E4"),
    ("guitar", 8): _tuning("standard", "F#1 B1 E2 A2 D3 G3 B3 E4"),
    ("bass", 4): _tuning("standard", "E1 A1 D2 G2"),
    ("bass", 5): _tuning("standard", "B0 E1 A1 D2 G2"),
    ("bass", 6): _tuning("standard", "B0 E1 A1 D2 G2 C3"),
    ("ukulele", 4): _tuning("standard", "G4 C4 E4 A4"),
    ("mandolin", 4): _tuning("standard", "G3 D4 A4 E5"),
    ("banjo", 5): _tuning("standard", "G4 D3 G3 B3 D4"),
}
"""Standard tunings by family and number of strings."""

_DOWN = {
    "half-step down": Interval(0, -1),
    "whole-step down": Interval(-1, -2),
    "minor third down": Interval(-2, -3),
    "major third down": Interval(-2, -4),
}

_GUITAR = {
    "drop D": "D2 A2 D3 G3 B3 E4",
    "drop C#": "C#2 G#2 C#3 F#3 A#3 D#4",
    "drop Db": "Db2 Ab2 Db3 Gb3 Bb3 Eb4",
    "drop C": "C2 G2 C3 F3 A3 D4",
    "drop B": "B1 F#2 B2 E3 G#3 C#4",
    "drop A": "A1 E2 A2 D3 F#3 B3",
    "double drop D": "D2 A2 D3 G3 B3 D4",
    "open D": "D2 A2 D3 F#3 A3 D4",
    "open D minor": "D2 A2 D3 F3 A3 D4",
    "open E": "E2 B2 E3 G#3 B3 E4",
    "open G": "D2 G2 D3 G3 B3 D4",
    "open A": "E2 A2 E3 A3 C#4 E4",
    "open C": "C2 G2 C3 G3 C4 E4",
    "DADGAD": "D2 A2 D3 G3 A3 D4",
}
_GUITAR_7 = {"drop A": "A1 E2 A2 D3 G3 B3 E4", "drop G": "G1 D2 G2 C3 F3 A3 D4"}
_GUITAR_8 = {"drop E": "E1 B1 E2 A2 D3 G3 B3 E4"}
_BASS_5 = {"drop A": "A0 E1 A1 D2 G2"}
_BASS = {
    "drop D": "D1 A1 D2 G2",
    "drop C#": "C#1 G#1 C#2 F#2",
    "drop Db": "Db1 Ab1 Db2 Gb2",
    "drop C": "C1 G1 C2 F2",
}


def _named() -> dict[tuple[str, str, int], Tuning]:
    table: dict[tuple[str, str, int], Tuning] = {}
    for (family, count), standard in STANDARD.items():
        table[family, "standard", count] = standard
        for name, interval in _DOWN.items():
            table[family, name, count] = lowered(standard, name, interval)
    by_family = [("guitar", names) for names in (_GUITAR, _GUITAR_7, _GUITAR_8)]
    by_family += [("bass", names) for names in (_BASS, _BASS_5)]
    for family, strings in by_family:
        for name, text in strings.items():
            tuning = _tuning(name, text)
            table[family, name, len(tuning)] = tuning
    return table


TUNINGS: dict[tuple[str, str, int], Tuning] = _named()
"""Tunings by family, usual name and number of strings."""
