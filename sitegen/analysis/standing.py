"""A part's notes against their chords: what each is and for how long, and on which beats."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from statistics import median_high
from typing import NamedTuple

from sitegen.analysis.chord_grid import ChordGrid
from sitegen.analysis.reading import ChartReading, NoteReading
from sitegen.analysis.wording import the_part
from sitegen.harmony import role
from sitegen.score.chart import Part
from sitegen.score.chord import Chord, NoChord
from sitegen.score.meter import Meter
from sitegen.score.metrical_weight import beat_level, metrical_weight
from sitegen.score.role import Role

STRONG, WEAK, OFF, LONG = "-on-strong-beats", "-on-weak-beats", "-off-the-beat", "-on-long-notes"


class Spell(NamedTuple):
    """One note over one chord: its place among the part's notes, what it is there, its ticks."""

    note: int
    role: Role
    ticks: int
    is_root: bool


@dataclass(frozen=True)
class Standing:
    """The notes of a part that sound over chords, in order of time; there is at least one.

    `events` counts their onsets, `lengths` are theirs in ticks; `spells` tell each note once
    for each chord under it. `groups` hold the places of the notes on strong beats, on weak
    beats, off the beat and of long notes, each by the ending of its path.
    """

    part: Part
    notes: tuple[NoteReading, ...]
    events: int
    lengths: tuple[int, ...]
    spells: tuple[Spell, ...]
    groups: dict[str, tuple[int, ...]]

    @property
    def said(self) -> str:
        """The part as a sentence speaks of it."""
        return the_part(self.part)

    @property
    def is_melodic(self) -> bool:
        """True for a line that is no bass: mostly one note at a time."""
        return self.part.instrument.family != "bass" and 2 * len(self.notes) < 3 * self.events

    @property
    def meets_root(self) -> bool:
        """True when a note is the root of any chord under it, or is bent to it."""
        return any(spell.is_root for spell in self.spells)


def standings(reading: ChartReading) -> Iterator[Standing]:
    """Return the standing of each part that has a note over a chord, in the chart's order."""
    notes: dict[str, list[NoteReading]] = {}
    for note in reading.notes:
        if note.role is not None:
            notes.setdefault(note.part, []).append(note)
    grid = ChordGrid(reading.chart, (note for mine in notes.values() for note in mine))
    meters = {bar.number: bar.meter for bar in reading.chart.bars}
    for part in reading.chart.parts:
        if part.name in notes:
            yield _standing(grid, meters, part, notes[part.name])


def _standing(
    grid: ChordGrid, meters: dict[int, Meter], part: Part, notes: Sequence[NoteReading]
) -> Standing:
    starts = [grid.ticks(note.onset) for note in notes]
    lengths = [grid.ticks(note.duration) for note in notes]
    groups: dict[str, list[int]] = {STRONG: [], WEAK: [], OFF: [], LONG: []}
    long = 2 * median_high(lengths)
    for place, (note, length) in enumerate(zip(notes, lengths, strict=True)):
        groups[_beat_kind(meters[note.bar], note.beat)].append(place)
        if length >= long:
            groups[LONG].append(place)
    return Standing(
        part,
        tuple(notes),
        len(set(starts)),
        tuple(lengths),
        tuple(_spells(grid, notes, starts, lengths)),
        {name: tuple(places) for name, places in groups.items()},
    )


def _spells(
    grid: ChordGrid,
    notes: Sequence[NoteReading],
    starts: Sequence[int],
    lengths: Sequence[int],
) -> Iterator[Spell]:
    """Return each note over each chord that sounds from its start to its end."""
    chord = 0
    for place, note in enumerate(notes):
        start, end = starts[place], starts[place] + lengths[place]
        chord = grid.chord_at(start, chord)
        until = grid.until(end, chord)
        if note.role is not None:
            is_root = note.degree == "R" or _is_bent_to_root(note, grid.chords[chord])
            yield Spell(place, note.role, until - start, is_root)
        if until < end:
            yield from _later_spells(grid, place, note, (until, end, chord + 1))


def _later_spells(
    grid: ChordGrid, place: int, note: NoteReading, span: tuple[int, int, int]
) -> Iterator[Spell]:
    """Return a note over each chord that comes while it is held."""
    start, end, chord = span
    while start < end and note.note.pitch is not None:
        until, sounding = grid.until(end, chord), grid.chords[chord]
        standing = role(note.note.pitch, sounding)
        if isinstance(sounding, Chord) and standing is not None:
            is_root = note.note.pitch.name.pitch_class == sounding.root.pitch_class
            bent = _is_bent_to_root(note, sounding)
            yield Spell(place, standing, until - start, is_root or bent)
        start, chord = until, chord + 1


def _is_bent_to_root(note: NoteReading, chord: Chord | NoChord) -> bool:
    if not note.note.bend or note.note.midi is None or isinstance(chord, NoChord):
        return False
    return (note.note.midi + note.note.bend) % 12 == chord.root.pitch_class


def _beat_kind(meter: Meter, beat: Fraction) -> str:
    """Return whether a counted beat is strong, weak or no beat at all."""
    return _count_kind(meter, beat.numerator) if beat.denominator == 1 else OFF


@lru_cache(maxsize=1024)
def _count_kind(meter: Meter, count: int) -> str:
    weight, level = metrical_weight(meter, (count - 1) * meter.beat), beat_level(meter)
    if weight == 0 or weight > level:
        return STRONG
    return WEAK if weight == level else OFF
