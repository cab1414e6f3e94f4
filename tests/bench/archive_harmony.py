"""Keys, chords and progressions of a synthetic archive: scales of a key and chords built on them.

Common practice, no source: triads and sevenths in thirds on the seven degrees, with suspended
and added notes where the scale has them, and a major dominant in minor.
"""

from dataclasses import dataclass
from functools import cache
from random import Random

from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

_TONICS = ("C", "G", "D", "A", "E", "F", "Bb", "Eb", "Ab", "B", "F#", "C#")
_MODES = ("major", "major", "minor", "minor", "dorian", "mixolydian")
_MOST_SIGNS = 5
_TRIADS: dict[tuple[int, ...], str] = {(4, 7): "", (3, 7): "m", (3, 6): "dim"}
_SEVENTHS: dict[tuple[int, ...], str] = {
    (4, 7, 11): "maj7",
    (4, 7, 10): "7",
    (3, 7, 10): "m7",
    (3, 6, 10): "m7b5",
}
_HELD: dict[tuple[int, ...], str] = {(5, 7): "sus4", (2, 7): "sus2"}
_DOMINANT = 4
_LOOPS = (
    (0, 4, 5, 3),
    (0, 3, 4, 3),
    (5, 3, 0, 4),
    (0, 5, 3, 4),
    (1, 4, 0, 0),
    (0, 2, 3, 4),
    (0, 6, 3, 0),
    (3, 0, 4, 5),
    (0, 0, 3, 4),
    (5, 4, 3, 4),
)


@dataclass(frozen=True)
class Chord:
    """A chord: its symbol as typed and the names of its notes from the root up."""

    symbol: str
    names: tuple[PitchName, ...]

    @property
    def classes(self) -> frozenset[int]:
        """The pitch classes, C = 0."""
        return frozenset(name.pitch_class for name in self.names)


def ascii_name(name: PitchName) -> str:
    """Return a name as it is typed on a keyboard: Bb, F#."""
    return str(name).replace("♭", "b").replace("♯", "#")


def choose_key(draw: Random) -> Key:
    """Return a key with at most five signs."""
    return draw.choice(_keys())


@cache
def _keys() -> list[Key]:
    keys = [Key(PitchName.read(tonic), mode) for tonic in _TONICS for mode in _MODES]
    return [key for key in keys if abs(key.fifths) <= _MOST_SIGNS]


@cache
def scale_of(key: Key) -> tuple[PitchName, ...]:
    """Return the names of a key's scale, worked out once."""
    return key.scale


def key_text(key: Key) -> str:
    """Return a key as it is typed."""
    return f"{ascii_name(key.tonic)} {key.mode}"


def chord_on(key: Key, degree: int, draw: Random) -> Chord:
    """Return a chord on a degree of the key (from 0), chosen among those that the scale has."""
    return draw.choice(_chords_on(key, degree))


@cache
def _chords_on(key: Key, degree: int) -> list[Chord]:
    """Return the chords on a degree, the likelier ones twice."""
    if degree == _DOMINANT and key.mode == "minor":
        return [_major_dominant(key)]
    triads = _stacked(key, degree, 3, _TRIADS)
    return [*triads, *triads, *_stacked(key, degree, 4, _SEVENTHS), *_suspended(key, degree)]


def choose_progression(key: Key, bars: int, draw: Random) -> list[Chord]:
    """Return one chord for each bar: a loop of four, some of it chosen anew each time round."""
    loop = draw.choice(_LOOPS)
    first = [chord_on(key, degree, draw) for degree in loop]
    return [
        first[bar % 4] if draw.random() < 0.7 else chord_on(key, loop[bar % 4], draw)
        for bar in range(bars)
    ]


def _sizes(names: tuple[PitchName, ...]) -> tuple[int, ...]:
    root = names[0].pitch_class
    return tuple((name.pitch_class - root) % 12 for name in names[1:])


def _stacked(key: Key, degree: int, count: int, kinds: dict[tuple[int, ...], str]) -> list[Chord]:
    names = tuple(scale_of(key)[(degree + 2 * n) % 7] for n in range(count))
    kind = kinds.get(_sizes(names))
    return [] if kind is None else [Chord(ascii_name(names[0]) + kind, names)]


def _suspended(key: Key, degree: int) -> list[Chord]:
    found = []
    for step in (1, 3):
        names = tuple(scale_of(key)[(degree + n) % 7] for n in (0, step, 4))
        kind = _HELD.get(_sizes(names))
        if kind is not None:
            found.append(Chord(ascii_name(names[0]) + kind, names))
    return found


def _major_dominant(key: Key) -> Chord:
    root, third, fifth, seventh = (scale_of(key)[(_DOMINANT + 2 * n) % 7] for n in range(4))
    raised = PitchName(third.letter, third.alteration + 1)
    return Chord(f"{ascii_name(root)}7", (root, raised, fifth, seventh))
