"""What the meter does: a pickup, changes of meter, and groups as the drums mark them."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise, permutations

from sitegen.analysis.groove.kit import KICK, SNARES, TOMS, KitBar
from sitegen.analysis.groove.line import Offsets
from sitegen.analysis.groove.wording import said_counts
from sitegen.analysis.reading import Fact, Place
from sitegen.analysis.spoken import spoken_beats
from sitegen.score.chart import Chart

_MOST_GROUPS = 5


def meter_facts(chart: Chart) -> list[Fact]:
    """Return the pickup's length and the meters in their order."""
    facts = []
    if chart.has_pickup:
        bar = chart.bars[0]
        beats = bar.length / bar.meter.beat
        place = Place(0, 1 + bar.skipped / bar.meter.beat)
        facts.append(Fact("pickup", beats, spoken_beats(beats), "", (place,)))
    changes = [
        (before, bar)
        for before, bar in pairwise(chart.bars)
        if str(before.meter) != str(bar.meter)
    ]
    if changes:
        places = tuple(Place(bar.number, Fraction(1)) for _, bar in changes)
        words = " ".join([str(chart.bars[0].meter), *(str(bar.meter) for _, bar in changes)])
        count = len(changes)
        facts.append(Fact("meters", words, words, "", places))
        facts.append(Fact("meter-changes", count, str(count), "changes of meter", places))
    return facts


def group_facts(kit: Sequence[KitBar], prefix: str) -> list[Fact]:
    """Return the groups of unlike length that bass drum, snare and toms mark in every bar.

    A bar marks an order of its groups when each of them starts with a hit that is no ghost
    note. It is a finding only where no other order of the same groups is marked as well.
    """
    meter = kit[0].meter
    groups = meter.meter.groups
    if len(set(groups)) == 1 or len(groups) > _MOST_GROUPS:
        return []
    if any(bar.meter is not meter for bar in kit):
        return []
    hits = [set(bar.main_hits(KICK, *SNARES, *TOMS)) for bar in kit]
    marked = [
        order
        for order in sorted(set(permutations(groups)))
        if all(set(_starts(order, meter.count)) <= each for each in hits)
    ]
    return [_group_fact(kit, marked[0], prefix)] if len(marked) == 1 else []


def _starts(groups: tuple[int, ...], count: int) -> Offsets:
    return tuple([sum(groups[:n]) * count for n in range(len(groups))])


def _group_fact(kit: Sequence[KitBar], groups: tuple[int, ...], prefix: str) -> Fact:
    meter = kit[0].meter
    text, written = ("+".join(map(str, each)) for each in (groups, meter.meter.groups))
    starts = _starts(groups, meter.count)
    counts = said_counts(meter, starts)
    sentence = f"The drums group the bar {text}, with a hit on {counts}; it is written {written}."
    if text == written:
        sentence = f"The drums mark the groups: a hit on {counts} in every bar."
    places = tuple([p for bar in kit for p in bar.places(starts, KICK, *SNARES, *TOMS)])
    return Fact(f"{prefix}.grouping", text, text, "", places, sentence)
