"""Meters: how many beats of which note value, and how they group."""

import re
from fractions import Fraction
from functools import lru_cache

from msgspec import Struct

UNITS = (1, 2, 4, 8, 16, 32)
MOST_BEATS = 64
# How a bar with a count outside the simple and compound meters is felt unless the author
# says otherwise: common practice, no source.
_USUAL_GROUPS = {
    4: (2, 2),
    5: (3, 2),
    7: (2, 2, 3),
    8: (3, 3, 2),
    10: (3, 3, 2, 2),
    11: (3, 3, 3, 2),
    13: (3, 3, 3, 2, 2),
}
_WRITTEN = re.compile(r"\s*([\d+\s]+)/\s*(\d+)\s*(?:\(([\d+\s]+)\))?\s*")


class Meter(Struct, frozen=True):
    """A time signature; `groups` are the counts of its beat groups, `unit` the note under a beat.

    7/8 felt as 2+2+3 is `Meter((2, 2, 3), 8)`; 4/4 is `Meter((1, 1, 1, 1), 4)`; 6/8 is
    `Meter((3, 3), 8)`.
    """

    groups: tuple[int, ...]
    unit: int

    def __str__(self) -> str:
        return f"{self.count}/{self.unit}"

    @property
    def count(self) -> int:
        """The upper number: how many beats are counted in a bar."""
        return sum(self.groups)

    @property
    def beat(self) -> Fraction:
        """The length of one counted beat in quarter notes (an eighth in 6/8)."""
        return _beat(self.unit)

    @property
    def length(self) -> Fraction:
        """The length of a whole bar in quarter notes."""
        return _length(self.groups, self.unit)

    @property
    def is_compound(self) -> bool:
        """True when every beat group holds three beats: 6/8, 9/8, 12/8."""
        return len(self.groups) > 1 and all(group == 3 for group in self.groups)  # noqa: PLR2004

    @property
    def group_starts(self) -> tuple[Fraction, ...]:
        """The offsets in quarter notes at which the beat groups of a bar start."""
        return _group_starts(self.groups, self.unit)

    @classmethod
    def read(cls, text: str) -> "Meter":
        """Return the meter written as `4/4`, `7/8`, `2+2+3/8` or `7/8 (2+2+3)`.

        Raises ValueError with a sentence for the author.
        """
        match = _WRITTEN.fullmatch(text)
        if match is None:
            raise ValueError(f'"{text}" is not a meter; write it as 4/4 or 2+2+3/8')
        unit = int(match[2][:4])
        if unit not in UNITS:
            raise ValueError(f"a meter counts halves, quarters, eighths, ..., not 1/{unit} notes")
        upper = _numbers(match[1])
        groups = _numbers(match[3]) if match[3] else upper
        if sum(groups) != sum(upper):
            raise ValueError(f"the groups {match[3]} do not add up to {sum(upper)}")
        if min(upper) < 1 or min(groups) < 1 or sum(upper) > MOST_BEATS:
            raise ValueError(f"a bar has 1 to {MOST_BEATS} beats")
        return cls(groups if len(groups) > 1 else _usual_groups(groups[0], unit), unit)


@lru_cache(maxsize=64)
def _beat(unit: int) -> Fraction:
    return Fraction(4, unit)


@lru_cache(maxsize=256)
def _length(groups: tuple[int, ...], unit: int) -> Fraction:
    return sum(groups) * _beat(unit)


@lru_cache(maxsize=256)
def _group_starts(groups: tuple[int, ...], unit: int) -> tuple[Fraction, ...]:
    return tuple(sum(groups[:n]) * _beat(unit) for n in range(len(groups)))


def _numbers(text: str) -> tuple[int, ...]:
    parts = [part.strip() for part in text.split("+")]
    if not all(part.isdecimal() for part in parts):
        raise ValueError(f'"{text.strip()}" is not a number of beats')
    return tuple(int(part[:4]) for part in parts)


def _usual_groups(count: int, unit: int) -> tuple[int, ...]:
    compound = 3
    if unit >= 8 and count % compound == 0:  # noqa: PLR2004
        return (compound,) * (count // compound)
    if unit >= 8 or count in (5, 7):  # noqa: PLR2004
        return _USUAL_GROUPS.get(count, (count,) if count < 4 else (1,) * count)  # noqa: PLR2004
    return (1,) * count
