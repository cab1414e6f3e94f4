"""What the melodic lines of a chart do; see `findings` for the paths of the facts."""

from sitegen.analysis.melody.findings import find_melody
from sitegen.analysis.melody.line import MelodicLine, find_lines, is_melodic
from sitegen.analysis.melody.phrases import find_phrases
from sitegen.analysis.melody.pulse import Pulse, find_pulse

__all__ = [
    "MelodicLine",
    "Pulse",
    "find_lines",
    "find_melody",
    "find_phrases",
    "find_pulse",
    "is_melodic",
]
