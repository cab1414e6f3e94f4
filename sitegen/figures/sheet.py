"""A sheet to draw on, which becomes a small inline SVG of a page.

The SVG takes its colours from the page (CSS variables) and its fonts too. Coordinates are CSS
pixels from the top left corner.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal
from xml.etree import ElementTree as ET

from sitegen.figures.hatching import hatch_pattern

Anchor = Literal["left", "center", "right"]
Fill = Literal["paper", "plan-1", "plan-2", "plan-3", "plan-4"]
"""The page's colours that a box may be filled with."""

HAIRLINE = 0.75
"""Width of edges in pixels."""

_INK = "var(--ink)"
_ANCHORS = {"center": "middle", "right": "end"}


@dataclass(frozen=True)
class Target:
    """Where a group of a sheet leads, "" for nowhere, and what it says when pointed at.

    `begin` and `end` are the seconds from which and up to which it is heard, None where nobody
    knows.
    """

    href: str
    title: str
    begin: float | None = None
    end: float | None = None


@dataclass
class Sheet:
    """A drawing in the making; `prefix` makes its ids its own on the page.

    Every element belongs to a group, a word without spaces; `svg` links the groups.
    """

    width: int
    height: int
    prefix: str
    _groups: dict[str, list[ET.Element]] = field(default_factory=dict)
    _patterns: dict[tuple[str, str], ET.Element] = field(default_factory=dict)

    def box(
        self,
        group: str,
        corner: tuple[float, float],
        size: tuple[float, float],
        *,
        fill: Fill,
        hatch: str = "",
    ) -> None:
        """Draw a rectangle with a thin edge; `hatch` is a sign of `sitegen.figures.hatching`."""
        left, top = map(_number, corner)
        right, bottom = _number(corner[0] + size[0]), _number(corner[1] + size[1])
        path = f"M {left} {top} L {right} {top} L {right} {bottom} L {left} {bottom} z"
        self._stroke(group, path, self._hatched(fill, hatch) if hatch else f"var(--{fill})")

    def rule(self, group: str, start: tuple[float, float], end: tuple[float, float]) -> None:
        """Draw a straight line as thin as an edge."""
        x, y, to_x, to_y = map(_number, (*start, *end))
        self._stroke(group, f"M {x} {y} L {to_x} {to_y}", "none")

    def text(
        self,
        group: str,
        place: tuple[float, float],
        text: str,
        *,
        role: str,
        size: float,
        anchor: Anchor = "left",
        hidden: bool = False,
    ) -> None:
        """Write one line of text on its baseline; `role` becomes its class.

        A `hidden` one is not shown unless the page's styles say so.
        """
        x, y = map(_number, place)
        look = {"class": role, "x": x, "y": y, "font-size": f"{size:g}", "style": f"fill: {_INK}"}
        if anchor in _ANCHORS:
            look["text-anchor"] = _ANCHORS[anchor]
        if hidden:
            look["display"] = "none"
        self._add(group, "text", look).text = text

    def svg(self, name: str, title: str, targets: Mapping[str, Target]) -> str:
        """Return the drawing as an SVG element of class `name` with a title.

        It is one image to assistive technology unless a group is a link.
        """
        root = ET.Element("svg", {"class": name, "viewBox": f"0 0 {self.width} {self.height}"})
        title_id = f"{self.prefix}-title"
        root.set("aria-labelledby", title_id)
        if not any(target.href for target in targets.values()):
            root.set("role", "img")
        ET.SubElement(root, "title", {"id": title_id}).text = title
        if self._patterns:
            ET.SubElement(root, "defs").extend(self._patterns.values())
        for group, elements in self._groups.items():
            _group(root, group, targets.get(group)).extend(elements)
        return ET.tostring(root, encoding="unicode")

    def _hatched(self, fill: str, hatch: str) -> str:
        """Return a reference to the pattern of a hatching on a colour; each is defined once."""
        known = self._patterns.get((fill, hatch))
        if known is None:
            name = f"{self.prefix}-hatch-{len(self._patterns) + 1}"
            known = hatch_pattern(name, hatch, f"var(--{fill})", _INK)
            self._patterns[fill, hatch] = known
        return f"url(#{known.get('id')})"

    def _stroke(self, group: str, path: str, fill: str) -> None:
        style = f"fill: {fill}; stroke: {_INK}; stroke-width: {HAIRLINE}"
        self._add(group, "path", {"d": path, "style": style})

    def _add(self, group: str, tag: str, attributes: dict[str, str]) -> ET.Element:
        element = ET.Element(tag, attributes)
        self._groups.setdefault(group, []).append(element)
        return element


def _number(value: float) -> str:
    """Return a coordinate to a hundredth of a pixel."""
    return f"{round(value, 2):.12g}"


def _group(root: ET.Element, group: str, target: Target | None) -> ET.Element:
    if target is None:
        return ET.SubElement(root, "g", {"class": group})
    if target.href:
        element = ET.SubElement(root, "a", {"href": target.href})
    else:
        element = ET.SubElement(root, "g")
    if target.end is not None:
        element.set("data-start", f"{target.begin}")
        element.set("data-end", f"{target.end}")
    ET.SubElement(element, "title").text = target.title
    return element
