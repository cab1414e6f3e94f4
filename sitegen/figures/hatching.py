r"""Hatchings that tell areas apart without colour, as patterns of SVG.

A hatching is named by the sign that looks like it: `/`, `\`, `x`, `-`, `|` or `+`.
"""

from xml.etree import ElementTree as ET

_TILE = 72
"""Side of a tile: a large one, so that few of its edges lie in what is filled."""

_SLANTING, _STRAIGHT = 8, 4
"""How far apart lines are: slanting ones along an edge of the tile, straight ones across."""

_WEIGHT = 0.6


def _rising() -> str:
    # Slanting lines reach over the tile's edges: their ends are cut off square.
    starts = range(-_TILE, _TILE + 1, _SLANTING)
    return "".join(f"M{start - 1} {_TILE + 1}l{_TILE + 2}-{_TILE + 2}" for start in starts)


def _falling() -> str:
    starts = range(-_TILE, _TILE + 1, _SLANTING)
    return "".join(f"M{start - 1}-1l{_TILE + 2} {_TILE + 2}" for start in starts)


def _level() -> str:
    return "".join(f"M0 {y}h{_TILE}" for y in range(_STRAIGHT // 2, _TILE, _STRAIGHT))


def _upright() -> str:
    return "".join(f"M{x} 0v{_TILE}" for x in range(_STRAIGHT // 2, _TILE, _STRAIGHT))


_LINES = {
    "/": _rising(),
    "\\": _falling(),
    "x": _rising() + _falling(),
    "-": _level(),
    "|": _upright(),
    "+": _level() + _upright(),
}


def hatch_pattern(name: str, sign: str, fill: str, ink: str) -> ET.Element:
    """Return the pattern of a hatching, whose id is `name`: lines in `ink` on a ground of `fill`.

    Raises KeyError for a sign that names no hatching.
    """
    side = str(_TILE)
    attributes = {"id": name, "patternUnits": "userSpaceOnUse", "width": side, "height": side}
    pattern = ET.Element("pattern", attributes)
    ET.SubElement(pattern, "rect", {"width": side, "height": side, "fill": fill})
    style = f"fill: none; stroke: {ink}; stroke-width: {_WEIGHT}"
    ET.SubElement(pattern, "path", {"d": _LINES[sign], "style": style})
    return pattern
