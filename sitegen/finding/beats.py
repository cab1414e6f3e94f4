"""The drum part of a chart as it is searched: every whole bar that differs from the others."""

from collections import defaultdict
from fractions import Fraction

from sitegen.analysis.reading import ChartReading, NoteReading
from sitegen.finding.entry import Beat
from sitegen.finding.melodies import in_ticks
from sitegen.score.chart import Bar

Hits = tuple[tuple[str, tuple[int, ...]], ...]


def find_beats(reading: ChartReading) -> tuple[Beat, ...]:
    """Return the bars of the drums, equal ones once, in the order in which they first come.

    Pickups and bars that a repeat cuts short are left out, and so are bars without a hit.
    """
    chart = reading.chart
    drummed: defaultdict[Fraction, list[NoteReading]] = defaultdict(list)
    for note in reading.notes:
        if note.note.drum is not None and not note.note.ghost:
            drummed[chart.bar_at(note.onset).start].append(note)
    found: defaultdict[tuple[str, int, Hits], list[int]] = defaultdict(list)
    for bar in chart.bars:
        notes = drummed.get(bar.start)
        if notes and bar.number and bar.length == bar.meter.length:
            length = in_ticks(bar.length)
            found[str(bar.meter), length, _hits(bar, notes)].append(bar.number)
    return tuple(
        Beat(meter, length, hits, tuple(dict.fromkeys(bars)))
        for (meter, length, hits), bars in found.items()
    )


def _hits(bar: Bar, notes: list[NoteReading]) -> Hits:
    by_drum: defaultdict[str, set[int]] = defaultdict(set)
    for note in notes:
        if note.note.drum is not None:
            by_drum[note.note.drum.label].add(in_ticks(note.onset - bar.start))
    return tuple((label, tuple(sorted(by_drum[label]))) for label in sorted(by_drum))
