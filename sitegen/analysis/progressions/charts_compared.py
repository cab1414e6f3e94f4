"""The progressions of an article's charts beside each other.

Paths, in both charts of a pair whose chords have something in common that is worth telling:

- `like.<other chart id>`: what the chart has of the other's chords: "the same four-chord loop,
  starting from the third"; its value is the kind of likeness
"""

import re
from collections.abc import Iterator, Mapping
from itertools import combinations

from msgspec.structs import replace

from sitegen.analysis.progressions.charted import chart_progression
from sitegen.analysis.progressions.progression_facts import places
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.harmony.progressions import (
    Likeness,
    Progression,
    compare,
    find_likeness,
    say_likeness,
)
from sitegen.score.chart import Chart

_MOST_STEPS = 32
_MOST_CHARTS = 24
_FEWEST_CHORDS = 2
_FEWEST_TOLD = 3
_FEWEST_MOVED = 4
_MOST_DIFFERENCES = 3
# What is not seen at a glance comes before what is.
_TOLD_FIRST = (
    "rotation",
    "same in another key",
    "same but for extensions",
    "alike",
    "same",
    "contained",
)


def compare_charts(
    readings: Mapping[str, ChartReading], names: Mapping[str, str]
) -> Mapping[str, tuple[Fact, ...]]:
    """Return for each chart, by its id, how its chords are related to those of the others.

    `readings` are an article's charts by id, in the order of the article, `names` what they are
    called, "Example 3". Charts with one chord are left out, as those of more than 32 chords are
    and all after the 24th. A pair has a fact in both charts, and at most one fact of a chart
    has a sentence: about an earlier chart, the relation that is hardest to see. That two charts
    of one section, by the first word of their titles, share its chords needs none.
    """
    progressions = dict(list(_progressions(readings))[:_MOST_CHARTS])
    found: dict[str, list[tuple[Likeness, Fact]]] = {chart: [] for chart in readings}
    for one, other in combinations(progressions, 2):
        likeness = find_likeness(progressions[one], progressions[other])
        if likeness is not None and _is_telling(likeness):
            charts = readings[one].chart, readings[other].chart
            told = _tell(likeness, charts, names[one], names[other])
            fact = _fact(likeness, one, names, charts[1])
            found[other].append((likeness, replace(fact, sentence=told)))
            back = compare(progressions[other], progressions[one])
            found[one].append((back, _fact(back, other, names, charts[0])))
    return {chart: _with_one_sentence(facts) for chart, facts in found.items()}


def _progressions(readings: Mapping[str, ChartReading]) -> Iterator[tuple[str, Progression]]:
    for chart, reading in readings.items():
        progression = chart_progression(reading.chart)
        if len(progression.row) <= _MOST_STEPS and len(set(progression.cores)) >= _FEWEST_CHORDS:
            yield chart, progression


def _is_telling(likeness: Likeness) -> bool:
    kept = sum(not pair.cost for pair in likeness.pairs)
    if likeness.kind == "alike":
        few = len(likeness.pairs) - kept <= _MOST_DIFFERENCES
        return few and kept >= (_FEWEST_MOVED if likeness.interval else _FEWEST_TOLD)
    return not likeness.interval or len(likeness.pairs) >= _FEWEST_MOVED


def _fact(likeness: Likeness, first: str, names: Mapping[str, str], chart: Chart) -> Fact:
    text = say_likeness(likeness, names[first])
    evidence = places([pair.second for pair in likeness.pairs if pair.second], chart)
    return Fact(f"like.{first}", likeness.kind, text, "", evidence)


def _tell(likeness: Likeness, charts: tuple[Chart, Chart], first: str, second: str) -> str:
    plain = likeness.kind in {"same", "contained"} and not likeness.interval
    if len(likeness.pairs) < _FEWEST_TOLD or (
        plain and _section(charts[0]) == _section(charts[1])
    ):
        return ""
    return f"{second} has {say_likeness(likeness, first)}."


def _section(chart: Chart) -> str:
    """Return the first word of a title; charts of one section have the same chords anyhow."""
    words = re.findall(r"\w+", chart.title.casefold())
    return words[0] if words else chart.id


def _with_one_sentence(found: list[tuple[Likeness, Fact]]) -> tuple[Fact, ...]:
    told = [each for each in found if each[1].sentence]
    best = min(told, key=lambda each: _rank(each[0]))[1] if told else None
    return tuple(fact if fact is best else replace(fact, sentence="") for _, fact in found)


def _rank(likeness: Likeness) -> tuple[int, bool, bool]:
    return _TOLD_FIRST.index(likeness.kind), likeness.loops != "both", likeness.of_loops
