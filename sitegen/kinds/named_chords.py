"""Which words of a sentence are chord symbols."""

import re
from collections.abc import Collection

from sitegen.harmony import ChordSymbolError, read_chord
from sitegen.score.chord import Chord

_ACCIDENTALS = "♭♯𝄫𝄪"
# What may be a symbol: its letters and signs, without the points and brackets around it.
_WORD = re.compile(rf"(?<![\w{_ACCIDENTALS}/])[A-G][\w{_ACCIDENTALS}/+°Δø]*")
_PITCH = re.compile(rf"[A-G][{_ACCIDENTALS}]*\d")


def named_chords(sentence: str, pitches: Collection[str] | None = None) -> tuple[Chord, ...]:
    """Return the chords whose symbols stand in `sentence`, as the engine writes them, each once.

    A letter alone is none: it is a note, a key or a word as well. `C5` and `E♭7` name a note as
    well: they are chords unless they are among `pitches`, the notes that the sentence can speak
    of; None stands for all notes there are.
    """
    words = dict.fromkeys(_WORD.findall(sentence))
    found = (_chord(word) for word in words if not _is_note(word, pitches))
    return tuple(chord for chord in found if chord is not None)


def _is_note(word: str, pitches: Collection[str] | None) -> bool:
    return bool(_PITCH.fullmatch(word)) and (pitches is None or word in pitches)


def _chord(word: str) -> Chord | None:
    try:
        chord = read_chord(word)
    except ChordSymbolError:
        return None
    if not isinstance(chord, Chord) or word == str(chord.root):
        return None
    return chord if str(chord) == word else None
