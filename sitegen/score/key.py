"""Keys: a tonic and one of the seven modes of the major scale."""

import re
from functools import lru_cache

from msgspec import Struct

from sitegen.score.interval import Interval
from sitegen.score.pitch import PitchName

# How many fifths the signature lies below that of the major key on the same tonic.
_BELOW_MAJOR = {
    "lydian": -1,
    "major": 0,
    "mixolydian": 1,
    "dorian": 2,
    "minor": 3,
    "phrygian": 4,
    "locrian": 5,
}
_OTHER_NAMES = {"aeolian": "minor", "natural minor": "minor", "ionian": "major"}
_SPOKEN = re.compile(r"^([A-G]) (flat|sharp)\b", re.IGNORECASE)
MODES: tuple[str, ...] = tuple(_BELOW_MAJOR)
"""The modes that a key can have, from the brightest to the darkest."""


class Key(Struct, frozen=True, gc=False):
    """A tonic and a mode; `minor` is natural minor, whose scale is the aeolian."""

    tonic: PitchName
    mode: str = "major"

    def __str__(self) -> str:
        return f"{self.tonic} {self.mode}"

    @property
    def fifths(self) -> int:
        """The key signature: so many sharps, or flats when negative; may pass 7 for odd tonics."""
        return self.tonic.fifths - _BELOW_MAJOR[self.mode]

    @property
    def scale(self) -> tuple[PitchName, ...]:
        """The seven names of the scale, from the tonic up."""
        return _scale(self)

    @property
    def is_minor(self) -> bool:
        """True when the third of the scale is minor."""
        return Interval.between_names(self.tonic, self.scale[2]).semitones == 3  # noqa: PLR2004

    @classmethod
    def read(cls, text: str) -> "Key":
        """Return the key written as tonic and mode: `Eb minor`, `G`, `E flat dorian`, `F♯m`.

        `major` when no mode is said. Raises ValueError for other text.
        """
        spoken = _SPOKEN.sub(lambda m: m[1] + {"f": "♭", "s": "♯"}[m[2][0].lower()], text.strip())
        words = spoken.split(maxsplit=1)
        if len(words) == 1 and len(words[0]) > 1 and words[0].endswith("m"):
            words = [words[0][:-1], "minor"]
        if not words:
            raise ValueError(f'"{text}" is not a key')
        said = " ".join(words[1].lower().split()) if len(words) > 1 else "major"
        mode = _OTHER_NAMES.get(said, said)
        if mode not in MODES:
            raise ValueError(f'"{words[1]}" is not a mode')
        return cls(PitchName.read(words[0]), mode)


@lru_cache(maxsize=256)
def _scale(key: Key) -> tuple[PitchName, ...]:
    names = [PitchName.at_fifths(place) for place in range(key.fifths - 1, key.fifths + 6)]
    return tuple(sorted(names, key=lambda name: (name.step - key.tonic.step) % 7))
