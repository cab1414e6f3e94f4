"""Progressions of charts: one chart's loop, and the charts of an article compared."""

from sitegen.analysis.progressions.charted import chart_progression
from sitegen.analysis.progressions.charts_compared import compare_charts
from sitegen.analysis.progressions.progression_facts import find_progression

__all__ = ["chart_progression", "compare_charts", "find_progression"]
