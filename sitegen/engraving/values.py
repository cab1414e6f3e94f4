"""Note values: whole, half, quarter, ..., with and without a dot."""

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

WHOLE = Fraction(4)
SHORTEST = 2048
DOTTED = Fraction(3, 2)


@dataclass(frozen=True)
class NoteValue:
    """A written value: `dur` is the denominator (4 = quarter, 8 = eighth), `dots` 0 or 1."""

    dur: int
    dots: int = 0

    @property
    def length(self) -> Fraction:
        """The length in quarter notes."""
        plain = WHOLE / self.dur
        return plain * DOTTED if self.dots else plain

    @property
    def has_flag(self) -> bool:
        """True for eighths and shorter, which can be beamed."""
        return self.dur >= 8  # noqa: PLR2004


@lru_cache(maxsize=256)
def value_of(length: Fraction) -> NoteValue | None:
    """Return the value that lasts `length` quarter notes; None when it takes more than one."""
    for dots, plain in ((0, length), (1, length / DOTTED)):
        dur = WHOLE / plain
        if dur.denominator == 1 and is_power_of_two(dur.numerator) and dur <= SHORTEST:
            return NoteValue(dur.numerator, dots)
    return None


def is_power_of_two(number: int) -> bool:
    """Return whether `number` is 1, 2, 4, 8, ..."""
    return number > 0 and number & (number - 1) == 0
