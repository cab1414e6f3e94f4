"""Numbers as text, a character each, which packs well and is read fast.

A character's code less `FIRST` is a number; less `MIDDLE`, where it may be negative and small.
"""

from collections.abc import Iterable

FIRST = 35
"""The code of the character for 0: from # on, which JSON need not escape."""
MIDDLE = 79
"""The code of the character for 0 where numbers may be negative."""

# Half of a pair of code units is no text: numbers end before those.
_MOST = 0xD7FF - FIRST


def column(numbers: Iterable[int], zero: int = FIRST) -> str:
    """Return numbers as text; those that no character stands for are cut to the greatest."""
    return "".join([chr(zero + min(number, _MOST)) for number in numbers])


def unsigned(number: int) -> int:
    """Return 0, -1, 1, -2, ... as 0, 1, 2, 3, ..."""
    return 2 * number if number >= 0 else -2 * number - 1
