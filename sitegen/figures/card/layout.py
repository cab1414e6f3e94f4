"""Where title and music stand on a card: one above the other, or side by side."""

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.figures.card.setting import set_title

WIDTH, HEIGHT = 1200, 630
"""The size in pixels that link previews ask for: 1.91 to 1 (common practice, no source)."""

SHAPE = 0.3
"""Height for a width of 1 of the room that a title of two lines leaves for music."""

MARGIN = 72
RULE = 88
"""How low the double rule under the head line stands."""

_HEAD, _FOOT = 122, HEIGHT - 40
_LEADING, _CAPITALS, _BELOW = 1.14, 0.72, 0.26
_AIR = 36
_BETWEEN = 48
_FULL = WIDTH - 2 * MARGIN
# The sizes that are tried in turn, each with the most lines that it may take.
_ABOVE = ((64, 2), (56, 2), (48, 3), (40, 3), (34, 4))
_BESIDE = ((50, 5), (44, 6), (38, 8), (32, 10))
_ALONE = ((84, 4), (72, 5), (60, 6), (48, 8), (36, 11))
_NARROW = 380
# Staff lines are at most 18 pixels apart: 180 of the engraver's units.
_LARGEST = 0.1
# Side by side is the second choice: it must make the music larger by this much.
_WORTH = 1.15


@dataclass(frozen=True)
class Layout:
    """A card laid out, in pixels.

    `lines` are those of the title, each with its foot; `place` is the left upper corner of the
    music and `scale` the pixels for one of its units.
    """

    size: float
    lines: tuple[tuple[float, str], ...]
    place: tuple[float, float] = (MARGIN, _HEAD)
    scale: float = 0


def lay_out(title: str, music: tuple[float, float, float, float] | None) -> Layout:
    """Return where things stand; `music` is left, top, width and height of what is to be shown.

    The music is as large as can be: it stands under the title, or at its right where it is
    high and would be small under it.
    """
    if music is None:
        return _centred(_titled(title, _FULL, _ALONE))
    above = _titled(title, _FULL, _ABOVE)
    head = above.lines[-1][0] + above.size * _BELOW + _AIR if above.lines else _HEAD
    under = _with_music(above, (MARGIN, head), music)
    right = (MARGIN + _NARROW + _BETWEEN, _HEAD)
    beside = _with_music(_titled(title, _NARROW, _BESIDE), right, music)
    return beside if title and beside.scale > _WORTH * under.scale else under


def _centred(titled: Layout) -> Layout:
    if not titled.lines:
        return titled
    spare = _FOOT - titled.lines[-1][0] - titled.size * _BELOW
    lines = tuple((foot + spare / 2, line) for foot, line in titled.lines)
    return Layout(titled.size, lines)


def _with_music(
    titled: Layout, place: tuple[float, float], music: tuple[float, float, float, float]
) -> Layout:
    _, _, width, height = music
    x, y = place
    scale = min(_LARGEST, (WIDTH - MARGIN - x) / width, (_FOOT - y) / height)
    spare = _FOOT - y - height * scale
    return Layout(titled.size, titled.lines, (x, y + spare / 2), scale)


def _titled(title: str, room: float, sizes: Sequence[tuple[int, int]]) -> Layout:
    size, lines = set_title(title, room, sizes)
    first = _HEAD + size * _CAPITALS
    feet = (first + number * size * _LEADING for number in range(len(lines)))
    return Layout(size, tuple(zip(feet, lines, strict=True)))
