"""The metrical hierarchy of a bar: halves, beats and their divisions, as nested cells."""

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from functools import cached_property, lru_cache

from sitegen.score.meter import Meter


class Division(Enum):
    """How a cell falls into smaller ones, which decides what may be written across them."""

    DUPLE = "two halves"
    TRIPLE = "three beats of simple time"
    COMPOUND = "three divisions of one beat"
    GROUPS = "groups that stay visible"
    UNITS = "the units of a tuplet"


@dataclass(frozen=True)
class Cell:
    """A stretch of a bar; `start` and `length` in quarter notes from the bar's first beat.

    `cells` are its divisions; a duple cell without any divides into halves without end.
    `is_beat` marks the beat that the player feels: the level of beams and tuplets.
    """

    start: Fraction
    length: Fraction
    division: Division = Division.DUPLE
    inner: tuple["Cell", ...] = ()
    is_beat: bool = False

    @cached_property
    def end(self) -> Fraction:
        """The offset of whatever follows."""
        return self.start + self.length

    @cached_property
    def cells(self) -> tuple["Cell", ...]:
        """The cells one level down."""
        if self.inner:
            return self.inner
        half = self.length / 2
        return (Cell(self.start, half), Cell(self.start + half, half))

    @cached_property
    def edges(self) -> tuple[Fraction, ...]:
        """The offsets at which its cells meet."""
        return tuple(cell.start for cell in self.cells[1:])

    @cached_property
    def holds_beats(self) -> bool:
        """True for a cell above the beat."""
        return not self.is_beat and any(cell.is_beat or cell.holds_beats for cell in self.inner)


@lru_cache(maxsize=256)
def metrical_cells(meter: Meter) -> Cell:
    """Return the hierarchy of one full bar of `meter`.

    Beats are the counts of a simple meter, the groups of a compound one and of any meter that
    counts eighths or shorter: 7/8 as 2+2+3 has three beats.
    """
    counts = meter.groups
    if meter.is_compound or (meter.unit > 4 and max(counts) > 1):  # noqa: PLR2004
        groups = [_beat(start, n, meter.beat) for start, n in _starts(meter)]
    else:
        groups = [_beats(start, n, meter.beat) for start, n in _starts(meter)]
    return _joined(groups)


def tuplet_cells(count: int, unit: Fraction) -> Cell:
    """Return the hierarchy of a tuplet of `count` units, in written quarter notes from 0."""
    units = tuple(Cell(n * unit, unit) for n in range(count))
    return Cell(Fraction(0), count * unit, Division.UNITS, units, is_beat=True)


def beats_of(cell: Cell) -> tuple[Cell, ...]:
    """Return the beats of `cell` in order."""
    if cell.is_beat:
        return (cell,)
    return tuple(beat for inner in cell.inner for beat in beats_of(inner))


def _starts(meter: Meter) -> list[tuple[Fraction, int]]:
    return list(zip(meter.group_starts, meter.groups, strict=True))


def _beat(start: Fraction, count: int, unit: Fraction) -> Cell:
    """Return one beat that holds `count` counted units."""
    inner = tuple(Cell(start + n * unit, unit) for n in range(count))
    if count in (1, 2, 4, 8):
        return Cell(start, count * unit, is_beat=True)
    if count == 3:  # noqa: PLR2004
        return Cell(start, 3 * unit, Division.COMPOUND, inner, is_beat=True)
    return Cell(start, count * unit, Division.GROUPS, inner, is_beat=True)


def _beats(start: Fraction, count: int, unit: Fraction) -> Cell:
    """Return a group of `count` beats of one unit each."""
    return _joined([Cell(start + n * unit, unit, is_beat=True) for n in range(count)])


def _joined(cells: list[Cell]) -> Cell:
    """Return one cell over `cells`, with the levels between that a reader looks for."""
    count = len(cells)
    if count == 1:
        return cells[0]
    alike = len({cell.length for cell in cells}) == 1
    if alike and count > 2 and count % 2 == 0:  # noqa: PLR2004
        half = count // 2
        return _joined([_joined(cells[:half]), _joined(cells[half:])])
    division = Division.GROUPS
    simple = all(_is_simple(cell) for cell in cells)
    if alike and simple and count in (2, 3):
        division = Division.DUPLE if count == 2 else Division.TRIPLE  # noqa: PLR2004
    length = sum((cell.length for cell in cells), Fraction(0))
    return Cell(cells[0].start, length, division, tuple(cells))


def _is_simple(cell: Cell) -> bool:
    return cell.division is Division.DUPLE
