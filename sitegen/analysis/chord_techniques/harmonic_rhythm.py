"""Harmonic rhythm: how often the chords change, and which of them come ahead of the bar.

Harmonic rhythm is the rate at which chords change (W. Piston, *Harmony*, the chapter of that
name, from memory): here the changes of chord, the first chord among them, for each bar in which
chords sound; a chord that is repeated does not change. A push is a chord that comes an eighth or
less ahead of a bar line and is held over it; it counts in the bar it is meant for.
"""

from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Sequence
from fractions import Fraction

from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact
from sitegen.analysis.roots.chord_line import TICKS, HeldChord, ticks
from sitegen.analysis.roots.wording import count_fact, places_of
from sitegen.analysis.wording import number_word
from sitegen.score.chart import Chart

_EIGHTH = TICKS // 2
_FEWEST_BARS = 4


def rhythm_facts(changes: Sequence[HeldChord], chart: Chart) -> list[Fact]:
    """Return the chords a bar, and the chords that are pushed."""
    bars = _sounding_bars(changes, chart)
    facts = []
    if bars:
        rate = Fraction(len(changes), len(bars))
        sentence = _quickening(changes, bars)
        places = places_of(changes)
        unit = "chord a bar" if rate == 1 else "chords a bar"
        facts.append(Fact("harmonic-rhythm", rate, _decimal(rate), unit, places, sentence))
    pushed = [held for held in changes if held.is_pushed]
    return [*facts, _pushes(pushed)] if pushed else facts


def _sounding_bars(changes: Sequence[HeldChord], chart: Chart) -> list[int]:
    """Return the numbers of the bars in which chords sound; a pickup is none."""
    starts = [ticks(bar.start) for bar in chart.bars]
    numbers: set[int] = set()
    for held in changes:
        first = bisect_right(starts, held.home_onset) - 1
        last = bisect_left(starts, held.end)
        numbers.update(bar.number for bar in chart.bars[max(first, 0) : last])
    return sorted(numbers - {0})


def _quickening(changes: Sequence[HeldChord], bars: Sequence[int]) -> str:
    """Say where a steady harmonic rhythm gets quicker towards the end."""
    counts = Counter(held.home for held in changes)
    rates = [counts[bar] for bar in bars]
    last = next((n for n, rate in enumerate(reversed(rates)) if rate != rates[-1]), 0)
    steady, quick = rates[:-last] if last else [], rates[-last:] if last else []
    if len(bars) < _FEWEST_BARS or not steady or len(quick) * 3 > len(steady):
        return ""
    if len(set(steady)) > 1 or not 0 < steady[0] < quick[0]:
        return ""
    before, after = bars[: len(steady)], bars[len(steady) :]
    return (
        f"{number_word(steady[0]).capitalize()} chord{'s' * (steady[0] > 1)} a bar in "
        f"{bars_said(before)}, {number_word(quick[0])} in {bars_said(after)}."
    )


def _pushes(pushed: Sequence[HeldChord]) -> Fact:
    early = {held.home_onset - held.onset for held in pushed}
    said = bars_said(held.home for held in pushed)
    sentence = f"In {said} the chord comes an eighth ahead of the bar."
    told = sentence if early == {_EIGHTH} else ""
    return count_fact("pushes", pushed, "chords ahead of the bar", told)


def _decimal(number: Fraction) -> str:
    return f"{float(number):.2f}".rstrip("0").rstrip(".")
