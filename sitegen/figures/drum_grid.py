"""A drum part as a grid: one row a drum, one column a count, for readers who count."""

from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from sitegen.score.chart import Bar, Chart, Event, Note, Part

# How the parts of a beat are said, by how many there are: common practice, no source.
_SAID = {1: (), 2: ("&",), 3: ("la", "li"), 4: ("e", "&", "a")}


@dataclass(frozen=True)
class GridRow:
    """One drum of a bar: its name and a sign for each count, "" where it is silent."""

    name: str
    cells: tuple[str, ...]


@dataclass(frozen=True)
class GridBar:
    """One bar: what is counted, and a row for each drum that plays anywhere in the chart."""

    number: int
    counts: tuple[str, ...]
    rows: tuple[GridRow, ...]


def drum_grid(chart: Chart) -> tuple[GridBar, ...]:
    """Return the drum part of a chart bar by bar; empty when it has none.

    A beat has as many columns as its hits ask for, at least one.
    """
    part = next((part for part in chart.parts if part.is_drums), None)
    if part is None:
        return ()
    hits = [event for event in part.events if event.notes]
    names = _names(part)
    return tuple(_grid_bar(bar, hits, names) for bar in chart.bars)


def _names(part: Part) -> tuple[str, ...]:
    """Return the drums that play, cymbals above drums above feet as on the staff."""
    drums = {note.drum for event in part.events for note in event.notes if note.drum}
    ordered = sorted(drums, key=lambda d: (-d.place[1], -"CDEFGAB".index(d.place[0]), d.midi))
    return tuple(drum.name for drum in ordered)


def _grid_bar(bar: Bar, hits: list[Event], names: tuple[str, ...]) -> GridBar:
    mine = [event for event in hits if bar.start <= event.onset < bar.end]
    first = int(bar.skipped / bar.meter.beat) + 1
    counts: list[str] = []
    onsets: list[Fraction] = []
    for n in range(int(bar.length / bar.meter.beat)):
        start = bar.start + n * bar.meter.beat
        parts = _parts(start, bar.meter.beat, mine)
        counts += [str(first + n), *_divisions(parts)]
        onsets += [start + bar.meter.beat * part / parts for part in range(parts)]
    rows = tuple(GridRow(name, tuple(_sign(name, at, mine) for at in onsets)) for name in names)
    return GridBar(bar.number, tuple(counts), rows)


def _parts(start: Fraction, beat: Fraction, events: list[Event]) -> int:
    """Return into how many parts a beat must fall for its hits to have columns."""
    places = [(e.onset - start) / beat for e in events if start <= e.onset < start + beat]
    return lcm(*(place.denominator for place in places))


def _divisions(parts: int) -> tuple[str, ...]:
    return _SAID.get(parts, (".",) * (parts - 1))


def _sign(name: str, onset: Fraction, events: list[Event]) -> str:
    for event in events:
        for note in event.notes:
            if event.onset == onset and note.drum is not None and note.drum.name == name:
                return _how(note)
    return ""


def _how(note: Note) -> str:
    """Return how a hit is played, in the signs authors type."""
    if note.ghost:
        return "g"
    if note.flam:
        return "f"
    if note.roll:
        return "b"
    sign = "o" if note.opened else "x"
    return sign.upper() if note.accent else sign
