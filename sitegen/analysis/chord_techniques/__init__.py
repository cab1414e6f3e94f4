"""What is done with chords: applied and borrowed ones, kinds, cadences, harmonic rhythm."""

from sitegen.analysis.chord_techniques.chord_techniques import find_chord_techniques

__all__ = ["find_chord_techniques"]
