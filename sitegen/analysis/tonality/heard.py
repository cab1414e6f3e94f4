"""What is heard of a chart for its key: the pitched notes of all parts and the chords' members.

Every note counts by its duration. A chord counts as if its members were struck once and held until
the next symbol, each like one note; its bass stands below all parts and the others close above it.
So a chart of symbols only has a key, and a tune over symbols is heard with its harmony. Repeats
are heard as written, once.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property, lru_cache
from operator import attrgetter
from typing import NamedTuple

from sitegen.analysis.reading import ChartReading, Place
from sitegen.score.chart import Bar
from sitegen.score.chord import Chord
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch, PitchName

# The lowest octave there is: whatever the parts play, the symbol's bass is the bass. It is counted
# from the first symbol's bass, so that chords in one beat lie above each other in every key alike.
_LOWEST_MIDI = 0
# Four notes at six onsets, or five at two chords: less has no key.
_LEAST_HEARD = ((4, 6), (5, 2))


class HeardNote(NamedTuple):
    """A note of a part or of a chord symbol, onset and duration in quarter notes."""

    pitch: Pitch
    onset: float
    duration: float
    bar: int
    beat: Fraction
    id: str = ""

    @property
    def place(self) -> Place:
        """Where the note is seen."""
        return Place(self.bar, self.beat, (self.id,) if self.id else ())


@dataclass(frozen=True)
class Hearing:
    """All that is heard of a chart, in order of time and from low to high."""

    reading: ChartReading
    notes: tuple[HeardNote, ...]

    @cached_property
    def names(self) -> frozenset[PitchName]:
        """The names of all notes."""
        return frozenset(note.pitch.name for note in self.notes)

    @cached_property
    def classes(self) -> frozenset[int]:
        """The pitch classes of all notes."""
        return frozenset(name.pitch_class for name in self.names)

    @cached_property
    def is_enough(self) -> bool:
        """True when there is enough to speak of a key."""
        onsets = len({note.onset for note in self.notes})
        notes = len(self.classes)
        return any(notes >= least and onsets >= times for least, times in _LEAST_HEARD)

    def fits(self, key: Key) -> bool:
        """Tell whether the scale of a key holds all that is heard."""
        return self.names <= _scale(key)

    @cached_property
    def opening_basses(self) -> tuple[int, ...]:
        """The pitch classes that begin a bar, in order: a chord in root position or the lowest."""
        chords = {chord.onset: chord.chord for chord in self.reading.chords}
        lowest = {note.onset: note.pitch.name for note in reversed(self.notes)}
        bars = self.reading.chart.bars
        names = (_opening(bar, chords.get(bar.start), lowest) for bar in bars)
        return tuple(dict.fromkeys(name.pitch_class for name in names if name is not None))


@lru_cache(maxsize=512)
def _scale(key: Key) -> frozenset[PitchName]:
    return frozenset(key.scale)


def _opening(bar: Bar, chord: object, lowest: dict[float, PitchName]) -> PitchName | None:
    if isinstance(chord, Chord):
        return chord.root if chord.root == chord.bass else None
    return lowest.get(_quarters(bar.start))


def hear_chart(reading: ChartReading) -> Hearing:
    """Return what is heard of a chart."""
    notes = sorted(_notes(reading), key=lambda note: note.pitch.midi)
    return Hearing(reading, tuple(sorted((*_members(reading), *notes), key=attrgetter("onset"))))


def _notes(reading: ChartReading) -> Iterator[HeardNote]:
    for note in reading.notes:
        pitch, length = note.note.pitch, _quarters(note.duration)
        if pitch is not None and length > 0:
            yield HeardNote(pitch, _quarters(note.onset), length, note.bar, note.beat, note.id)


def _members(reading: ChartReading) -> Iterator[HeardNote]:
    lowest: int | None = None
    for chord in reading.chords:
        if isinstance(chord.chord, Chord) and chord.duration > 0:
            onset, length = _quarters(chord.onset), _quarters(chord.duration)
            if lowest is None:
                lowest = _LOWEST_MIDI + chord.chord.bass.pitch_class
            for pitch in _voiced(chord.chord, lowest):
                yield HeardNote(pitch, onset, length, chord.bar, chord.beat)


def _quarters(time: Fraction) -> float:
    return time.numerator / time.denominator


@lru_cache(maxsize=1024)
def _voiced(chord: Chord, lowest: int) -> tuple[Pitch, ...]:
    """Return the bass within an octave from a MIDI number up, the others in the octave above."""
    bass = Pitch.of(chord.bass, lowest + (chord.bass.pitch_class - lowest) % 12)
    others = (name for name in chord.members if name != chord.bass)
    steps = ((12 + (name.pitch_class - chord.bass.pitch_class) % 12, name) for name in others)
    return bass, *(Pitch.of(name, bass.midi + step) for step, name in sorted(steps, key=_step))


def _step(voice: tuple[int, PitchName]) -> int:
    return voice[0]
