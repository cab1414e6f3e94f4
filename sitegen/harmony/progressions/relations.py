"""Relations between two rows of chords that either hold or do not: equal, rotated, contained."""

from collections.abc import Iterator

from msgspec import Struct

from sitegen.harmony.progressions.likeness import Holder
from sitegen.harmony.progressions.progression import Progression
from sitegen.harmony.progressions.rows import Row

# Any two chords are found anywhere once they may be moved, and any two loops of two are rotated.
_FEWEST_MOVED = 3
_FEWEST_CONTAINED = 2


class Relation(Struct, frozen=True, gc=False):
    """A relation of two rows, the first moved up by `shift` semitones.

    `start` is where the other one starts in the holder or, where neither contains the other,
    where the second starts in the first.
    """

    shift: int
    start: int
    with_extensions: bool
    holder: Holder = ""

    @property
    def rank(self) -> tuple[bool, bool, bool, bool, int]:
        """Lower for what a musician would rather say: the key kept, then the order, then all."""
        contained = bool(self.holder)
        rotated = not contained and self.start > 0
        return contained, self.shift > 0, rotated, not self.with_extensions, self.start


def row_of(progression: Progression, *, with_extensions: bool) -> Row:
    """Return the row of a progression on which relations of either level are looked for."""
    return progression.row if with_extensions else progression.core_row


def equalities(first: Progression, second: Progression) -> Iterator[Relation]:
    """Yield every way in which two progressions, each reduced, are equal, rotated or not."""
    for exact in (True, False):
        a, b = (row_of(p.reduced, with_extensions=exact).reduced for p in (first, second))
        if not len(a) or len(a) != len(b):
            continue
        for start in range(len(a)):
            shift = (b.roots[0] - a.roots[start]) % 12
            plain = exact and not start
            if _fits(a, b, start) and (plain or _is_telling(len(a), shift)):
                yield Relation(shift, start, with_extensions=exact)


def containments(first: Progression, second: Progression) -> Iterator[Relation]:
    """Yield every run of one progression, as played, that is the whole of the other, reduced."""
    for exact in (True, False):
        a, b = (row_of(p, with_extensions=exact) for p in (first, second))
        for start, up in _runs(b.reduced, a):
            if _is_telling(len(b.reduced), up):
                yield Relation(-up % 12, start, with_extensions=exact, holder="first")
        for start, up in _runs(a.reduced, b):
            if _is_telling(len(a.reduced), up):
                yield Relation(up, start, with_extensions=exact, holder="second")


def _runs(small: Row, large: Row) -> Iterator[tuple[int, int]]:
    """Yield where the small row stands in the large one, and how much higher."""
    if not _FEWEST_CONTAINED <= len(small) < len(large.reduced):
        return
    line = _places(small)[:-1]
    places = _places(large)
    for start in range(len(large) - len(small) + 1):
        end = start + len(line)
        if places[start:end] == line and large.signs[end] == small.signs[-1]:
            yield start, (large.roots[start] - small.roots[0]) % 12


def _places(row: Row) -> list[tuple[str, int]]:
    return list(zip(row.signs, row.motions, strict=True))


def _fits(first: Row, second: Row, start: int) -> bool:
    """Tell whether the second row is the first one begun at `start`, in any key."""
    signs = first.signs[start:] + first.signs[:start]
    motions = first.motions[start:] + first.motions[:start]
    return signs == second.signs and motions[:-1] == second.motions[:-1]


def _is_telling(length: int, shift: int) -> bool:
    return length >= _FEWEST_MOVED or not shift
