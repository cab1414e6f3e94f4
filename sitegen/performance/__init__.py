"""How a chart sounds when it is played: repeats taken, swing heard, every note in its time."""

from sitegen.performance.midi import write_midi
from sitegen.performance.performance import Performance, PlayedBar, Player, Stroke
from sitegen.performance.performing import perform
from sitegen.performance.record import performance_record

__all__ = [
    "Performance",
    "PlayedBar",
    "Player",
    "Stroke",
    "perform",
    "performance_record",
    "write_midi",
]
