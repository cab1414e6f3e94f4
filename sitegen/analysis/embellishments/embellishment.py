"""The non-chord tones of a chart that a textbook has a name for, one value for each figure."""

from collections.abc import Sequence
from dataclasses import dataclass

from msgspec.structs import replace

from sitegen.analysis.chord_grid import ChordGrid
from sitegen.analysis.embellishments.definitions import Named, name_phrase
from sitegen.analysis.embellishments.soundings import Sounding, phrases_of
from sitegen.analysis.reading import NoteReading, Place
from sitegen.score.chart import Chart
from sitegen.score.chord import Chord, NoChord
from sitegen.score.pitch import Pitch


@dataclass(frozen=True)
class Embellishment:
    """One figure of non-chord tones in a part: one suspension, one run of passing tones.

    `name` is one of `definitions.NAMES`. `tones` are the foreign notes in order; where
    `is_held` the first of them was struck over an earlier chord. `place` is where they start
    to be foreign, `pitch` what sounds there and `chords` what they are foreign to. `count` is
    how many tones it counts as: passing tones in a row one by one, any other figure once.
    `weight` is the metrical weight of its place and `accent` how much stronger that is than
    where the next tone starts. `before` and `after` are the notes around (the same note where
    one is held on), each with its chord; `before` is None at the start of a phrase.
    `resolution` is the pitch of `after`.
    """

    name: str
    part: str
    place: Place
    tones: tuple[NoteReading, ...]
    pitch: Pitch
    count: int
    chords: tuple[Chord | NoChord, ...]
    is_held: bool
    weight: int
    accent: int
    before: NoteReading | None
    chord_before: Chord | NoChord | None
    after: NoteReading
    resolution: Pitch
    chord_after: Chord | NoChord | None


def list_embellishments(chart: Chart, notes: Sequence[NoteReading]) -> tuple[Embellishment, ...]:
    """Return the figures of all parts, part by part in order of time; drums have none."""
    grid = ChordGrid(chart, notes)
    return tuple(
        _figure(grid, notes, phrase, named)
        for phrase in phrases_of(grid, notes)
        for named in name_phrase(grid, phrase)
    )


def name_embellishments(chart: Chart, notes: Sequence[NoteReading]) -> tuple[NoteReading, ...]:
    """Return the readings with `embellishment` filled where a definition is met exactly.

    It is filled for notes that are no chord tones where they start, tensions among them: a
    ninth that moves by step between chord tones passes like any other tone. A note that
    starts as a chord tone and is held into a chord where it is none keeps its empty field;
    `list_embellishments` tells it.
    """
    grid = ChordGrid(chart, notes)
    names: dict[int, str] = {}
    for phrase in phrases_of(grid, notes):
        for named in name_phrase(grid, phrase):
            for tone in phrase[named.first : named.end]:
                names.update(dict.fromkeys(tone.struck, named.name))
    return tuple(
        replace(reading, embellishment=names[place]) if place in names else reading
        for place, reading in enumerate(notes)
    )


def _figure(
    grid: ChordGrid, notes: Sequence[NoteReading], phrase: Sequence[Sounding], named: Named
) -> Embellishment:
    foreign = phrase[named.first : named.end]
    first, after = foreign[0], phrase[named.end]
    before = phrase[named.first - 1] if named.first else None
    places = dict.fromkeys(place for tone in foreign for place in (tone.holder, *tone.struck))
    tones = tuple(notes[place] for place in places)
    weight = grid.weight(first.start)
    return Embellishment(
        named.name,
        tones[0].part,
        _place(grid, first, tones),
        tones,
        first.pitch,
        len(foreign) if named.name == "passing" else 1,
        tuple(grid.chords[chord] for chord in dict.fromkeys(tone.chord for tone in foreign)),
        first.is_held_over,
        weight,
        weight - grid.weight(after.start),
        notes[(before.struck or (before.holder,))[-1]] if before else None,
        _chord(grid, before) if before else None,
        notes[after.holder],
        after.pitch,
        _chord(grid, after),
    )


def _place(grid: ChordGrid, first: Sounding, tones: Sequence[NoteReading]) -> Place:
    """Return where a figure starts to be foreign: a chord change, where its note is held."""
    ids = tuple(filter(None, (tone.id for tone in tones)))
    if not first.is_held_over:
        return Place(tones[0].bar, tones[0].beat, ids)
    bar, beat = grid.chart.beat_of(grid.time(first.start))
    return Place(bar.number, beat, ids)


def _chord(grid: ChordGrid, tone: Sounding) -> Chord | NoChord | None:
    return grid.chords[tone.chord] if tone.chord >= 0 else None
