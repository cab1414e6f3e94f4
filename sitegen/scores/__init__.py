"""Score files read in a process of their own, which a hostile file may bring down by itself."""

from sitegen.scores.found import FoundScore
from sitegen.scores.reading import SUFFIXES, ScoreError, read_score

__all__ = ["SUFFIXES", "FoundScore", "ScoreError", "read_score"]
