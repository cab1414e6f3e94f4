"""The degrees that chord symbols speak of: a number over the root and its alteration."""

from msgspec import Struct

from sitegen.score.interval import Interval
from sitegen.score.pitch import PitchName, alteration_sign

# Semitones of the major or perfect interval over 0 to 6 letter steps.
_PLAIN = (0, 2, 4, 5, 7, 9, 11)


class ChordDegree(Struct, frozen=True, order=True, gc=False):
    """A degree over a root: 1 to 13, altered in semitones against the major scale: ♭7 is 7, -1."""

    number: int
    alteration: int = 0

    def __str__(self) -> str:
        return "R" if self == ROOT else f"{alteration_sign(self.alteration)}{self.number}"

    @property
    def step(self) -> int:
        """Letters above the root, within an octave: 9 and 2 are 1."""
        return (self.number - 1) % 7

    @property
    def semitones(self) -> int:
        """Half steps above the root, 0 to 11: 9 and 2 are 2."""
        return (_PLAIN[self.step] + self.alteration) % 12

    @property
    def same_note(self) -> tuple[int, int]:
        """What it shares with its octave: equal for 2 and 9, 4 and 11, 6 and 13."""
        return self.step, self.alteration

    def above(self, root: PitchName) -> PitchName:
        """Return the spelled name of this degree over `root`."""
        interval = Interval(self.step, _PLAIN[self.step] + self.alteration)
        return interval.above_name(root)

    @classmethod
    def read(cls, text: str) -> "ChordDegree":
        """Return the degree written as the tables of this room write it: `R`, `♭7`, `♯11`."""
        if text == "R":
            return ROOT
        number = text.lstrip("♭♯")
        signs = text[: len(text) - len(number)]
        return cls(int(number), signs.count("♯") - signs.count("♭"))


ROOT = ChordDegree(1)


def read_degrees(text: str) -> frozenset[ChordDegree]:
    """Return the degrees written with spaces between them, `R ♭3 5`."""
    return frozenset(ChordDegree.read(word) for word in text.split())
