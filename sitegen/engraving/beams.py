"""Which notes of a bar are beamed together.

Beams join what lies in one beat. Plain eighths of neighbouring beats are joined further where
the meter allows: four in half a bar of 4/4, all of a bar of 3/4 or 2/4; never over the middle
of a 4/4 bar or from one beat of a compound or additive meter to the next (E. Gould, Behind Bars,
2011, on beaming according to metre; from memory).
"""

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.engraving.hierarchy import Cell, Division, beats_of
from sitegen.engraving.rhythm import Written
from sitegen.engraving.values import NoteValue

_EIGHTH = NoteValue(8)


@dataclass(frozen=True)
class Beam:
    """A run of written notes under one beam: their places in the bar's sequence, end excluded."""

    start: int
    end: int


def beam_groups(bar: Cell, pieces: Sequence[Written]) -> tuple[Beam, ...]:
    """Return the beams of one voice in one bar, from left to right; none holds fewer than two."""
    beams: list[Beam] = []
    for window in _windows(bar, pieces):
        beams.extend(_runs(window, pieces))
    return tuple(beams)


def _windows(bar: Cell, pieces: Sequence[Written]) -> list[list[int]]:
    """Return the numbers of the pieces that start in each stretch that one beam may cover."""
    windows: list[list[int]] = []
    for group in _joinable(bar):
        starts = [_starting(cell, pieces) for cell in group]
        joined: list[int] = []
        for inside in starts:
            if joined and not (_plain_eighths(joined, pieces) and _plain_eighths(inside, pieces)):
                windows.append(joined)
                joined = []
            joined = joined + inside
        windows.append(joined)
    return [window for window in windows if window]


def _joinable(cell: Cell) -> list[tuple[Cell, ...]]:
    """Return the runs of beats that plain eighths may be joined over."""
    beats = beats_of(cell)
    simple = cell.division in (Division.DUPLE, Division.TRIPLE)
    if cell.is_beat or (simple and all(inner.is_beat for inner in cell.inner)):
        return [beats]
    if all(inner.is_beat for inner in cell.inner):
        return [(beat,) for beat in beats]
    return [run for inner in cell.inner for run in _joinable(inner)]


def _starting(cell: Cell, pieces: Sequence[Written]) -> list[int]:
    return [n for n, piece in enumerate(pieces) if cell.start <= piece.start < cell.end]


def _plain_eighths(numbers: list[int], pieces: Sequence[Written]) -> bool:
    """Return whether a beat (or several) holds nothing but eighths."""
    inside = [pieces[n] for n in numbers]
    return all(p.value == _EIGHTH and not p.is_rest and p.tuplet is None for p in inside)


def _runs(window: list[int], pieces: Sequence[Written]) -> list[Beam]:
    """Cut a window at what has no flag, at its outer rests and at the edge of a wide tuplet."""
    runs: list[list[int]] = [[]]
    for number in window:
        piece = pieces[number]
        if not piece.value.has_flag or _leaves_tuplet(runs[-1], piece, pieces):
            runs.append([])
        if piece.value.has_flag:
            runs[-1].append(number)
    trimmed = [_trimmed(run, pieces) for run in runs]
    return [Beam(run[0], run[-1] + 1) for run in trimmed if len(run) > 1]


def _leaves_tuplet(run: list[int], piece: Written, pieces: Sequence[Written]) -> bool:
    """Return whether a beam would end inside a tuplet that is longer than the beam."""
    if not run:
        return False
    before = pieces[run[-1]].tuplet
    wide = [t for t in (before, piece.tuplet) if t is not None and t.length > 1]
    return before != piece.tuplet and bool(wide)


def _trimmed(run: list[int], pieces: Sequence[Written]) -> list[int]:
    while run and pieces[run[0]].is_rest:
        run = run[1:]
    while run and pieces[run[-1]].is_rest:
        run = run[:-1]
    return run
