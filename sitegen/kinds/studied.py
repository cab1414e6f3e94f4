"""The analysis that every kind made of bars shares."""

from sitegen.analysis.record import chart_record
from sitegen.analysis.study import study_chart
from sitegen.kinds.kind import Analysis, Surroundings
from sitegen.score.chart import Chart


def analyse_chart(chart: Chart, surroundings: Surroundings) -> Analysis:
    """Return what is found in a chart of notes or chords."""
    reading = study_chart(chart, surroundings.source)
    return Analysis(reading, chart_record(reading), reading.facts, reading.diagnostics)
