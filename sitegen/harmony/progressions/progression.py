"""A progression as it is compared: the bars that are played and the chords in them."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from msgspec.structs import replace

from sitegen.harmony.progressions.cores import Core, core
from sitegen.harmony.progressions.loops import Loop, find_loop
from sitegen.harmony.progressions.rows import ChordBar, Line, Row, Step, make_line, make_row
from sitegen.score.chord import Chord, NoChord
from sitegen.score.key import Key

_FOUR_QUARTERS = Fraction(4)


@dataclass(frozen=True)
class Progression:
    """Chords in the order in which they are played, with their durations and bars.

    Repeats are played out. `key` is the key it is in, None where none is known.
    """

    bars: tuple[ChordBar, ...]
    key: Key | None = None

    @cached_property
    def steps(self) -> tuple[Step, ...]:
        """The chords, equal neighbours drawn together; silence (N.C.) belongs to none of them.

        A chord that comes back after N.C. is one chord with itself.
        """
        steps: list[Step] = []
        for bar in self.bars:
            for step in bar.steps:
                if steps and steps[-1].chord == step.chord:
                    longer = steps[-1].duration + step.duration
                    steps[-1] = replace(steps[-1], duration=longer, last_bar=bar.number)
                else:
                    steps.append(step)
        return tuple(steps)

    @cached_property
    def cores(self) -> tuple[Core, ...]:
        """The core of every step."""
        return tuple(core(step.chord) for step in self.steps)

    @cached_property
    def row(self) -> Row:
        """The steps with their full qualities and basses."""
        return make_row(self.cores, [core.notes for core in self.cores])

    @cached_property
    def core_row(self) -> Row:
        """The steps up to extensions; C C7 is one place."""
        return make_row(self.cores, [core.family for core in self.cores])

    @cached_property
    def loop(self) -> Loop | None:
        """The loop that makes up more than half of it; None where none does.

        A loop has the same chords at the same places of its bars every time, and two chords at
        least.
        """
        loop = find_loop([(bar.length, bar.changes) for bar in self.bars])
        if loop is None or len(self._cut(loop).row) < 2:  # noqa: PLR2004
            return None
        return loop

    @cached_property
    def cell(self) -> "Progression":
        """One pass of its loop; the whole of it where there is none."""
        return self._cut(self.loop) if self.loop else self

    @cached_property
    def line(self) -> Line:
        """The chords of its row, reduced, for measuring."""
        return make_line([self.cores[place] for place in self.row.reduced.steps])

    @property
    def reduced(self) -> "Progression":
        """One pass where it is a loop and nothing else; the whole of it otherwise."""
        return self.cell if self.loop and self.loop.whole else self

    def _cut(self, loop: Loop) -> "Progression":
        return Progression(self.bars[loop.first : loop.first + loop.length], self.key)


def make_progression(
    chords: Iterable[Chord | NoChord | Sequence[Chord | NoChord]],
    key: Key | None = None,
    length: Fraction = _FOUR_QUARTERS,
) -> Progression:
    """Return a progression of bars of one length, in quarters; chords share a bar evenly."""
    bars = []
    for number, content in enumerate(chords, start=1):
        held = [content] if isinstance(content, Chord | NoChord) else content
        changes = tuple((length * n / len(held), chord) for n, chord in enumerate(held))
        bars.append(ChordBar(number, length, changes))
    return Progression(tuple(bars), key)
