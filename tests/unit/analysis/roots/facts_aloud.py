"""Progressions written in a test, and what a provider finds in them."""

from collections.abc import Callable
from textwrap import dedent

from unit.charts.reading_aloud import changes, chart_of, read

from sitegen.analysis.naming import name_chords, name_notes
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.score.chart import Chart

Provider = Callable[[ChartReading], tuple[Fact, ...]]


def named(chart: Chart) -> ChartReading:
    """Return a chart with its notes and chords named and nothing else found."""
    return ChartReading(chart, name_notes(chart), name_chords(chart))


def progression(bars: str, key: str = "") -> ChartReading:
    """Return a progression, `| C | F G |`, named in a key or in none."""
    return named(chart_of(changes(f"key: {key}\n\n{bars}" if key else bars)))


def played(text: str) -> ChartReading:
    """Return a notation block, named."""
    return named(chart_of(read(dedent(text))))


def found(provider: Provider, reading: ChartReading) -> dict[str, Fact]:
    """Return the facts of a provider by their paths, each of which must stand once."""
    facts = provider(reading)
    by_path = {fact.path: fact for fact in facts}
    assert len(by_path) == len(facts)
    return by_path


def texts(provider: Provider, reading: ChartReading) -> dict[str, str]:
    """Return the texts of a provider's facts by their paths."""
    return {path: fact.text for path, fact in found(provider, reading).items()}


def bars_of(fact: Fact) -> list[int]:
    """Return the bars of a fact's evidence."""
    return [place.bar for place in fact.evidence]
