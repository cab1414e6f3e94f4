"""What speaks for the sharp name, and what for the flat name, of a note outside its signature.

`WEIGHTS` is what `tests/bench/estimate_spelling.py` prints: a logistic regression over two of
every three Bach chorales and tunes of Ryan's Mammoth Collection, held to what books on harmony
teach where the music says little. Positive weights speak for the sharp.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class SpellingProfile:
    """Numbers for all that may speak for a name: as evidence what is there, or what it weighs.

    - `usual`: the note is the ♯4 (or ♭5) of the signature's major key, its ♯1, ♯5, ♯2 or ♯6.
    - `motion`: the very notes before and after it, as `motion_place` counts them.
    - `source`, `goal`: the last note before it, and the first after it, that lies at most a whole
      tone away: from a whole tone below it to a whole tone above; the middle one is for none.
    - `near`: the share that each pitch class, from the note's own up, has of the notes right
      around it: the chord. `around`: the same of more notes, the key of the passage.
    """

    usual: tuple[float, ...]
    motion: tuple[float, ...]
    source: tuple[float, ...]
    goal: tuple[float, ...]
    near: tuple[float, ...]
    around: tuple[float, ...]

    @property
    def numbers(self) -> tuple[float, ...]:
        """All numbers in one row."""
        return (
            *self.usual,
            *self.motion,
            *self.source,
            *self.goal,
            *self.near,
            *self.around,
        )


def motion_place(before: int, after: int) -> int:
    """Return the place in `motion` of semitones to the neighbours: -1, 1 or another, each."""
    return 3 * _side(before) + _side(after)


def _side(semitones: int) -> int:
    return 1 + semitones if abs(semitones) == 1 else 1


WEIGHTS = SpellingProfile(
    usual=(8.0, 0.4, 0.6, 0.1, -1.1),
    motion=(-4.0, 0.1, 4.0, -3.8, 0.3, 3.6, -4.0, -0.3, 4.2),
    source=(0.2, -0.2, 0.0, 0.3, -0.3),
    goal=(0.1, -0.9, -0.2, 1.0, 0.0),
    near=(-0.1, 2.2, -3.1, 4.5, -6.2, 1.0, 2.3, -5.0, 7.5, -4.7, 2.3, -2.0),
    around=(-0.1, 6.6, -7.4, 4.9, -2.3, 1.3, -0.1, -5.2, 8.4, -5.5, 1.8, -3.9),
)
"""In natural log-odds for the sharp."""
