"""Progressions compared: what two rows of chords have in common, in any key. Pure."""

from sitegen.harmony.progressions.comparison import (
    FARTHEST_ALIKE,
    compare,
    find_likeness,
    substitution_distance,
)
from sitegen.harmony.progressions.cores import core
from sitegen.harmony.progressions.likeness import Likeness, StepPair
from sitegen.harmony.progressions.loops import Loop
from sitegen.harmony.progressions.progression import Progression, make_progression
from sitegen.harmony.progressions.rows import ChordBar, Step
from sitegen.harmony.progressions.shapes import core_loop_shape, core_shape, loop_shape, shape
from sitegen.harmony.progressions.substitution import chord_cost
from sitegen.harmony.progressions.wording import say_differences, say_likeness

__all__ = [
    "FARTHEST_ALIKE",
    "ChordBar",
    "Likeness",
    "Loop",
    "Progression",
    "Step",
    "StepPair",
    "chord_cost",
    "compare",
    "core",
    "core_loop_shape",
    "core_shape",
    "find_likeness",
    "loop_shape",
    "make_progression",
    "say_differences",
    "say_likeness",
    "shape",
    "substitution_distance",
]
