"""What write-ups can be found by: the music in their charts, as small values for an index."""

from sitegen.finding.entries import NamedAnalysis, make_entry
from sitegen.finding.entry import (
    Beat,
    ChartEntry,
    ChordStep,
    Entry,
    Melody,
    Progression,
    Section,
    Technique,
)

__all__ = [
    "Beat",
    "ChartEntry",
    "ChordStep",
    "Entry",
    "Melody",
    "NamedAnalysis",
    "Progression",
    "Section",
    "Technique",
    "make_entry",
]
