"""Augmented sixth chords, told by their sound, their bass and what they lead to."""

from sitegen.harmony.chord_degree import ChordDegree
from sitegen.harmony.resolution import is_six_four, semitones_up
from sitegen.score.chord import Chord
from sitegen.score.key import Key

_FLAT_SIXTH, _FIFTH = 8, ChordDegree(5)
# What sounds, in semitones over the tonic, with ♭6 in the bass.
_NAMES = {
    frozenset({8, 0, 6}): "It6",
    frozenset({8, 0, 2, 6}): "Fr43",
    frozenset({8, 0, 3, 6}): "Ger65",
}


def name_augmented_sixth(chord: Chord, answer: Chord | None, key: Key) -> str:
    """Return "It6", "Fr43" or "Ger65"; "" for a chord that is none.

    An augmented sixth chord sounds ♭6, 1 and ♯4, alone, with 2 or with ♭3; has ♭6 in the bass;
    and opens to the dominant or the six-four over it. Chord symbols write ♯4 as a seventh, A♭7
    for A♭ C E♭ F♯, so the sound decides and not the letters. Names and figures as in Aldwell
    and Schachter, Harmony and Voice Leading (from memory).
    """
    dominant = _FIFTH.above(key.tonic)
    if answer is None or semitones_up(key.tonic, chord.bass) != _FLAT_SIXTH:
        return ""
    if semitones_up(dominant, answer.root) and not is_six_four(answer, dominant):
        return ""
    tonic = key.tonic.pitch_class
    return _NAMES.get(frozenset((note - tonic) % 12 for note in chord.pitch_classes), "")
