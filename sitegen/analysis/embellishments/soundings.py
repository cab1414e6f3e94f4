"""The line of a voice cut at its chord changes: which pitch sounds over which chord.

A note that is held or struck again over a new chord is another sounding there, so that a
suspension and a pedal read alike, tied or repeated. Times are whole ticks from the chart's
start, which are faster to compare than fractions.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from sitegen.analysis.chord_grid import ChordGrid
from sitegen.analysis.reading import NoteReading
from sitegen.score.pitch import Pitch

# The place of a note among those given, its start in ticks and its pitch.
_Struck = tuple[int, int, Pitch]


class Sounding(NamedTuple):
    """One pitch over one chord, from `start` to `end`; struck once, more often, or held over.

    `holder` is the place, in the notes given, of the note that sounds at its start; `struck`
    are those that start within it. `stable` is True for a chord tone, None where no chord
    sounds. `chord` is the place of its chord in `ChordGrid.chords`.
    """

    pitch: Pitch
    midi: int
    stable: bool | None
    chord: int
    start: int
    end: int
    holder: int
    struck: tuple[int, ...]

    @property
    def is_held_over(self) -> bool:
        """True when its note was struck over the chord before."""
        return self.holder not in self.struck


def phrases_of(grid: ChordGrid, notes: Sequence[NoteReading]) -> Iterator[list[Sounding]]:
    """Return the lines of all parts and voices, cut where a rest or a cut of the grid breaks.

    Of notes struck together the highest makes the line. A note without a pitch and a bent one,
    whose pitch moves, break it as a rest does.
    """
    for line in _top_lines(grid, notes).values():
        yield from _phrases(grid, notes, line)


def _top_lines(
    grid: ChordGrid, notes: Sequence[NoteReading]
) -> dict[tuple[str, int], list[_Struck]]:
    lines: dict[tuple[str, int], list[_Struck]] = {}
    for place, reading in enumerate(notes):
        pitch = reading.note.pitch
        if pitch is None:
            continue
        line = lines.setdefault((reading.part, reading.voice), [])
        start = grid.ticks(reading.onset)
        if not line or line[-1][1] != start:
            line.append((place, start, pitch))
        elif line[-1][2].midi < pitch.midi:
            line[-1] = (place, start, pitch)
    return lines


def _phrases(
    grid: ChordGrid, notes: Sequence[NoteReading], line: list[_Struck]
) -> Iterator[list[Sounding]]:
    phrase: list[Sounding] = []
    chord, end = -1, -1
    for struck in line:
        place, start, _ = struck
        bent = notes[place].note.bend
        if phrase and (start != end or bent or start in grid.cuts):
            yield phrase
            phrase = []
        if bent:
            continue
        end = start + grid.ticks(notes[place].duration)
        chord = grid.chord_at(start, chord)
        _sound(grid, phrase, struck, end, chord)
    if phrase:
        yield phrase


def _sound(grid: ChordGrid, phrase: list[Sounding], note: _Struck, end: int, chord: int) -> None:
    """Add a note to its phrase, as one sounding for each chord under it."""
    place, start, pitch = note
    midi = pitch.midi
    struck: tuple[int, ...] = (place,)
    last = phrase[-1] if phrase else None
    if last and last.midi == midi and last.chord == chord:
        until = grid.until(end, chord)
        phrase[-1] = last._replace(end=until, struck=last.struck + struck)
        start, chord, struck = until, chord + 1, ()
    while start < end:
        until = grid.until(end, chord)
        stable = _is_stable(grid, midi, chord)
        phrase.append(Sounding(pitch, midi, stable, chord, start, until, place, struck))
        start, chord, struck = until, chord + 1, ()


def _is_stable(grid: ChordGrid, midi: int, chord: int) -> bool | None:
    classes = grid.stable_classes[chord] if chord >= 0 else None
    return None if classes is None else midi % 12 in classes
