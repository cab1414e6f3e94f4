"""Tonality: the key that a chart's notes and chords speak for, its mode and its changes of key."""

from sitegen.analysis.tonality.tonality import find_tonality

__all__ = ["find_tonality"]
