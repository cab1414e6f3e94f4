"""A sheet to plot on with matplotlib, which becomes a small inline SVG of a page.

The SVG takes its colours from the page (CSS variables) and its fonts too: what is plotted has
stand-in colours and stand-in texts, and only the plotted elements are kept. Coordinates are
CSS pixels from the top left corner.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from io import StringIO
from typing import TYPE_CHECKING, Any, Literal
from xml.etree import ElementTree as ET

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

Anchor = Literal["left", "center", "right"]
COLOURS = {
    "ink": "#010101",
    "paper": "#020202",
    "plan-1": "#030303",
    "plan-2": "#040404",
    "plan-3": "#050505",
    "plan-4": "#060606",
}
"""The page's colours and what stands for them while plotting."""

HAIRLINE = 0.75
HATCHING = 0.6
"""Widths of edges and of the lines of a hatch, in pixels."""

_SVG = "{http://www.w3.org/2000/svg}"
_STAND_IN = re.compile("|".join(COLOURS.values()))
_NAMES = {stand_in: name for name, stand_in in COLOURS.items()}
_LINK = re.compile(r"url\(#([^)]*)\)")
_POINTS_PER_INCH = 72


@dataclass(frozen=True)
class Target:
    """Where a group of the plot leads, "" for nowhere, and what it says when pointed at.

    `begin` and `end` are the seconds from which and up to which it is heard, None where nobody
    knows.
    """

    href: str
    title: str
    begin: float | None = None
    end: float | None = None


@dataclass
class Sheet:
    """A plot in the making; `prefix` makes its ids its own on the page.

    Every element belongs to a group, a word without spaces; `svg` links the groups.
    """

    width: int
    height: int
    prefix: str
    _texts: list[tuple[str, str, float, bool]] = field(default_factory=list)
    _groups: list[str] = field(default_factory=list)
    _figure: "Figure" = field(init=False)
    _axes: "Axes" = field(init=False)

    def __post_init__(self) -> None:
        from matplotlib.figure import Figure  # noqa: PLC0415 - heavy, and only to draw

        size = (self.width / _POINTS_PER_INCH, self.height / _POINTS_PER_INCH)
        self._figure = Figure(figsize=size, dpi=_POINTS_PER_INCH)
        self._axes = self._figure.add_axes((0, 0, 1, 1), frameon=False)
        self._axes.set(xlim=(0, self.width), ylim=(self.height, 0))
        self._axes.axis("off")

    def box(
        self,
        group: str,
        corner: tuple[float, float],
        size: tuple[float, float],
        *,
        fill: str,
        hatch: str = "",
    ) -> None:
        """Plot a rectangle with a thin edge; `fill` names a colour, `hatch` as in matplotlib."""
        from matplotlib import rc_context  # noqa: PLC0415 - heavy, and only to draw
        from matplotlib.patches import Rectangle  # noqa: PLC0415 - heavy, and only to draw

        with rc_context(self._settings):
            patch = Rectangle(
                corner,
                *size,
                facecolor=COLOURS[fill],
                edgecolor=COLOURS["ink"],
                linewidth=HAIRLINE,
                hatch=hatch or None,
                clip_on=False,
            )
        self._axes.add_patch(patch)
        patch.set_gid(self._next(group))

    def rule(
        self, group: str, start: tuple[float, float], end: tuple[float, float], weight: float
    ) -> None:
        """Plot a straight line."""
        xs, ys = zip(start, end, strict=True)
        (line,) = self._axes.plot(
            xs, ys, color=COLOURS["ink"], linewidth=weight, clip_on=False, solid_capstyle="butt"
        )
        line.set_gid(self._next(group))

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
        """Plot one line of text on its baseline; `role` becomes its class.

        A `hidden` one is not shown unless the page's styles say so.
        """
        # A stand-in is measured in its place: matplotlib's font may lack the text's letters.
        label = self._axes.text(
            *place, "x", ha=anchor, va="baseline", fontsize=size, color=COLOURS["ink"]
        )
        label.set_gid(self._next(group))
        self._texts.append((text, role, size, hidden))

    def svg(self, name: str, title: str, targets: Mapping[str, Target]) -> str:
        """Return the plot as an SVG element of class `name` with a title.

        It is one image to assistive technology unless a group is a link.
        """
        root = ET.Element("svg", {"class": name, "viewBox": f"0 0 {self.width} {self.height}"})
        title_id = f"{self.prefix}-title"
        root.set("aria-labelledby", title_id)
        if not any(target.href for target in targets.values()):
            root.set("role", "img")
        ET.SubElement(root, "title", {"id": title_id}).text = title
        plotted = self._plotted()
        self._add_patterns(root, plotted)
        self._add_groups(root, plotted, targets)
        return ET.tostring(root, encoding="unicode", short_empty_elements=True)

    @property
    def _settings(self) -> Any:  # noqa: ANN401 - matplotlib types its settings by name
        return {
            "svg.fonttype": "none",
            "svg.hashsalt": self.prefix,
            "hatch.linewidth": HATCHING,
            "path.simplify": False,
        }

    def _next(self, group: str) -> str:
        self._groups.append(group)
        return f"sheet-{len(self._groups) - 1}"

    def _plotted(self) -> ET.Element:
        from matplotlib import rc_context  # noqa: PLC0415 - heavy, and only to draw

        out = StringIO()
        nothing: dict[str, Any] = dict.fromkeys(("Creator", "Date", "Format", "Type"))
        with rc_context(self._settings):
            self._figure.savefig(out, format="svg", metadata=nothing, transparent=True)
        return ET.fromstring(out.getvalue())  # noqa: S314 - our own drawing

    def _add_patterns(self, root: ET.Element, plotted: ET.Element) -> None:
        patterns = list(plotted.iter(f"{_SVG}pattern"))
        if patterns:
            defs = ET.SubElement(root, "defs")
            defs.extend(self._cleaned(pattern) for pattern in patterns)

    def _add_groups(
        self, root: ET.Element, plotted: ET.Element, targets: Mapping[str, Target]
    ) -> None:
        by_id = {element.get("id"): element for element in plotted.iter(f"{_SVG}g")}
        texts = iter(self._texts)
        groups: dict[str, ET.Element] = {}
        for number, group in enumerate(self._groups):
            if group not in groups:
                groups[group] = _group(root, group, targets.get(group))
            for element in by_id[f"sheet-{number}"]:
                cleaned = self._cleaned(element)
                if cleaned.tag == "text":
                    _set_text(cleaned, *next(texts))
                groups[group].append(cleaned)

    def _cleaned(self, element: ET.Element) -> ET.Element:
        """Return a copy in no namespace, in the page's colours, with ids of our own."""
        copy = ET.Element(element.tag.removeprefix(_SVG))
        for name, value in element.attrib.items():
            copy.set(name, self._cleaned_value(name, value))
        copy.extend(self._cleaned(child) for child in element)
        return copy

    def _cleaned_value(self, name: str, value: str) -> str:
        if name == "id":
            return f"{self.prefix}-{value}"
        value = _LINK.sub(rf"url(#{self.prefix}-\1)", value)
        value = _STAND_IN.sub(lambda found: f"var(--{_NAMES[found[0]]})", value)
        return re.sub(r"\s+", " ", value).strip()


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


def _set_text(element: ET.Element, text: str, role: str, size: float, hidden: bool) -> None:
    """Turn a plotted stand-in into the text itself, in the page's font."""
    anchor = re.search(r"text-anchor: (\w+)", element.get("style", ""))
    element.attrib = {
        "class": role,
        "x": element.get("x", "0"),
        "y": element.get("y", "0"),
        "font-size": f"{size:g}",
        "style": "fill: var(--ink)",
    }
    if anchor and anchor[1] != "start":
        element.set("text-anchor", anchor[1])
    if hidden:
        element.set("display", "none")
    element.text = text
