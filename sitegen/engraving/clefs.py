"""Which clef a part is read in."""

from dataclasses import dataclass
from statistics import median

from sitegen.score.chart import Part


@dataclass(frozen=True)
class Clef:
    """A clef's sign on a line from the bottom; `octave_lower` where what sounds lies below."""

    sign: str
    line: int
    octave_lower: bool = False


# The family names that are read an octave above what sounds, with the clef they are read in.
_OCTAVE_CLEFS = {
    "guitar": Clef("G", 2, octave_lower=True),
    "banjo": Clef("G", 2, octave_lower=True),
    "bass": Clef("F", 4, octave_lower=True),
}
_MIDDLE_C = 60


def clef_of(part: Part) -> Clef:
    """Return the clef that the author asks for, that of the instrument, or the fitting one."""
    octave = part.instrument.family if not part.instrument.clef else ""
    if octave in _OCTAVE_CLEFS:
        return _OCTAVE_CLEFS[octave]
    bass = (part.instrument.clef or _clef_by_range(part)) == "bass"
    return Clef("F", 4) if bass else Clef("G", 2)


def _clef_by_range(part: Part) -> str:
    """Return the clef that keeps the part near its staff: bass when most lies below middle C."""
    sounding = [
        note.pitch.midi for event in part.events for note in event.notes if note.pitch is not None
    ]
    return "bass" if sounding and median(sounding) < _MIDDLE_C else "treble"
