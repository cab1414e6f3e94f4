"""The analysis that every kind made of bars shares."""

from collections.abc import Collection, Mapping
from dataclasses import replace

from sitegen.analysis.progressions import compare_charts
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.analysis.record import chart_record
from sitegen.analysis.study import study_chart
from sitegen.kinds.findings import choose_findings, told_by
from sitegen.kinds.kind import Analysis, Surroundings
from sitegen.score.chart import Chart


def analyse_chart(chart: Chart, surroundings: Surroundings) -> Analysis:
    """Return what is found in a chart of notes or chords."""
    reading = study_chart(chart, surroundings.source)
    record, findings = chart_record(reading), choose_findings(reading)
    return Analysis(reading, record, reading.facts, reading.diagnostics, findings=findings)


def compare_analyses(
    analyses: Mapping[str, Analysis], names: Mapping[str, str]
) -> Mapping[str, Analysis]:
    """Return a write-up's charts by id with the facts that come of comparing them.

    `analyses` are in the order of the page and `names` are what the charts are called, "Example
    3". No finding is told twice. Charts that are not made of bars stay as they are.
    """
    readings = {id_: a.value for id_, a in analyses.items() if isinstance(a.value, ChartReading)}
    found = compare_charts(readings, names)
    told: set[str] = set()
    compared = {}
    for id_, analysis in analyses.items():
        compared[id_] = _with_findings(_with_facts(analysis, found.get(id_, ())), told)
        told |= told_by(compared[id_].findings)
    return compared


def _with_findings(analysis: Analysis, told: Collection[str]) -> Analysis:
    if not isinstance(analysis.value, ChartReading):
        return analysis
    return replace(analysis, findings=choose_findings(analysis.value, told))


def _with_facts(analysis: Analysis, facts: tuple[Fact, ...]) -> Analysis:
    if not facts:
        return analysis
    value = replace(analysis.value, facts=(*analysis.value.facts, *facts))
    return replace(analysis, value=value, facts=(*analysis.facts, *facts))
