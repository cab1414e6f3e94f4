"""How much a line plays, in which rhythm, and how far off the beat: the facts of every part."""

from fractions import Fraction
from math import gcd

from sitegen.analysis.groove.line import Line, Pattern
from sitegen.analysis.groove.syncopation import find_off_beats, find_syncopations
from sitegen.analysis.groove.wording import said_counts, said_number, said_value
from sitegen.analysis.reading import Fact
from sitegen.analysis.wording import capitalised, percent
from sitegen.score.chart import Chart

_SECONDS = 60
# More counts than these make no rhythm that one could say.
_MOST_SAID = 16
_FEWEST_IN_A_RUN = 3


def chart_seconds(chart: Chart) -> Fraction:
    """Return how long the chart lasts, repeats not played; 0 without a tempo."""
    if chart.tempo is None:
        return Fraction(0)
    return chart.length * _SECONDS / chart.tempo.quarters_per_minute


def density_facts(line: Line, bar_count: int, seconds: Fraction) -> list[Fact]:
    """Return the onsets a bar (the pickup left out) and a second, for what is not 0."""
    facts = []
    if bar_count:
        bars = zip(line.grid.bars, line.bars, strict=True)
        onsets = sum([len(offsets) for bar, offsets in bars if bar.number > 0])
        density = Fraction(onsets, bar_count)
        path = f"{line.prefix}.onsets-per-bar"
        facts.append(Fact(path, density, said_number(density), "onsets a bar"))
    if seconds:
        rate = len(line.struck) / seconds
        path = f"{line.prefix}.onsets-per-second"
        facts.append(Fact(path, rate, said_number(rate), "onsets a second"))
    return facts


def pattern_facts(line: Line, path: str, *, told: bool = False) -> list[Fact]:
    """Return the rhythm that comes back most in the bars of a line.

    `told` asks for a sentence where it is the rhythm of all bars of a meter of unlike groups.
    """
    pattern = line.pattern
    if pattern is None or len(pattern.offsets) > _MOST_SAID:
        return []
    words = _said_pattern(pattern, line.grid.ticks)
    odd = len(set(pattern.meter.meter.groups)) > 1
    sentence = ""
    if told and odd and len({(bar.meter, own) for bar, own in line.played}) == 1:
        where = " in every bar" if len(line.played) > 1 else ""
        sentence = f"{capitalised(line.name)} is on {words}{where}."
    places = line.places(pattern.ticks)
    return [Fact(path, drawn_pattern(pattern), words, "", places, sentence)]


def drawn_pattern(pattern: Pattern) -> str:
    """Return a bar's rhythm as signs, `x` an onset and `-` none, a group a counted beat."""
    count = pattern.meter.count
    step = gcd(count, *pattern.offsets)
    struck = set(pattern.offsets)
    return " ".join(
        "".join(["x" if at in struck else "-" for at in range(start, start + count, step)])
        for start in range(0, pattern.meter.length, count)
    )


def _said_pattern(pattern: Pattern, ticks: int) -> str:
    """Return the counts, or the one note value that fills the bar evenly."""
    offsets = pattern.offsets
    step, left = divmod(pattern.meter.length, len(offsets))
    value = said_value(step, ticks) if len(offsets) >= _FEWEST_IN_A_RUN else ""
    if value and not left and offsets == tuple(range(0, pattern.meter.length, step)):
        return f"every {value}"
    return said_counts(pattern.meter, offsets)


def syncopation_facts(line: Line, path: str, bar_count: int) -> list[Fact]:
    """Return how syncopated a line is: a bar, by bars, an onset, and in how many onsets."""
    if not line.struck or not bar_count:
        return []
    found = find_syncopations(line)
    total = sum(each.strength for each in found)
    mean = Fraction(total, bar_count)
    places = line.places([each.tick for each in found])
    facts = [Fact(f"{path}syncopation", mean, said_number(mean), "a bar", places)]
    if found:
        onsets = len(line.struck)
        share, each_onset = Fraction(len(found), onsets), Fraction(total, onsets)
        two = f"{float(each_onset):.2f}"
        by_bar = [0] * len(line.bars)
        for each in found:
            by_bar[each.bar] += each.strength
        told = " ".join(map(str, by_bar))
        facts += [
            Fact(f"{path}syncopation-by-bar", told, told, "", places),
            Fact(f"{path}syncopation-per-onset", each_onset, two, "an onset", places),
            Fact(f"{path}syncopated-share", share, percent(share), "of its onsets", places),
        ]
    return facts


def off_beat_facts(line: Line, path: str) -> list[Fact]:
    """Return the plain count of onsets that are on no felt beat."""
    ticks = find_off_beats(line)
    if not ticks:
        return []
    count, places = len(ticks), line.places(ticks)
    return [Fact(f"{path}off-beat-onsets", count, str(count), "off the beat", places)]
