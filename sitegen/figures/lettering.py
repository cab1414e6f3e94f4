"""How much room a text takes in a font that the page chooses: a careful estimate.

Widths are those of DejaVu Serif, rounded up: few text faces are wider.
"""

import re
import unicodedata

_WIDTHS = {
    **dict.fromkeys("ijl.,:;'’′!| ", 0.34),
    **dict.fromkeys("ftI()[]-", 0.42),
    **dict.fromkeys("rs", 0.52),
    **dict.fromkeys("acekovxyz", 0.61),
    **dict.fromkeys("mwMW@%—", 1.05),
}
_CAPITAL, _OTHER, _FULL_WIDTH = 0.83, 0.66, 1.05
# A number stays with the word before it.
_BREAK = re.compile(r"\s+(?!\d)")


def text_width(text: str, size: float) -> float:
    """Return the width in pixels that `text` stays within at `size`, in usual text faces."""
    return size * sum(_letter_width(letter) for letter in text)


def _letter_width(letter: str) -> float:
    if letter in _WIDTHS:
        return _WIDTHS[letter]
    if unicodedata.combining(letter):
        return 0
    if unicodedata.east_asian_width(letter) in "WF":
        return _FULL_WIDTH
    return _CAPITAL if letter.isupper() else _OTHER


def fit_lines(text: str, size: float, room: float, *, lines: int) -> tuple[str, ...]:
    """Return `text` broken at spaces into at most `lines` lines of `room` pixels.

    Nothing is returned when it does not fit: half a name says less than none.
    """
    broken: list[str] = []
    for word in _BREAK.split(text):
        longer = f"{broken[-1]} {word}" if broken else word
        if broken and text_width(longer, size) <= room:
            broken[-1] = longer
        else:
            broken.append(word)
    fits = len(broken) <= lines and all(text_width(line, size) <= room for line in broken)
    return tuple(broken) if fits else ()
