"""The key and the tempo that a score has where some of its bars start."""

from fractions import Fraction

from sitegen.score.key import Key
from sitegen.score.pitch import PitchName
from sitegen.score.tempo import BEATS, FASTEST, SLOWEST, Tempo
from sitegen.scores.found import FoundKey, FoundScore, FoundTempo


def key_at(score: FoundScore, start: Fraction, song: Key | None) -> Key | None:
    """Return the score's key at an onset, `song` where it has none.

    A signature without a mode is the song's key where that has the same, else the major one.
    """
    key = song
    for found in score.keys:
        if Fraction(found.onset) <= start:
            key = _key(found, song)
    return key


def tempo_at(score: FoundScore, start: Fraction, song: Tempo | None) -> Tempo | None:
    """Return the score's tempo at an onset, `song` where it has none that can be said."""
    tempo = song
    for found in score.tempos:
        if Fraction(found.onset) <= start:
            tempo = _tempo(found) or tempo
    return tempo


def _key(found: FoundKey, song: Key | None) -> Key:
    try:
        return Key.read(found.name)
    except ValueError:
        if song is not None and song.fifths == found.fifths:
            return song
        return Key(PitchName.at_fifths(found.fifths))


def _tempo(found: FoundTempo) -> Tempo | None:
    beat = Fraction(found.beat)
    if beat not in BEATS.values() or not SLOWEST <= found.beats <= FASTEST:
        return None
    return Tempo(Fraction(found.beats).limit_denominator(100), beat)
