"""Rows under a count row, laid out in columns: how a chart of a synthetic archive is typed."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from random import Random

_NARROWEST = 4


@dataclass(frozen=True)
class Pulse:
    """A meter as it is counted: `groups` in beats, `unit` the note under a beat (4 or 8)."""

    text: str
    groups: tuple[int, ...]
    unit: int

    @property
    def beats(self) -> int:
        """The beats of a bar."""
        return sum(self.groups)

    @property
    def starts(self) -> frozenset[int]:
        """The beats (from 0) at which a group starts."""
        return frozenset(sum(self.groups[:n]) for n in range(len(self.groups)))


PULSES = (
    Pulse("4/4", (2, 2), 4),
    Pulse("4/4", (2, 2), 4),
    Pulse("3/4", (3,), 4),
    Pulse("6/8", (3, 3), 8),
    Pulse("7/8 (2+2+3)", (2, 2, 3), 8),
    Pulse("5/4", (3, 2), 4),
    Pulse("12/8", (3, 3, 3, 3), 8),
)
"""The meters of an archive, the common one twice."""


@dataclass(frozen=True)
class Slot:
    """A column: what is counted there, its beat (from 0) and whether a beat or a group starts."""

    label: str
    beat: int
    opens_beat: bool
    opens_group: bool


@dataclass(frozen=True)
class Row:
    """A row: its label, what is typed at each slot of each bar, and what fills the rest.

    What stands in a row that is `loose` may run on over the columns after it.
    """

    label: str
    bars: Sequence[Mapping[int, str]]
    fill: str = " "
    loose: bool = False


@dataclass(frozen=True)
class System:
    """Some bars with their rows: `opens` and `closes` are what the count row has at their ends."""

    slots: Sequence[Sequence[Slot]]
    rows: Sequence[Row]
    opens: Sequence[str]
    closes: Sequence[str]


def count_bar(pulse: Pulse, parts: int, draw: Random) -> tuple[Slot, ...]:
    """Return the columns of a bar whose beats have one, two or four; now and then a triplet."""
    marks = {1: (), 2: ("&",), 4: ("e", "&", "a")}[parts]
    slots = []
    for beat in range(pulse.beats):
        triplet = pulse.unit == 4 and parts == 2 and draw.random() < 0.06
        slots.append(Slot(str(beat + 1), beat, True, beat in pulse.starts))
        slots += [Slot(mark, beat, False, False) for mark in (("la", "li") if triplet else marks)]
    return tuple(slots)


def type_system(system: System) -> list[str]:
    """Return the lines of a system, the count row first."""
    labels = max(len(row.label) for row in system.rows)
    count = Row("count", [{n: slot.label for n, slot in enumerate(bar)} for bar in system.slots])
    widths = [_widths(bar, system, [count, *system.rows]) for bar in range(len(system.slots))]
    return [_type_row(row, system, widths, max(labels, 5)) for row in (count, *system.rows)]


def _widths(bar: int, system: System, rows: Sequence[Row]) -> list[int]:
    return [
        max(_NARROWEST, *(len(row.bars[bar].get(n, "")) + 1 for row in rows if _tight(row)))
        for n in range(len(system.slots[bar]))
    ]


def _tight(row: Row) -> bool:
    return not row.loose and bool(row.bars)


def _type_row(row: Row, system: System, widths: Sequence[Sequence[int]], labels: int) -> str:
    line = row.label.ljust(labels) + " "
    if not row.bars:
        return row.label
    is_count = row.label == "count"
    for bar, opens in enumerate(system.opens):
        line += (opens if is_count else "|").ljust(len(opens)) + " "
        line += _type_bar(row, bar, widths[bar])
        line += system.closes[bar] if is_count else row.fill * len(system.closes[bar])
    return line + "|"


def _type_bar(row: Row, bar: int, widths: Sequence[int]) -> str:
    text = [row.fill] * sum(widths)
    for slot, typed in row.bars[bar].items():
        at = sum(widths[:slot])
        text[at : at + len(typed)] = typed
    return "".join(text[: sum(widths)])
