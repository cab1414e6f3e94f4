"""Everything that is found in a chart, in one value."""

from sitegen.analysis.facts import find_facts
from sitegen.analysis.hearing import check_hearing
from sitegen.analysis.naming import name_chords, name_notes
from sitegen.analysis.reading import ChartReading
from sitegen.score.chart import Chart
from sitegen.source import Source


def study_chart(chart: Chart, source: Source) -> ChartReading:
    """Return the chart with its notes and chords named, its facts and what its author misheard.

    `source` is the file the chart stands in.
    """
    notes, chords = name_notes(chart), name_chords(chart)
    return ChartReading(
        chart,
        notes,
        chords,
        find_facts(chart, notes, chords),
        check_hearing(chart, notes, source),
    )
