"""The first systems of an engraved chart, cut out of its drawing."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from xml.etree import ElementTree as ET
from xml.etree.ElementTree import Element

from sitegen.engraving.markup import serialise

_STAFF_LINES = re.compile(r"M(-?[\d.]+) -?[\d.]+H")
_LINES_ACROSS = re.compile(r"(?:M-?[\d.]+ (-?[\d.]+)H-?[\d.]+)+")
_ACROSS = re.compile(r"M-?[\d.]+ (-?[\d.]+)H")
# A path of straight strokes between given points, and the heights in it.
_STRAIGHT = re.compile(r"(?:[ML]-?[\d.]+ -?[\d.]+|[HV]-?[\d.]+)+")
_HEIGHT = re.compile(r"(?:[ML]-?[\d.]+ |V)(-?[\d.]+)")
_SCALED = re.compile(r"scale\(([-\d.]+),\s*([-\d.]+)\)")
# How far letters reach below their line, in parts of their size; and the air below the music.
_DESCENT, _AIR = 0.25, 180.0
# Nothing stands further left than a bracket where no instrument is named.
_BRACKET = -200.0
_INHERITED = ("fill", "stroke", "stroke-width", "font-size")


@dataclass(frozen=True)
class Opening:
    """Whole systems from the start of a drawing.

    `elements` is SVG without an outermost element, drawn in `currentColor`, with the glyphs that
    it uses; `box` is its left, top, width and height, in its own units; `look` are the
    attributes that hold for all of it.
    """

    elements: str
    box: tuple[float, float, float, float]
    look: Mapping[str, str]

    @property
    def shape(self) -> float:
        """Height for a width of 1."""
        return self.box[3] / self.box[2]


@dataclass(frozen=True)
class _System:
    """The elements of one system in their order, and the lowest point of each."""

    elements: tuple[Element, ...]
    bottom: float


def cut_opening(svg: str, glyphs: Mapping[str, str], shape: float) -> Opening:
    """Return as many systems of an engraving as stay within `shape`, at least the first.

    `svg` and `glyphs` are a chart as `sitegen.engraving` draws it; `shape` is height for a width
    of 1. Raises ValueError for a drawing that holds no bar.
    """
    root = ET.fromstring(svg)  # noqa: S314 - drawn by this program
    left, top, width, height = map(float, root.get("viewBox", "").split())
    feet = {name: _glyph_foot(outline) for name, outline in glyphs.items()}
    systems = _systems(root, feet)
    if not systems:
        raise ValueError("the drawing holds no bar")
    bottoms = [system.bottom + _AIR for system in systems[:-1]] + [top + height]
    count = max([1, *(n for n, end in enumerate(bottoms, 1) if (end - top) / width <= shape)])
    kept = [element for system in systems[:count] for element in system.elements]
    start = left if any(element.get("class") == "label" for element in kept) else _BRACKET
    box = (start, top, width - (start - left), bottoms[count - 1] - top)
    look = {name: root.get(name, "") for name in _INHERITED if name in root.attrib}
    return Opening(_definitions(kept, glyphs) + _written(kept), box, look)


def _systems(root: Element, feet: Mapping[str, float]) -> list[_System]:
    """Return the systems of a drawing. A bar that starts left of the one before opens another.

    What stands between the last bar of a system and the first of the next belongs to whichever
    it lies in: a tie that comes in from the line above, or a bracket and the staves' names.
    """
    groups: list[list[Element]] = [[]]
    between: list[Element] = []
    before = None
    for element in root:
        start = _bar_start(element)
        if start is None:
            between.append(element)
            continue
        if before is not None and start <= before:
            floor = _staff_floor(groups[-1])
            groups[-1] += [one for one in between if _head(one) <= floor]
            between = [one for one in between if _head(one) > floor]
            groups.append([])
        groups[-1] += [*between, element]
        between, before = [], start
    groups[-1] += between
    return [_System(tuple(group), _foot(group, feet)) for group in groups if before is not None]


def _bar_start(element: Element) -> float | None:
    """Return where the staff lines of a bar start, None for what is no bar."""
    if "measure" not in element.get("class", "").split():
        return None
    starts = (_STAFF_LINES.match(path.get("d", "")) for path in element.iter("path"))
    return next((float(match[1]) for match in starts if match), None)


def _staff_floor(elements: Iterable[Element]) -> float:
    """Return the height of the lowest line of the staves."""
    paths = (path.get("d", "") for element in elements for path in element.iter("path"))
    lines = [path for path in paths if _LINES_ACROSS.fullmatch(path)]
    return max((float(y) for line in lines for y in _ACROSS.findall(line)), default=0)


def _head(element: Element) -> float:
    """Return the height of an element's first point."""
    return next((y for one in element.iter() for y in _heights(one, {})), 0)


def _foot(elements: Iterable[Element], feet: Mapping[str, float]) -> float:
    leaves = (one for element in elements for one in element.iter())
    return max((y for leaf in leaves for y in _heights(leaf, feet)), default=0)


def _heights(element: Element, feet: Mapping[str, float]) -> Iterator[float]:
    """Yield how low an element starts and reaches; nothing for what only holds others."""
    y = float(element.get("y", element.get("cy", 0)))
    match element.tag:
        case "path":
            yield from _bounds(element.get("d", ""))
        case "polygon":
            yield from (float(place.split(",")[1]) for place in element.get("points", "").split())
        case "rect" | "ellipse":
            yield from (y, y + float(element.get("height", element.get("ry", 0))))
        case "text":
            yield from (y, y + _DESCENT * float(element.get("font-size", 0)))
        case "use":
            yield from (y, y + feet.get(element.get("href", "").removeprefix("#"), 0))


def _bounds(path: str) -> tuple[float, ...]:
    """Return the top and the bottom of a path, its control points counted."""
    if _STRAIGHT.fullmatch(path):
        heights = [float(height) for height in _HEIGHT.findall(path)]
        return (min(heights), max(heights)) if heights else ()
    from fontTools.pens.boundsPen import ControlBoundsPen  # noqa: PLC0415 - a build needs it
    from fontTools.svgLib.path import parse_path  # noqa: PLC0415 - the same

    pen = ControlBoundsPen(None)
    parse_path(path, pen)
    return (pen.bounds[1], pen.bounds[3]) if pen.bounds else ()


@lru_cache(maxsize=512)
def _glyph_foot(definition: str) -> float:
    """Return how far a glyph reaches below its place."""
    path = ET.fromstring(definition)  # noqa: S314 - drawn by this program
    scaled = _SCALED.search(path.get("transform", ""))
    scale = float(scaled[2]) if scaled else 1
    return max((y * scale for y in _bounds(path.get("d", ""))), default=0)


def _definitions(kept: Iterable[Element], glyphs: Mapping[str, str]) -> str:
    uses = {use.get("href", "")[1:] for element in kept for use in element.iter("use")}
    return "<defs>" + "".join(glyphs[name] for name in sorted(uses & glyphs.keys())) + "</defs>"


def _written(elements: Iterable[Element]) -> str:
    return "".join(map(serialise, elements))
