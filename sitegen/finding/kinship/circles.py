"""Loops up to their key, their extensions and the chord that they start from."""

from collections.abc import Iterator
from itertools import groupby

from sitegen.finding.entry import Entry, Progression

Chord = tuple[int, str]
"""A root as a pitch class, and the family of the triad on it."""

_OCTAVE = 12
_FEWEST = 3
_HIGHER = {
    1: "a semitone",
    2: "a whole tone",
    3: "a minor third",
    4: "a major third",
    5: "a fourth",
    6: "a tritone",
}
_COUNTED = {3: "three", 4: "four", 5: "five", 6: "six", 7: "seven", 8: "eight"}


def loops_of(entry: Entry) -> Iterator[tuple[Chord, ...]]:
    """Return the loops of a write-up's charts that have three different chords or more."""
    for chart in entry.charts:
        row = loop_row(chart.progression) if chart.progression is not None else ()
        if len(set(row)) >= _FEWEST:
            yield row


def loop_row(progression: Progression) -> tuple[Chord, ...]:
    """Return one pass of a loop, neighbours that differ in extensions only as one."""
    start, length = progression.loop_start, progression.loop_length
    cell = progression.steps[start : start + length]
    row = [chord for chord, _ in groupby((step.root, step.family) for step in cell)]
    while len(row) > 1 and row[0] == row[-1]:
        row.pop()
    return tuple(row)


def circle(row: tuple[Chord, ...]) -> str:
    """Return a text that is the same for the same loop in any key and from any of its chords."""
    after = (*row[1:], *row[:1])
    signs = [
        f"{family} {(next_root - root) % _OCTAVE}"
        for (root, family), (next_root, _) in zip(row, after, strict=True)
    ]
    return min(", ".join(signs[n:] + signs[:n]) for n in range(len(signs)))


def say_circle(row: tuple[Chord, ...], other: tuple[Chord, ...]) -> str:
    """Return how a loop that has the same circle looks beside `row`, which the reader knows."""
    count = _COUNTED.get(len(row), str(len(row)))
    turn, shift = min(_ways(row, other), key=lambda way: (way[0] != 0, min(way[1], -way[1] % 12)))
    said = f"the same {count}-chord loop"
    if turn:
        said += " from another of its chords"
    if not shift:
        return f"{said}, in the same key" if not turn else said
    if shift <= _OCTAVE // 2:
        return f"{said}, {_HIGHER[shift]} higher"
    return f"{said}, {_HIGHER[_OCTAVE - shift]} lower"


def _ways(row: tuple[Chord, ...], other: tuple[Chord, ...]) -> Iterator[tuple[int, int]]:
    """Return from which chord of `other`, and how many semitones up, it is `row`."""
    for turn in range(len(other)):
        turned = other[turn:] + other[:turn]
        shift = (turned[0][0] - row[0][0]) % _OCTAVE
        moved = tuple(((root + shift) % _OCTAVE, family) for root, family in row)
        if moved == turned:
            yield turn, shift
