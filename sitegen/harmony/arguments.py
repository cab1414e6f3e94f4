"""Arguments of this room's functions, which take text as well as values."""

from sitegen.harmony.symbol import read_chord
from sitegen.score.chord import Chord, NoChord
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch, PitchName

AnyPitch = Pitch | PitchName | str
"""A pitch, a pitch without its octave, or the text of either."""
AnyChord = Chord | NoChord | str
"""A chord, no chord, or a chord symbol."""
AnyKey = Key | str
"""A key or its text, `Eb minor`."""


def as_name(pitch: AnyPitch) -> PitchName:
    """Return the name of a pitch; raises ValueError for text that is none."""
    if isinstance(pitch, PitchName):
        return pitch
    if isinstance(pitch, Pitch):
        return pitch.name
    return Pitch.read(pitch, 4).name


def as_chord(chord: AnyChord) -> Chord | NoChord:
    """Return the chord; raises ChordSymbolError for text that is no symbol."""
    return read_chord(chord) if isinstance(chord, str) else chord


def as_key(key: AnyKey) -> Key:
    """Return the key; raises ValueError for text that is none."""
    return Key.read(key) if isinstance(key, str) else key
