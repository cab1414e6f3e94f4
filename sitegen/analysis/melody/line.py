"""The melodic line of a part: one sounding note after the other, with the time between them.

Of notes that start together the highest sounding one is taken. A note is one attack with the
whole of its written length, so a tie makes no second note and a repeated pitch does. Rests,
dead notes and drums have no pitch: they are time between notes. Where a part has several
voices, a note that starts below a held higher one is not of the line (the skyline of
Uitdenbogerd and Zobel, "Manipulation of Music for Melody Matching", 1998; from memory), and
a note is cut short by the next one of the line. A bend counts as the pitch that it starts from.
Repeats are not written out; endings stand one after the other.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from itertools import chain, pairwise

from sitegen.analysis.melody.pulse import Pulse, find_pulse
from sitegen.analysis.reading import ChartReading, NoteReading, Place
from sitegen.score.chart import Part


@dataclass(frozen=True)
class MelodicLine:
    """The notes of a line in order, and what is counted of them, column by column.

    `midi` holds sounding numbers, `steps` staff steps above C0, whatever the alteration; `starts`
    and `ends` are ticks of the `pulse`. All these columns have the length of `notes`, 1 or more.
    `heard` are all notes of the part that have a pitch, those below the line too.
    """

    part: Part
    pulse: Pulse
    heard: tuple[NoteReading, ...]
    notes: tuple[NoteReading, ...]
    midi: tuple[int, ...]
    steps: tuple[int, ...]
    starts: tuple[int, ...]
    ends: tuple[int, ...]

    def __len__(self) -> int:
        return len(self.notes)

    @cached_property
    def bars(self) -> tuple[int, ...]:
        """Which written bar each note starts in, from 0."""
        bars, found, index = self.pulse.bars, [], 0
        for start in self.starts:
            while index + 2 < len(bars) and bars[index + 1] <= start:
                index += 1
            found.append(index)
        return tuple(found)

    @cached_property
    def offsets(self) -> tuple[int, ...]:
        """How far into its bar each note starts, with what a pickup skips counted in."""
        bars, skips = self.pulse.bars, self.pulse.skips
        pairs = zip(self.starts, self.bars, strict=True)
        return tuple(start - bars[bar] + skips[bar] for start, bar in pairs)

    @property
    def prefix(self) -> str:
        """The part's name as the paths of its facts have it."""
        return self.part.name.replace(" ", "-")

    @property
    def is_bass(self) -> bool:
        """True for a bass, whose line follows the roots and is no tune."""
        return self.part.instrument.family == "bass"

    @cached_property
    def gaps(self) -> tuple[int, ...]:
        """The ticks from each note's start to the next one's; one fewer than notes."""
        return tuple(after - start for start, after in pairwise(self.starts))

    @cached_property
    def median_gap(self) -> int:
        """The lower median of the gaps, 0 for a single note."""
        return sorted(self.gaps)[(len(self.gaps) - 1) // 2] if self.gaps else 0

    @cached_property
    def semitones(self) -> tuple[int, ...]:
        """The semitones from each note to the next, rests or not; one fewer than notes."""
        return tuple(after - pitch for pitch, after in pairwise(self.midi))

    @cached_property
    def moves(self) -> tuple[int, ...]:
        """The staff steps from each note to the next, rests or not; one fewer than notes."""
        return tuple(after - step for step, after in pairwise(self.steps))

    @cached_property
    def sounding(self) -> int:
        """The ticks that the line sounds, rests left out."""
        return sum(self.ends) - sum(self.starts)

    @cached_property
    def _ids(self) -> tuple[str, ...]:
        return tuple(note.id for note in self.notes)

    @cached_property
    def spots(self) -> tuple[Place, ...]:
        """The place of each note."""
        return tuple(map(place_of, self.notes))

    def places(self, indices: Iterable[int]) -> tuple[Place, ...]:
        """Return the place of each of some notes."""
        spots = self.spots
        return tuple(spots[index] for index in indices)

    def stretch(self, start: int, end: int) -> Place:
        """Return the place of the notes from `start` up to `end`, which is left out."""
        first = self.notes[start]
        return Place(first.bar, first.beat, self._ids[start:end])


def place_of(note: NoteReading) -> Place:
    """Return where a note is."""
    return Place(note.bar, note.beat, (note.id,))


def is_melodic(part: Part) -> bool:
    """Return whether a part is a line: pitched, and mostly one note at a time.

    At least half of its sounding events have one note. Riffs of stacked strings and chords at
    the keyboard speak through their chord symbols.
    """
    if part.is_drums:
        return False
    counts = [
        len(event.notes)
        for voice in part.voices
        for event in voice
        if any(note.pitch is not None for note in event.notes)
    ]
    return bool(counts) and 2 * counts.count(1) >= len(counts)


def find_lines(reading: ChartReading) -> tuple[MelodicLine, ...]:
    """Return the line of every melodic part of a chart."""
    melodic = [part for part in reading.chart.parts if is_melodic(part)]
    heard: dict[str, list[NoteReading]] = {part.name: [] for part in melodic}
    for note in reading.notes:
        if note.part in heard and note.note.pitch is not None:
            heard[note.part].append(note)
    if not any(heard.values()):
        return ()
    pulse = find_pulse(reading.chart, chain.from_iterable(heard.values()))
    return tuple(_line(part, pulse, heard[part.name]) for part in melodic if heard[part.name])


def _line(part: Part, pulse: Pulse, heard: list[NoteReading]) -> MelodicLine:
    """Return the line of a part; see the module for which notes it takes."""
    notes: list[NoteReading] = []
    midi: list[int] = []
    starts: list[int] = []
    ends: list[int] = []
    for note in heard:
        start, height = pulse.at(note.onset), note.note.midi or 0
        if starts and start == starts[-1]:
            if height <= midi[-1]:
                continue
            for column in (notes, midi, starts, ends):
                column.pop()
        elif ends and start < ends[-1] and height < midi[-1]:
            continue
        notes.append(note)
        midi.append(height)
        starts.append(start)
        ends.append(start + pulse.at(note.duration))
    ends = [*map(min, ends, (*starts[1:], ends[-1]))]
    steps = [note.note.pitch.place for note in notes if note.note.pitch is not None]
    numbers = (tuple(midi), tuple(steps), tuple(starts), tuple(ends))
    return MelodicLine(part, pulse, tuple(heard), tuple(notes), *numbers)
