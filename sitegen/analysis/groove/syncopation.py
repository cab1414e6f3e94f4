"""Syncopation as H. C. Longuet-Higgins and C. S. Lee measure it, and plain off-beat onsets.

The measure: a note that is followed by silence (a rest, or its own sound held on) at a place of
the bar that weighs more than its own is a syncopation, as strong as the difference of the two
weights ("The Rhythmic Interpretation of Monophonic Music", Music Perception 1, 1984, from
memory). The weights are those of `sitegen.score.metrical_weight`. Readings of the paper differ
where several places pass in silence; here each note counts once, against the heaviest of them
up to and with the next downbeat, so that the rumba clave has 5 (6 where every rest counts
against the note before). Time after the chart's end is not silence; repeats are taken as
written.
"""

from dataclasses import dataclass
from itertools import pairwise
from math import gcd

from sitegen.analysis.groove.grid import MeterGrid
from sitegen.analysis.groove.line import Line

_NOTHING = -1_000


@dataclass(frozen=True)
class Syncopation:
    """A syncopated onset: its tick, the index of its bar, and its strength from 1."""

    tick: int
    bar: int
    strength: int


def find_syncopations(line: Line) -> list[Syncopation]:
    """Return the syncopated onsets of a line in order of time."""
    found = []
    for index, (bar, offsets) in enumerate(zip(line.grid.bars, line.bars, strict=True)):
        end = bar.end - bar.origin
        for offset, following in pairwise((*offsets, end)):
            own = bar.meter.weight(offset)
            heaviest = _heaviest(bar.meter, offset, following) if own else own
            if following == end:
                heaviest = max(heaviest, _downbeat(line, index))
            if heaviest > own:
                found.append(Syncopation(offset + bar.origin, index, heaviest - own))
    return found


def find_off_beats(line: Line) -> list[int]:
    """Return the ticks of the onsets that stand on no felt beat (see `beat_level`)."""
    return [
        bar.origin + offset
        for bar, offsets in zip(line.grid.bars, line.bars, strict=True)
        for offset in offsets
        if offset not in bar.meter.beats
    ]


def _downbeat(line: Line, index: int) -> int:
    """Return the weight of the place after a bar if it is silent."""
    after = index + 1
    if after == len(line.bars):
        return _NOTHING
    bar = line.grid.bars[after]
    first = bar.start - bar.origin
    return _NOTHING if line.bars[after][:1] == (first,) else bar.meter.weight(first)


def _heaviest(meter: MeterGrid, offset: int, following: int) -> int:
    """Return the weight of the heaviest place between two onsets of a bar.

    Where they are less than a count apart, the places are those of the note's own division.
    """
    count = meter.count
    inside = range(offset - offset % count + count, following, count)
    if not inside:
        step = gcd(offset, count)
        inside = range(offset + step, following, step)
    return max(map(meter.weight, inside), default=_NOTHING)
