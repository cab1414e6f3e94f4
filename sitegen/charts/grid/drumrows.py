"""The rows of a drum part: one row a drum or cymbal, one sign a hit.

`x` or `o` hit, `X` or `O` accent, on the hi-hat `o` is open; `g` ghost note, `f` flam, `b` buzz
or roll; `-` nothing.
"""

import re
from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from sitegen.charts.grid.cells import Cell, onset_of
from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.hold import Struck
from sitegen.charts.grid.rows import Row
from sitegen.charts.grid.timeline import SystemTime, Timeline
from sitegen.score.chart import Bar, Note
from sitegen.score.drums import KIT, DrumSound

_SIGN = re.compile(r"[^-\s|]")
_HITS = "xXoOgfb"


@dataclass(frozen=True)
class Hit:
    """One hit on one drum."""

    onset: Fraction
    note: Note


def read_drum_row(row: Row, time: SystemTime, faults: Faults) -> list[Hit]:
    """Return the hits of a row whose label is in the kit."""
    drum = KIT[row.label.upper()]
    hits = []
    for match in _SIGN.finditer(row.text, row.start + 1):
        cell = Cell(match[0], match.start())
        if cell.text not in _HITS:
            faults.add(
                "drum-sign",
                row.span(cell.column, cell.end),
                f'"{cell.text}" is no way to hit the {drum.name}',
                hint="signs are x o hit, X O accent, g ghost, f flam, b roll, - nothing",
            )
            continue
        onset = onset_of(cell, row, time, faults)
        if onset is not None:
            hits.append(Hit(onset, _note(cell, drum, row)))
    return hits


def _note(cell: Cell, drum: DrumSound, row: Row) -> Note:
    return Note(
        row.span(cell.column, cell.end),
        drum=drum,
        accent=cell.text in "XO",
        ghost=cell.text == "g",
        flam=cell.text == "f",
        roll=cell.text == "b",
        opened=cell.text in "oO" and drum.midi != drum.open_midi,
    )


def strike_drums(hits: Iterable[Hit], timeline: Timeline) -> tuple[list[Struck], list[Struck]]:
    """Return what hands and feet strike.

    A hit is written no longer than to the end of its beat group, a roll up to the next hit, as
    drummers read it: common practice, no source.
    """
    all_hits = tuple(hits)
    return _voice(all_hits, timeline, hands=True), _voice(all_hits, timeline, hands=False)


def _voice(hits: tuple[Hit, ...], timeline: Timeline, *, hands: bool) -> list[Struck]:
    mine = [hit for hit in hits if hit.note.drum is not None and hit.note.drum.hands is hands]
    by_onset: dict[Fraction, list[Note]] = {}
    for hit in mine:
        by_onset.setdefault(hit.onset, []).append(hit.note)
    struck = []
    for onset in sorted(by_onset):
        notes = tuple(by_onset[onset])
        latest = None
        if not any(note.roll for note in notes):
            latest = _group_end(onset, timeline.bars)
        struck.append(Struck(onset, notes, notes[0].span, latest))
    return struck


def _group_end(onset: Fraction, bars: list[Bar]) -> Fraction:
    bar = bars[bisect_right(bars, onset, key=lambda bar: bar.start) - 1]
    first_beat = bar.start - bar.skipped
    ends = [first_beat + start for start in bar.meter.group_starts if first_beat + start > onset]
    return min([*ends, bar.end])
