"""Durations into written note values, as a copyist splits them.

The rules are those of the usual handbooks (E. Gould, Behind Bars, 2011, chapters on rhythm and
metre; from memory): a tie over the bar line; the middle of the bar shown in 4/4, but for notes
that fill it or are balanced about it; dots where they do not hide a beat; groups of compound
and additive meters always visible; rests never across a beat that they do not fill.
"""

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from itertools import pairwise

from sitegen.engraving.hierarchy import Cell, Division, tuplet_cells
from sitegen.engraving.tuplets import Tuplet, find_tuplets
from sitegen.engraving.values import NoteValue, value_of

_HALF = Fraction(1, 2)
# What may be written as one note across the edges of a cell, as (from, to) in its divisions.
_DUPLE_NOTES = {(0, 2), (0, 3 * _HALF), (_HALF, 2), (_HALF, 3 * _HALF)}
_TRIPLE_NOTES = {
    (0, 3),
    (0, 2),
    (1, 3),
    (0, 3 * _HALF),
    (1, 5 * _HALF),
    (_HALF, 3 * _HALF),
    (3 * _HALF, 5 * _HALF),
    (_HALF, 2),
}
_COMPOUND_RESTS = {(0, 3), (0, 2)}


@dataclass(frozen=True)
class Stretch:
    """A sounding or silent stretch of one bar.

    `start` and `end` are quarter notes from the meter's first beat; `source` is the number of
    the event that it belongs to; `came_on` and `goes_on` say that the event has begun before
    the bar and lasts beyond it.
    """

    start: Fraction
    end: Fraction
    source: int
    is_rest: bool = False
    came_on: bool = False
    goes_on: bool = False


@dataclass(frozen=True)
class Written:
    """One written note or rest: a value at a place, perhaps in a tuplet.

    `opens` marks the first of what is written for an event; `tied` says that a tie leads on.
    """

    start: Fraction
    length: Fraction
    value: NoteValue
    source: int
    is_rest: bool
    tied: bool
    opens: bool
    tuplet: Tuplet | None = None

    @cached_property
    def end(self) -> Fraction:
        """The offset of whatever follows."""
        return self.start + self.length


def write_bar(bar: Cell, stretches: tuple[Stretch, ...]) -> tuple[Written, ...]:
    """Return the written notes and rests of one voice in one bar.

    `stretches` follow one another without gap; they may begin after the bar's first beat (a
    pickup) or end before its last. The lengths of what is returned add up to theirs.
    """
    edges = {edge for stretch in stretches for edge in (stretch.start, stretch.end)}
    tuplets = find_tuplets(bar, edges)
    return tuple(piece for stretch in stretches for piece in _write(bar, stretch, tuplets))


def _write(bar: Cell, stretch: Stretch, tuplets: tuple[Tuplet, ...]) -> list[Written]:
    spans = [
        span
        for start, end, tuplet in _sections(stretch, tuplets)
        for span in _spelled(bar, start, end, tuplet, rest=stretch.is_rest)
    ]
    return [
        Written(
            start=start,
            length=length,
            value=value,
            source=stretch.source,
            is_rest=stretch.is_rest,
            tied=not stretch.is_rest and (stretch.goes_on or start + length < stretch.end),
            opens=start == stretch.start and not stretch.came_on,
            tuplet=tuplet,
        )
        for start, length, value, tuplet in spans
    ]


def _sections(
    stretch: Stretch, tuplets: tuple[Tuplet, ...]
) -> list[tuple[Fraction, Fraction, Tuplet | None]]:
    """Cut a stretch where a tuplet begins or ends."""
    cuts = {stretch.start, stretch.end}
    for tuplet in tuplets:
        cuts |= {edge for edge in (tuplet.start, tuplet.end) if stretch.start < edge < stretch.end}
    places = sorted(cuts)
    return [
        (start, end, next((t for t in tuplets if t.start <= start < t.end), None))
        for start, end in pairwise(places)
    ]


def _spelled(
    bar: Cell, start: Fraction, end: Fraction, tuplet: Tuplet | None, *, rest: bool
) -> list[tuple[Fraction, Fraction, NoteValue, Tuplet | None]]:
    if tuplet is None:
        pieces = split(start, end, bar, rest=rest)
        return [(low, high - low, _value(high - low), None) for low, high in pieces]
    scale = Fraction(tuplet.count, tuplet.time_of)
    cell = tuplet_cells(tuplet.count, tuplet.unit)
    pieces = split((start - tuplet.start) * scale, (end - tuplet.start) * scale, cell, rest=rest)
    return [
        (tuplet.start + low / scale, (high - low) / scale, _value(high - low), tuplet)
        for low, high in pieces
    ]


def _value(length: Fraction) -> NoteValue:
    value = value_of(length)
    if value is None:
        raise ValueError(f"no note value lasts {length} quarter notes")
    return value


def split(
    start: Fraction, end: Fraction, cell: Cell, *, rest: bool
) -> list[tuple[Fraction, Fraction]]:
    """Return the pieces, each of one note value, in which `start` to `end` is written."""
    for inner in cell.cells:
        if inner.start <= start and end <= inner.end:
            return split(start, end, inner, rest=rest)
    if _fits(start, end, cell, rest=rest):
        return [(start, end)]
    cut = _cut(start, end, cell, rest=rest)
    return split(start, cut, cell, rest=rest) + split(cut, end, cell, rest=rest)


def _fits(start: Fraction, end: Fraction, cell: Cell, *, rest: bool) -> bool:
    value = value_of(end - start)
    if value is None:
        return False
    whole = start == cell.start and end == cell.end
    unit = cell.cells[0].length
    place = ((start - cell.start) / unit, (end - cell.start) / unit)
    match cell.division:
        case Division.DUPLE:
            return whole if rest else place in _DUPLE_NOTES
        case Division.TRIPLE:
            return not rest and place in _TRIPLE_NOTES
        case Division.COMPOUND:
            return place in (_COMPOUND_RESTS if rest else _TRIPLE_NOTES)
        case Division.GROUPS:
            edges = {cell.start, *cell.edges, cell.end}
            return whole or (not rest and {start, end} <= edges)
        case Division.UNITS:
            return _fits_units(place, value, rest=rest)


def _fits_units(place: tuple[Fraction, Fraction], value: NoteValue, *, rest: bool) -> bool:
    """In a tuplet whatever begins and ends on a unit is one note; rests without dots."""
    on_units = all(edge.denominator == 1 for edge in place)
    if rest:
        return on_units and not value.dots
    return on_units or place in _TRIPLE_NOTES


def _cut(start: Fraction, end: Fraction, cell: Cell, *, rest: bool) -> Fraction:
    """Return where to cut what is no single note: after the longest note that ends on an edge."""
    inside = [edge for edge in cell.edges if start < edge < end]
    on_edge = start in (cell.start, *cell.edges)
    if on_edge and cell.division is not Division.DUPLE:
        for edge in reversed(inside):
            if _fits(start, edge, cell, rest=rest):
                return edge
    return inside[0]
