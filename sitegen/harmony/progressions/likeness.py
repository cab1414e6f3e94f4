"""What two progressions have in common, as a value."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from msgspec import Struct

from sitegen.harmony.progressions.rows import Step

LikenessKind = Literal[
    "same",
    "same in another key",
    "same but for extensions",
    "rotation",
    "contained",
    "alike",
    "unlike",
]
"""How two progressions are related, from the closest relation to none."""

Holder = Literal["", "first", "second"]
"""The one of two that contains the other."""

Loops = Literal["", "first", "second", "both"]
"""Which of two come round."""


class StepPair(Struct, frozen=True):
    """Steps of two progressions that stand beside each other; None where one has none there."""

    first: Step | None
    second: Step | None
    cost: int


@dataclass(frozen=True)
class Likeness:
    """How the second of two progressions looks beside the first.

    - `distance` is the substitution distance of the two, 0 to 1, for the transposition that
      brings them nearest, in the order in which they stand.
    - `interval` is how many semitones up, 0 to 11, leads from the first to the second, `motion`
      the same in words: "a fourth higher", "" for none.
    - `start` is where in the first, in chords from 0, the second starts: 0 but for a rotation.
    - `with_extensions` says that qualities and basses agree as well, and not the roots and
      families of triads alone.
    - `of_loops` says that it speaks of one pass of a loop and not of all chords.
    - `loops` names those that come round.
    - `holder` names the one that contains the other, `bars` are the first and last bar, as
      written, where it does.
    - `pace` is how many times as long the chords of the second last; None where they last
      longer and shorter.
    - `pairs` are the steps beside each other.
    """

    kind: LikenessKind
    distance: Fraction
    interval: int = 0
    motion: str = ""
    start: int = 0
    with_extensions: bool = True
    of_loops: bool = False
    loops: Loops = ""
    holder: Holder = ""
    bars: tuple[int, ...] = ()
    pace: Fraction | None = None
    pairs: tuple[StepPair, ...] = ()
