"""Which accidentals are printed: what differs from the signature and from earlier in the bar."""

from sitegen.score.key import Key
from sitegen.score.pitch import Pitch

_SOUNDING = {-3: "tf", -2: "ff", -1: "f", 0: "n", 1: "s", 2: "ss", 3: "ts"}
_PRINTED = {**_SOUNDING, 2: "x"}


class Accidentals:
    """The accidentals in force on one staff, bar after bar.

    A sign holds for its line or space to the end of the bar; a note tied over the bar line
    keeps its own without one.
    """

    def __init__(self, key: Key | None) -> None:
        self._signature = signature(key)
        self._in_bar: dict[tuple[str, int], int] = {}

    def open_bar(self) -> None:
        """Forget what the bar before has set."""
        self._in_bar.clear()

    def of(self, pitch: Pitch, *, tied_from_before: bool) -> dict[str, str | None]:
        """Return the attributes `accid` (printed) and `accid.ges` (sounding only) of a note."""
        alteration = pitch.name.alteration
        place = (pitch.name.letter, pitch.octave)
        in_force = self._in_bar.get(place, self._signature.get(pitch.name.letter, 0))
        if tied_from_before or alteration == in_force:
            return {"accid_ges": _SOUNDING[alteration] if alteration else None}
        self._in_bar[place] = alteration
        return {"accid": _PRINTED[alteration]}


def signature(key: Key | None) -> dict[str, int]:
    """Return the alteration that the key signature gives each letter it alters."""
    fifths = signature_fifths(key)
    sign = 1 if fifths > 0 else -1
    letters = "FCGDAEB" if fifths > 0 else "BEADGCF"
    return dict.fromkeys(letters[: abs(fifths)], sign)


def signature_fifths(key: Key | None) -> int:
    """Return the signature as sharps (or flats, negative); none where it would pass seven."""
    fifths = key.fifths if key is not None else 0
    return fifths if abs(fifths) <= 7 else 0  # noqa: PLR2004


def signature_text(key: Key | None) -> str:
    """Return the signature as MEI writes it: `3f`, `2s`, `0`."""
    fifths = signature_fifths(key)
    return f"{abs(fifths)}{'s' if fifths > 0 else 'f'}" if fifths else "0"
