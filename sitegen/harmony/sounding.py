"""What is heard of notes that sound together: the bass, every note once, the melody apart."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal, get_args

from sitegen.harmony.spelling import spell_note
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch, PitchName

SoundingPitch = Pitch | PitchName | str | int
"""A pitch, its name alone, the text of either, or a MIDI number."""
Melody = Literal["in", "out"]
"""Whether the top note counts among the notes of the chord."""

_FIFTH = 7


@dataclass(frozen=True)
class Sounding:
    """Notes that sound together, as a chord is read from them.

    `names` holds each pitch class once, the bass first; `spelled` says whether the names are a
    writer's or the key's own, and not just the usual ones of MIDI numbers; `melody` is the top
    note where it was left out of `names`.
    """

    names: tuple[PitchName, ...]
    spelled: bool
    melody: PitchName | None = None

    @property
    def bass(self) -> PitchName:
        """The lowest note."""
        return self.names[0]

    @property
    def classes(self) -> frozenset[int]:
        """The pitch classes that sound, C = 0."""
        return frozenset(name.pitch_class for name in self.names)

    def over(self, root: PitchName) -> frozenset[int]:
        """Return how many semitones the notes lie above a root, within an octave."""
        return frozenset((number - root.pitch_class) % 12 for number in self.classes)


def hear(pitches: Sequence[SoundingPitch], key: Key | None, melody: Melody = "in") -> Sounding:
    """Return what is heard of `pitches`: bass and melody, the order and doublings apart.

    The bass is the lowest and the melody the highest pitch, or the first and the last where one
    has no octave. Raises ValueError for text that is no pitch and for another word than `Melody`.
    """
    if melody not in get_args(Melody):
        raise ValueError(f'melody is "in" or "out", not "{melody}"')
    sounding = [_read(pitch, key) for pitch in pitches]
    if all(isinstance(pitch, Pitch) for pitch in sounding):
        sounding.sort(key=lambda pitch: pitch.midi if isinstance(pitch, Pitch) else 0)
    names = [pitch.name if isinstance(pitch, Pitch) else pitch for pitch in sounding]
    top = names.pop() if melody == "out" and names else None
    spelled = key is not None or not any(isinstance(pitch, int) for pitch in pitches)
    return Sounding(_each_once(names), spelled, top)


def _read(pitch: SoundingPitch, key: Key | None) -> Pitch | PitchName:
    if isinstance(pitch, int):
        return spell_note(pitch, key)
    if isinstance(pitch, str):
        return Pitch.read(pitch) if pitch[-1:].isdigit() else PitchName.read(pitch)
    return pitch


def _each_once(names: Iterable[PitchName]) -> tuple[PitchName, ...]:
    by_class: dict[int, PitchName] = {}
    for name in names:
        by_class.setdefault(name.pitch_class, name)
    return tuple(by_class.values())


def longest_row_of_semitones(classes: frozenset[int]) -> int:
    """Return how many pitch classes at most follow each other in semitones."""
    return max((len(_row_from(start, classes, 1)) for start in classes), default=0)


def is_row_of_seconds(classes: frozenset[int]) -> bool:
    """Tell whether all notes stand side by side, in seconds, within a fifth."""
    rows = (_row_from(start, classes, 2) for start in classes)
    return any(len(row) == len(classes) and row[-1] - row[0] <= _FIFTH for row in rows)


def _row_from(start: int, classes: frozenset[int], widest: int) -> list[int]:
    """Return the notes that follow `start` upwards, in steps of at most `widest` semitones."""
    row = [start]
    while len(row) < len(classes):
        steps = (n for n in range(1, widest + 1) if (row[-1] + n) % 12 in classes)
        step = next(steps, None)
        if step is None:
            break
        row.append(row[-1] + step)
    return row
