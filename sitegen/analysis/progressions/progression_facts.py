"""The progression of one chart and its loop.

Paths:

- `progression`: the numerals of one pass of its loop, or of all its chords where it has none,
  each chord once for as long as it lasts; without a key the way from root to root
- `loop`: the cell of whole bars whose chords come round, its length, and how often it is played
  in full: "C♯5 Asus2 Esus2 Bsus2, 4 bars, three times"
"""

from collections.abc import Sequence
from itertools import pairwise

from sitegen.analysis.places import bars_said
from sitegen.analysis.progressions.charted import chart_progression
from sitegen.analysis.reading import ChartReading, Fact, Place
from sitegen.analysis.wording import capitalised, times_word
from sitegen.harmony import roman_line, root_motion
from sitegen.harmony.progressions import Loop, Progression, Step
from sitegen.score.chart import Chart

_ORDINALS = "first second third fourth fifth sixth seventh eighth ninth tenth".split()
_MOST_STEPS = 32
_FEWEST_STEPS = 2


def find_progression(reading: ChartReading) -> tuple[Fact, ...]:
    """Return the facts of a chart's progression; repeats are played out, pushes taken back."""
    progression = chart_progression(reading.chart)
    return (
        *_progression_fact(progression, reading.chart),
        *_loop_fact(progression, reading.chart),
    )


def _progression_fact(progression: Progression, chart: Chart) -> list[Fact]:
    steps = progression.cell.steps
    if not _FEWEST_STEPS <= len(steps) <= _MOST_STEPS:
        return []
    chords = [step.chord for step in steps]
    if chart.key is not None:
        # A loop leads back to its first chord, by which its last one is read.
        after = chords[:1] if progression.loop else []
        numerals = roman_line([*chords, *after], chart.key)[: len(chords)]
        text = " ".join(numerals)
    else:
        text = ", ".join(filter(None, (root_motion(a, b) for a, b in pairwise(chords))))
    return [Fact("progression", text, text, "", places(steps, chart))] if text else []


def _loop_fact(progression: Progression, chart: Chart) -> list[Fact]:
    loop, steps = progression.loop, progression.cell.steps
    if loop is None or len(steps) > _MOST_STEPS:
        return []
    length = "1 bar" if loop.length == 1 else f"{loop.length} bars"
    text = f"{_names(steps)}, {length}, {times_word(loop.times)}"
    sentence = "" if loop.whole else _say_loop(progression, loop)
    return [Fact("loop", text, text, "", places(steps, chart), sentence)]


def _say_loop(progression: Progression, loop: Loop) -> str:
    bars = bars_said(bar.number for bar in progression.bars[loop.first : loop.end])
    said = f"{_names(progression.cell.steps)} goes round {times_word(loop.times)}"
    return f"{capitalised(bars)}: {said}{_say_ending(progression, loop)}."


def _say_ending(progression: Progression, loop: Loop) -> str:
    """Return how a last pass goes on that begins as the others do, "" where none does."""
    cell, last = progression.cell.bars, progression.bars[loop.end :]
    same = [a.changes == b.changes for a, b in zip(cell, last, strict=False)]
    if len(last) != len(cell) or not all(same[: (len(cell) + 1) // 2]) or len(cell) == 1:
        return ""
    changed = Progression(last[same.index(False) :])
    ordinal = _ORDINALS[loop.times] if loop.times < len(_ORDINALS) else "last"
    bars = bars_said(bar.number for bar in changed.bars)
    return f"; the {ordinal} time it ends {_names(changed.steps)} ({bars})"


def places(steps: Sequence[Step], chart: Chart) -> tuple[Place, ...]:
    """Return where chords start, each place once, in order of time."""
    bars = {bar.number: bar for bar in reversed(chart.bars)}
    found = {
        (step.bar, 1 + (step.offset + bars[step.bar].skipped) / bars[step.bar].meter.beat)
        for step in steps
    }
    return tuple(Place(bar, beat) for bar, beat in sorted(found))


def _names(steps: Sequence[Step]) -> str:
    return " ".join(str(step.chord) for step in steps)
