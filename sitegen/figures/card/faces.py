"""The faces that cards are set in: what they hold, and how wide it is.

The system's fonts are left alone, so that a card is the same on every machine. What the card's
own face lacks, such as Greek or Cyrillic, is set in a serif face that comes with matplotlib, and
what that one lacks, such as Hebrew or Arabic, in its sister without serifs. The words of the
notation are set in another one of those, as wide as the face that verovio measures.
"""

import re
import unicodedata
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from importlib.util import find_spec
from pathlib import Path

FAMILY = "Card Text"
"""The family of a card's words."""

NOTATION_FAMILY = "STIXGeneral"
"""The family of the words in the notation: as wide as Times, which the engraver counts on."""

_FOLDER = Path(__file__).parent / "faces"
_ROMAN, _ITALIC = _FOLDER / "card-roman.ttf", _FOLDER / "card-italic.ttf"
_PLOTTING = "mpl-data/fonts/ttf"
_FALLBACKS = ("DejaVuSerif.ttf", "DejaVuSans.ttf")
_NOTATION = ("STIXGeneral.ttf", "STIXGeneralItalic.ttf", "STIXGeneralBol.ttf")
# Letters and numbers carry the sense of a text; it can do without signs and ornaments.
_WORDS = ("L", "N")


@dataclass(frozen=True)
class _Face:
    """The advance width of every character that a font file holds, in parts of its size."""

    path: Path
    widths: Mapping[str, float]


def face_files() -> tuple[Path, ...]:
    """Return the font files that a card needs, without the signs of the notation."""
    more = (_plotting_face(name) for name in (*_FALLBACKS, *_NOTATION))
    return (_ROMAN, _ITALIC, *more)


@lru_cache(maxsize=1024)
def settable(text: str) -> str:
    """Return a text as the faces can set it: without signs that they lack.

    "" when they lack one of its letters or numbers: half a name says less than none.
    """
    plain = unicodedata.normalize("NFC", re.sub(r"\s+", " ", text))
    lacking = {char for char in plain if not _is_held(char)}
    if any(unicodedata.category(char).startswith(_WORDS) for char in lacking):
        return ""
    return " ".join("".join(char for char in plain if char not in lacking).split())


@lru_cache(maxsize=1024)
def text_width(text: str, size: float, *, italic: bool = False) -> float:
    """Return the width of a settable text, without kerning, in the unit of `size`."""
    own = _face(_ITALIC if italic else _ROMAN).widths
    return size * sum(own[char] if char in own else _fallback_width(char) for char in text)


def _is_held(char: str) -> bool:
    # Controls and marks of direction have no place in one line (categories Cc, Cf, Co, Cs).
    if unicodedata.category(char).startswith("C"):
        return False
    return char in _face(_ROMAN).widths or any(char in face.widths for face in _fallbacks())


def _fallback_width(char: str) -> float:
    return next((face.widths[char] for face in _fallbacks() if char in face.widths), 0)


def _fallbacks() -> Iterator[_Face]:
    return (_face(_plotting_face(name)) for name in _FALLBACKS)


@lru_cache
def _plotting_face(name: str) -> Path:
    """Return a font file of matplotlib's, which need not be imported for that."""
    found = find_spec("matplotlib")
    if found is None or found.origin is None:
        raise FileNotFoundError("matplotlib, which sitegen needs, is not installed")
    return Path(found.origin).parent / _PLOTTING / name


@lru_cache
def _face(path: Path) -> _Face:
    from fontTools.ttLib import TTFont  # noqa: PLC0415 - only a build needs it

    with TTFont(path, lazy=True) as font:
        em = font["head"].unitsPerEm
        advances = font["hmtx"].metrics
        letters = font.getBestCmap().items()
        widths = {chr(code): advances[name][0] / em for code, name in letters}
    return _Face(path, widths)
