"""The progressions of all write-ups as the browser searches them, in columns.

`chords` are the kinds of chords, the commonest first: [suffix, bass, notes, family], where `bass`
is how many fifths the bass lies above the root, null without one. All else are numbers as text
(see `columns`). One character for each progression:

- `write_ups` how many write-ups after that of the progression before it, `charts` which chart,
- `tonics` its tonic on the line of fifths, C = 0, with `NO_TONIC` added where it has none,
- `lengths` how many chords it has, `starts` and `cells` where its loop starts and how long it is.

And one for each chord of all of them: `roots`, in fifths over the tonic, `kinds`, its place among
`chords`, `bars`, how many bars after the last bar of the chord before it starts (0, -1, 1, -2, ...
as 0, 1, 2, 3, ...), and `lasts`, how many bars later it ends, likewise.

Roots are told from the tonic so that what is played in many keys is one text, which packs well.
"""

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import NamedTuple

import msgspec

from sitegen.finding.columns import MIDDLE, column, unsigned
from sitegen.finding.entry import ChordStep, Entry, Progression
from sitegen.score.pitch import PitchName

NO_TONIC = 64
_SYMBOL = re.compile(r"([A-G][♭♯𝄫𝄪]*)(.*?)(?:/([A-G][♭♯𝄫𝄪]*))?")

Kind = tuple[str, int | None, str, str]


class _Row(NamedTuple):
    write_up: int
    chart: int
    found: Progression
    reference: int


def chords_file(entries: Sequence[Entry]) -> bytes:
    """Return the index file of the progressions of some write-ups, in their order."""
    rows = [
        _Row(write_up, chart, one.progression, _reference(one.progression))
        for write_up, entry in enumerate(entries)
        for chart, one in enumerate(entry.charts)
        if one.progression is not None
    ]
    steps = [(step, row.reference) for row in rows for step in row.found.steps]
    counted = Counter(_kind(step) for step, _ in steps)
    kinds = sorted(counted, key=lambda kind: (-counted[kind], kind[0], kind[2], kind[1] or 0))
    places = {kind: place for place, kind in enumerate(kinds)}
    return msgspec.json.encode(
        {
            "chords": kinds,
            **_columns(rows),
            "roots": column((_root(step) - home for step, home in steps), MIDDLE),
            "kinds": column(places[_kind(step)] for step, _ in steps),
            **_bars(row.found for row in rows),
        }
    )


def _columns(rows: Sequence[_Row]) -> dict[str, str]:
    before = [0, *(row.write_up for row in rows)]
    return {
        "write_ups": column(row.write_up - last for row, last in zip(rows, before, strict=False)),
        "charts": column(row.chart for row in rows),
        "tonics": column((_tonic(row) for row in rows), MIDDLE),
        "lengths": column(len(row.found.steps) for row in rows),
        "starts": column(row.found.loop_start for row in rows),
        "cells": column(row.found.loop_length for row in rows),
    }


def _tonic(row: _Row) -> int:
    return row.reference + (NO_TONIC if row.found.tonic < 0 else 0)


def _bars(progressions: Iterable[Progression]) -> dict[str, str]:
    bars, lasts = [], []
    for found in progressions:
        last = 0
        for step in found.steps:
            bars.append(unsigned(step.bar - last))
            lasts.append(unsigned(step.last_bar - step.bar))
            last = step.last_bar
    return {"bars": column(bars), "lasts": column(lasts)}


def _reference(found: Progression) -> int:
    """Return the tonic on the line of fifths, spelled as near to the roots as can be.

    Without a tonic it is the first root.
    """
    roots = [_root(step) for step in found.steps]
    if found.tonic < 0:
        return roots[0]
    nearest = 7 * found.tonic % 12
    middle = sorted(roots)[len(roots) // 2]
    return min((nearest - 12, nearest), key=lambda fifths: (abs(fifths - middle), fifths))


def _root(step: ChordStep) -> int:
    return _parts(step.symbol)[0]


def _kind(step: ChordStep) -> Kind:
    _, suffix, bass = _parts(step.symbol)
    return suffix, bass, step.notes, step.family


@lru_cache(maxsize=4096)
def _parts(symbol: str) -> tuple[int, str, int | None]:
    """Return root, suffix and bass of a symbol, the bass in fifths over the root."""
    found = _SYMBOL.fullmatch(symbol)
    if found is None:
        message = f'"{symbol}" is not a chord symbol'
        raise ValueError(message)
    root = PitchName.read(found[1]).fifths
    bass = None if found[3] is None else PitchName.read(found[3]).fifths - root
    return root, found[2], bass
