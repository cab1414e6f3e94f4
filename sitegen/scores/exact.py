"""Times of music21 as fractions."""

from fractions import Fraction
from typing import Any

_FINEST = 6720


def exact(value: Any) -> Fraction:  # noqa: ANN401 - music21 has no types
    """Return a time in quarter notes, where thirds and fifths may have been rounded."""
    return Fraction(value).limit_denominator(_FINEST)
