"""Progressions looked up slowly and plainly, to hold the browser's search against.

Everything is tried: every chart, every key, every place. Only the rules are shared: what counts as
the same chord, in which order ways and keys are ranked.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from sitegen.finding import Entry, Progression

Chord = tuple[int, str, str]
"""A root from C or from the tonic, the notes over it, the family of its triad."""
SHIFTS = sorted(range(12), key=lambda shift: 2 * shift if shift <= 6 else 2 * (12 - shift) + 1)


@dataclass(frozen=True)
class Found:
    """A chart that holds the chords: in which way, how far transposed, by which steps."""

    write_up: int
    chart: int
    way: int
    shift: int
    steps: tuple[int, ...]


def chords_of(found: Progression) -> list[Chord]:
    return [(step.root, step.notes, step.family) for step in found.steps]


def each_progression(entries: Sequence[Entry]) -> Iterator[tuple[int, int, Progression]]:
    for write_up, entry in enumerate(entries):
        for chart, one in enumerate(entry.charts):
            if one.progression is not None:
                yield write_up, chart, one.progression


def slow_search(
    entries: Sequence[Entry],
    asked: Sequence[Chord],
    *,
    numerals: bool = False,
    same_key: bool = False,
    exact: bool = False,
    loop: bool = False,
) -> list[Found]:
    found = []
    for write_up, chart, progression in each_progression(entries):
        shifts: Sequence[int] = SHIFTS
        if numerals:
            shifts = [progression.tonic] if progression.tonic >= 0 else []
        elif same_key:
            shifts = [0]
        ways = [
            (way, shifts.index(shift), place, shift, steps)
            for shift in shifts
            for way, place, steps in _ways(progression, asked, shift, exact=exact, loop=loop)
        ]
        if ways:
            way, _, _, shift, steps = min(ways)
            found.append(Found(write_up, chart, way, shift, steps))
    return sorted(found, key=lambda one: (one.way, SHIFTS.index(one.shift)))


Group = tuple[tuple[int, str], tuple[int, ...]]


def _ways(
    progression: Progression, asked: Sequence[Chord], shift: int, *, exact: bool, loop: bool
) -> Iterator[tuple[int, int, tuple[int, ...]]]:
    """Yield every way and place in which a progression holds the chords, so many semitones up."""
    for first_way, names, wanted in _levels(progression, asked, shift, exact=exact):
        groups = _groups(names, merged=first_way == 3)
        cell = _cell(progression, groups, merged=first_way == 3)
        for way, place, chosen in _places(groups, cell, len(wanted), loop=loop):
            if [name for name, _ in chosen] == wanted:
                steps = tuple(step for _, own in chosen for step in own)
                yield first_way + way, place, steps


def _levels(
    progression: Progression, asked: Sequence[Chord], shift: int, *, exact: bool
) -> Iterator[tuple[int, list[tuple[int, str]], list[tuple[int, str]]]]:
    chords = chords_of(progression)
    full = [((root + shift) % 12, notes) for root, notes, _ in asked]
    yield 0, [(root, notes) for root, notes, _ in chords], full
    core = [((root + shift) % 12, family) for root, _, family in asked]
    core = [name for name, _ in groupby(core)]
    if not exact and len(core) >= 2:
        yield 3, [(root, family) for root, _, family in chords], core


def _groups(names: Sequence[tuple[int, str]], *, merged: bool) -> list[Group]:
    numbered = list(enumerate(names))
    if not merged:
        return [(name, (step,)) for step, name in numbered]
    grouped = groupby(numbered, key=lambda one: one[1])
    return [(name, tuple(step for step, _ in steps)) for name, steps in grouped]


def _cell(progression: Progression, groups: Sequence[Group], *, merged: bool) -> list[Group]:
    """Return one pass of the loop."""
    start, end = progression.loop_start, progression.loop_start + progression.loop_length
    if start == end:
        return []
    first = next(n for n, (_, steps) in enumerate(groups) if start in steps)
    last = next(n for n, (_, steps) in enumerate(groups) if end - 1 in steps)
    cell = list(groups[first : last + 1])
    if merged and len(cell) > 1 and cell[0][0] == cell[-1][0]:
        cell.pop()
    return cell


def _places(
    groups: Sequence[Group], cell: Sequence[Group], count: int, *, loop: bool
) -> Iterator[tuple[int, int, list[Group]]]:
    if count == len(groups):
        yield 0, 0, list(groups)
    elif count == len(cell):
        yield 0, 0, list(cell)
    if count == len(cell):
        for turn in range(1, count):
            yield 1, turn, [*cell[turn:], *cell[:turn]]
    if loop:
        return
    for start in range(len(groups) - count + 1):
        yield 2, start, list(groups[start : start + count])
    if cell and count <= 4 * len(cell):
        for turn in range(len(cell)):
            round_ = [cell[(turn + n) % len(cell)] for n in range(count)]
            yield 2, len(groups) + turn, round_


def slow_costs(
    entries: Sequence[Entry], asked: Sequence[Chord], *, numerals: bool = False
) -> dict[tuple[int, int], int]:
    """Return the least cost of finding the chords in each chart that may be near."""
    costs = {}
    for write_up, chart, progression in each_progression(entries):
        chords = chords_of(progression)
        start = progression.loop_start
        text = chords + chords[start : start + progression.loop_length]
        shifts: Sequence[int] = SHIFTS
        if numerals:
            shifts = [progression.tonic] if progression.tonic >= 0 else []
        found = []
        for shift in shifts:
            moved = [((root + shift) % 12, notes, family) for root, notes, family in asked]
            held = sum(
                any((root, family) == (r, f) for r, _, f in chords) for root, _, family in moved
            )
            if held > 1 and 2 * held >= len(moved):
                found.append(_distance(moved, text))
        if found and min(found) <= 2 * len(asked):
            costs[write_up, chart] = min(found)
    return costs


def _distance(asked: Sequence[Chord], text: Sequence[Chord]) -> int:
    """Return the least cost of turning the chords into some that follow each other in a text."""
    costs = {(0, at): 0 for at in range(len(text) + 1)}
    for n in range(1, len(asked) + 1):
        for at in range(len(text) + 1):
            ways = [costs[n - 1, at] + 4]
            if at:
                ways.append(costs[n, at - 1] + 4)
                ways.append(costs[n - 1, at - 1] + _substitution(asked[n - 1], text[at - 1]))
            costs[n, at] = min(ways)
    return min(costs[len(asked), at] for at in range(len(text) + 1))


def _substitution(one: Chord, other: Chord) -> int:
    if one[0] != other[0]:
        return 4
    if one[2] != other[2]:
        return 2
    return 0 if one[1] == other[1] else 1
