"""Spelled intervals: so many letter steps and so many semitones."""

from msgspec import Struct

from sitegen.score.pitch import LETTERS, NATURAL_CLASSES, Pitch, PitchName

# Semitones of the perfect or major interval over 0 to 6 letter steps.
_PLAIN = (0, 2, 4, 5, 7, 9, 11)
_PERFECT = frozenset({0, 3, 4})


class Interval(Struct, frozen=True, gc=False):
    """A directed interval; `steps` counts letters (a third is 2), `semitones` half steps."""

    steps: int
    semitones: int

    def __neg__(self) -> "Interval":
        return Interval(-self.steps, -self.semitones)

    @property
    def name(self) -> str:
        """The usual short name: P1, m2, A4, d5, M9; a leading - when it falls."""
        if self.steps < 0 or (self.steps == 0 and self.semitones < 0):
            return "-" + (-self).name
        octaves, step = divmod(self.steps, 7)
        offset = self.semitones - 12 * octaves - _PLAIN[step]
        return f"{_quality(step, offset)}{self.steps + 1}"

    def above(self, pitch: Pitch) -> Pitch:
        """Return the pitch this interval above `pitch`."""
        octave, step = divmod(pitch.place + self.steps, 7)
        letter = LETTERS[step]
        natural = 12 * (octave + 1) + NATURAL_CLASSES[letter]
        return Pitch(PitchName(letter, pitch.midi + self.semitones - natural), octave)

    def above_name(self, name: PitchName) -> PitchName:
        """Return the pitch name this interval above `name`."""
        return self.above(Pitch(name, 4)).name

    @classmethod
    def between(cls, low: Pitch, high: Pitch) -> "Interval":
        """Return the interval from `low` to `high`; negative when `high` lies lower."""
        return cls(high.place - low.place, high.midi - low.midi)

    @classmethod
    def between_names(cls, low: PitchName, high: PitchName) -> "Interval":
        """Return the ascending interval within an octave from one name to another."""
        steps = (high.step - low.step) % 7
        offset = (high.pitch_class - low.pitch_class - _PLAIN[steps] + 6) % 12 - 6
        return cls(steps, _PLAIN[steps] + offset)


def _quality(step: int, offset: int) -> str:
    if step in _PERFECT:
        names = {0: "P"}
        diminished = -offset
    else:
        names = {0: "M", -1: "m"}
        diminished = -offset - 1
    if offset in names:
        return names[offset]
    return "A" * offset if offset > 0 else "d" * diminished
