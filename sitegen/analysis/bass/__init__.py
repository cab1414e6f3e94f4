"""Basses: the lowest notes of the chord symbols and of the parts that play the bass."""

from sitegen.analysis.bass.bass_motions import find_bass_motions

__all__ = ["find_bass_motions"]
