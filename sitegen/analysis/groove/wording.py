"""Counts and figures as a sentence says them: "1 and the & of 3", "7.5", "75 %"."""

from collections.abc import Iterable
from fractions import Fraction
from functools import lru_cache

from sitegen.analysis.groove.grid import MeterGrid
from sitegen.analysis.places import listed
from sitegen.analysis.spoken import spoken_length

# The marks of a count row.
_MARKS = {
    Fraction(1, 2): "&",
    Fraction(1, 4): "e",
    Fraction(3, 4): "a",
    Fraction(1, 3): "la",
    Fraction(2, 3): "li",
}


def said_count(beat: Fraction) -> str:
    """Return a counted beat: "3", "the & of 3", "the li of 3", "3 1/5"."""
    whole, rest = divmod(beat, 1)
    if not rest:
        return str(whole)
    return f"the {_MARKS[rest]} of {whole}" if rest in _MARKS else f"{whole} {rest}"


def said_counts(meter: MeterGrid, offsets: Iterable[int]) -> str:
    """Return the counts of some offsets: "1, 3 and the & of 4"."""
    count = meter.count
    return listed([_said_offset(offset, count) for offset in offsets])


@lru_cache(maxsize=4096)
def _said_offset(offset: int, count: int) -> str:
    return said_count(1 + Fraction(offset, count))


@lru_cache(maxsize=256)
def said_value(length: int, ticks: int) -> str:
    """Return the note value of a length, `ticks` to a quarter: "eighth", "" for none."""
    return spoken_length(Fraction(length, ticks))


def said_number(number: Fraction | int) -> str:
    """Return a number with at most one decimal: "5", "7.5"."""
    return f"{float(number):.1f}".removesuffix(".0")
