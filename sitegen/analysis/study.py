"""Everything that is found in a chart, in one value."""

from collections.abc import Callable
from dataclasses import replace

from sitegen.analysis.facts import find_figures
from sitegen.analysis.hearing import check_hearing
from sitegen.analysis.naming import name_chords, name_notes
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.score.chart import Chart
from sitegen.source import Source

Provider = Callable[[ChartReading], tuple[Fact, ...]]
PROVIDERS: tuple[Provider, ...] = (find_figures,)
"""What is asked of every chart, in the order in which it is told."""


def study_chart(chart: Chart, source: Source) -> ChartReading:
    """Return the chart with its notes and chords named, its facts and what its author misheard.

    `source` is the file the chart stands in.
    """
    reading = ChartReading(chart, name_notes(chart), name_chords(chart))
    facts = tuple(fact for provide in PROVIDERS for fact in provide(reading))
    diagnostics = check_hearing(chart, reading.notes, source)
    return replace(reading, facts=facts, diagnostics=diagnostics)
