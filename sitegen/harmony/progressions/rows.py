"""What a progression is made of: bars with their chords, steps, rows of roots and signs."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from itertools import groupby

from msgspec import Struct

from sitegen.harmony.progressions.cores import Core
from sitegen.harmony.progressions.loops import shortest_period
from sitegen.score.chord import Chord, NoChord

Change = tuple[Fraction, Chord | NoChord]
"""A chord and where in its bar it starts, in quarters."""


class Step(Struct, frozen=True):
    """A chord of a progression for as long as it lasts, in quarters.

    `bar` and `last_bar` are the written numbers of the bars where it starts and where it last
    sounds, `offset` is how many quarters after its bar line it starts.
    """

    chord: Chord
    duration: Fraction
    bar: int
    last_bar: int
    offset: Fraction = Fraction(0)


class ChordBar(Struct, frozen=True):
    """One bar as it is played: its written number, its length in quarters, its chords.

    A chord that sounds on from the bar before stands at 0 again; a bar before the first chord
    has none.
    """

    number: int
    length: Fraction
    changes: tuple[Change, ...]

    @property
    def steps(self) -> tuple[Step, ...]:
        """The bar's chords, silence left out, each for as long as it lasts there."""
        ends = [*(start for start, _ in self.changes[1:]), self.length]
        return tuple(
            Step(chord, end - start if start else end, self.number, self.number, start)
            for (start, chord), end in zip(self.changes, ends, strict=False)
            if isinstance(chord, Chord)
        )


@dataclass(frozen=True)
class Row:
    """A progression as pitch classes and signs of quality, for comparing.

    `steps` says for each place of the row at which step it starts.
    """

    roots: tuple[int, ...]
    signs: tuple[str, ...]
    steps: tuple[int, ...]

    def __len__(self) -> int:
        return len(self.roots)

    @cached_property
    def motions(self) -> tuple[int, ...]:
        """Semitones up from each root to the next, and last from the last root to the first."""
        after = (*self.roots[1:], *self.roots[:1])
        return tuple((b - a) % 12 for a, b in zip(self.roots, after, strict=True))

    @cached_property
    def reduced(self) -> "Row":
        """The shortest row that, said once or more often in full, makes up this one."""
        length = shortest_period(list(zip(self.roots, self.signs, strict=True)))
        if length == len(self):
            return self
        return Row(self.roots[:length], self.signs[:length], self.steps[:length])


def make_row(cores: Sequence[Core], signs: Sequence[str]) -> Row:
    """Return the row of these chords, called by these signs, equal neighbours as one."""
    names = [(core.root, sign) for core, sign in zip(cores, signs, strict=True)]
    groups = [(name, len(list(same))) for name, same in groupby(names)]
    steps, place = [], 0
    for _, count in groups:
        steps.append(place)
        place += count
    roots = tuple(root for (root, _), _ in groups)
    return Row(roots, tuple(sign for (_, sign), _ in groups), tuple(steps))


class Line(Struct, frozen=True):
    """Chords in a row for measuring: each different one once, and the places of the row in it."""

    chords: tuple[Core, ...]
    places: tuple[int, ...]

    def __len__(self) -> int:
        return len(self.places)


def make_line(cores: Sequence[Core]) -> Line:
    """Return the line of these chords."""
    names = {core: place for place, core in enumerate(dict.fromkeys(cores))}
    return Line(tuple(names), tuple(names[core] for core in cores))
