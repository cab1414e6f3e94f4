"""Everything that is found in a chart, in one value."""

from collections.abc import Callable
from dataclasses import replace

from sitegen.analysis.bass import find_bass_motions
from sitegen.analysis.chord_techniques import find_chord_techniques
from sitegen.analysis.embellishments import find_embellishments, name_embellishments
from sitegen.analysis.facts import find_figures
from sitegen.analysis.groove import find_groove
from sitegen.analysis.hearing import check_hearing
from sitegen.analysis.melody import find_melody
from sitegen.analysis.naming import name_chords, name_notes
from sitegen.analysis.progressions import find_progression
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.analysis.roots import find_root_motions
from sitegen.analysis.shares import find_shares
from sitegen.analysis.tonality import find_tonality
from sitegen.score.chart import Chart
from sitegen.source import Source

Provider = Callable[[ChartReading], tuple[Fact, ...]]
PROVIDERS: tuple[Provider, ...] = (
    find_figures,
    find_tonality,
    find_progression,
    find_root_motions,
    find_bass_motions,
    find_chord_techniques,
    find_shares,
    find_embellishments,
    find_melody,
    find_groove,
)
"""What is asked of every chart, in the order in which it is told."""


def study_chart(chart: Chart, source: Source) -> ChartReading:
    """Return the chart with its notes and chords named, its facts and what its author misheard.

    `source` is the file the chart stands in.
    """
    notes = name_embellishments(chart, name_notes(chart))
    reading = ChartReading(chart, notes, name_chords(chart))
    facts = tuple(fact for provide in PROVIDERS for fact in provide(reading))
    diagnostics = check_hearing(chart, reading.notes, source)
    return replace(reading, facts=facts, diagnostics=diagnostics)
