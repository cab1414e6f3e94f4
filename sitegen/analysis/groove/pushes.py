"""Pushes: notes that come a little ahead of a strong beat and hold over it.

A push (an anticipation of the beat) is here an onset off the beat, at most an eighth ahead of a
strong beat and held over it, while the part starts nothing on the beat itself: common practice,
no source. Strong are the downbeat and the beats that weigh more than the weakest (1 and 3 in
4/4).
"""

from bisect import bisect_left
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from sitegen.analysis.groove.grid import GridBar, to_ticks
from sitegen.analysis.groove.line import Line
from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact
from sitegen.analysis.wording import capitalised

_TELLING = 2
_NAMES = {2: "an eighth", 3: "a triplet eighth", 4: "a sixteenth"}


@dataclass(frozen=True)
class Push:
    """An onset that anticipates a strong beat: its tick, and how early it is.

    `downbeat` is the number of the bar whose downbeat is pushed, None for a beat inside a bar.
    """

    tick: int
    early: int
    downbeat: int | None


def find_pushes(line: Line) -> list[Push]:
    """Return the pushes of a line in order of time."""
    found = []
    onsets = [(bar, o) for bar, own in zip(line.grid.bars, line.bars, strict=True) for o in own]
    ticks = list(line.struck)
    for bar, strong in _strong_places(line):
        target = bar.origin + strong
        index = bisect_left(ticks, target) - 1
        if index >= 0 and target not in line.struck and _is_pushed(line, *onsets[index], target):
            early = target - ticks[index]
            found.append(Push(ticks[index], early, None if strong else bar.number))
    return found


def push_facts(line: Line, changes: Collection[int]) -> list[Fact]:
    """Return the pushes of a part, and those over a bar line with the bars they lead to.

    `changes` are the ticks at which the chord changes.
    """
    pushes = find_pushes(line)
    if not pushes:
        return []
    places = line.places([push.tick for push in pushes])
    facts = [Fact(f"{line.prefix}.pushes", len(pushes), str(len(pushes)), "pushes", places)]
    over = [push for push in pushes if push.downbeat is not None]
    if over:
        words = bars_said(push.downbeat for push in over if push.downbeat is not None)
        places = line.places([push.tick for push in over])
        sentence = _sentence(line, over, words, changes)
        facts.append(Fact(f"{line.prefix}.pushed-downbeats", words, words, "", places, sentence))
    return facts


def _strong_places(line: Line) -> Iterator[tuple[GridBar, int]]:
    for bar in line.grid.bars:
        for strong in bar.meter.strong:
            if bar.start <= bar.origin + strong < bar.end:
                yield bar, strong


def _is_pushed(line: Line, bar: GridBar, offset: int, target: int) -> bool:
    """Tell whether an onset is off the beat, near enough to `target` and held over it."""
    tick, ticks = bar.origin + offset, line.grid.ticks
    if 2 * (target - tick) > ticks or offset in bar.meter.beats:
        return False
    held = max(to_ticks(note.duration, ticks) for note in line.struck[tick])
    return tick + held > target


def _sentence(line: Line, over: Sequence[Push], bars: str, changes: Collection[int]) -> str:
    early = {push.early for push in over}
    parts, rest = divmod(line.grid.ticks, min(early))
    if len(over) < _TELLING or len(early) > 1 or rest or parts not in _NAMES:
        return ""
    with_chord = all(push.tick in changes for push in over)
    told = f"{capitalised(line.name)} pushes the downbeat of {bars} by {_NAMES[parts]}"
    return f"{told}, and the chord changes with it." if with_chord else f"{told}."
