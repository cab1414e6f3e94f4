"""Roots: how they move from chord to chord, and what chords share."""

from sitegen.analysis.roots.root_motions import find_root_motions

__all__ = ["find_root_motions"]
