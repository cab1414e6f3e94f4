"""The melodies of a chart as they are searched: one line a part, transposed by nobody."""

from fractions import Fraction

from sitegen.analysis.melody.line import MelodicLine, find_lines
from sitegen.analysis.reading import ChartReading
from sitegen.finding.entry import TICKS, Melody

FEWEST_NOTES = 3
"""A line of fewer notes has no contour that could be told from another."""


def find_melodies(reading: ChartReading) -> tuple[Melody, ...]:
    """Return the lines of the parts that play mostly one note at a time."""
    key = reading.chart.key
    tonic = -1 if key is None else key.tonic.pitch_class
    return tuple(_melody(line, tonic) for line in find_lines(reading) if len(line) >= FEWEST_NOTES)


def _melody(line: MelodicLine, tonic: int) -> Melody:
    onsets = tuple(in_ticks(note.onset) for note in line.notes)
    bars = tuple(note.bar for note in line.notes)
    sung = line.part.instrument.family == "voice"
    return Melody(line.part.name, line.midi, onsets, bars, tonic, line.is_bass, sung)


def in_ticks(time: Fraction) -> int:
    """Return a time in quarter notes as the nearest tick, halves up."""
    return (2 * time.numerator * TICKS + time.denominator) // (2 * time.denominator)
