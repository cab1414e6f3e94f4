"""The analysis that every kind made of bars shares."""

from collections.abc import Mapping
from dataclasses import replace

from sitegen.analysis.progressions import compare_charts
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.analysis.record import chart_record
from sitegen.analysis.study import study_chart
from sitegen.kinds.kind import Analysis, Surroundings
from sitegen.score.chart import Chart


def analyse_chart(chart: Chart, surroundings: Surroundings) -> Analysis:
    """Return what is found in a chart of notes or chords."""
    reading = study_chart(chart, surroundings.source)
    return Analysis(reading, chart_record(reading), reading.facts, reading.diagnostics)


def compare_analyses(
    analyses: Mapping[str, Analysis], names: Mapping[str, str]
) -> Mapping[str, Analysis]:
    """Return a write-up's charts by id with the facts that come of comparing them.

    `names` are what the charts are called, "Example 3". Charts that are not made of bars stay
    as they are.
    """
    readings = {id_: a.value for id_, a in analyses.items() if isinstance(a.value, ChartReading)}
    found = compare_charts(readings, names)
    return {id_: _with_facts(analysis, found.get(id_, ())) for id_, analysis in analyses.items()}


def _with_facts(analysis: Analysis, facts: tuple[Fact, ...]) -> Analysis:
    if not facts:
        return analysis
    value = replace(analysis.value, facts=(*analysis.value.facts, *facts))
    return replace(analysis, value=value, facts=(*analysis.facts, *facts))
