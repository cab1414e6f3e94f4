"""Glyph definitions that all drawings of a page share."""

import re
from xml.etree import ElementTree as ET
from xml.etree.ElementTree import Element

_NAMED = re.compile(r"#?([0-9A-F]{4,5})-.+")
_PLACED = re.compile(r"translate\(([-\d.]+),\s*([-\d.]+)\)\s*scale\(([-\d.]+),\s*([-\d.]+)\)")


def share_glyphs(root: Element) -> dict[str, str]:
    """Point every `use` to a shared definition and return those definitions by id.

    A definition has its size built in: `g-E0A4` for a full-sized head, `g-E0A4-54` for one at 75
    per cent of it, so that a use needs nothing but its place.
    """
    outlines = _take_outlines(root)
    glyphs: dict[str, str] = {}
    for use in root.iter("use"):
        named = _NAMED.fullmatch(use.get("href", ""))
        placed = _PLACED.fullmatch(use.attrib.pop("transform", ""))
        if named is None or placed is None:
            raise ValueError(f"an unknown glyph: {use.attrib}")
        x, y, wide, high = placed.groups()
        name = f"g-{named[1]}-{_hundredths(wide)}" + (f"x{_hundredths(high)}" * (wide != high))
        use.attrib.clear()
        use.attrib.update({"href": f"#{name}", "x": x, "y": y})
        glyphs[name] = _definition(name, outlines[named[1]], float(wide), float(high))
    return glyphs


def _take_outlines(root: Element) -> dict[str, str]:
    outlines: dict[str, str] = {}
    for definitions in root.findall("defs"):
        for glyph in definitions:
            path = glyph.find("path")
            named = _NAMED.fullmatch(glyph.get("id", ""))
            if named is not None and path is not None:
                outlines[named[1]] = path.get("d", "")
        root.remove(definitions)
    return outlines


def _hundredths(scale: str) -> str:
    return f"{round(float(scale) * 100)}"


def _definition(name: str, outline: str, wide: float, high: float) -> str:
    path = Element("path", {"id": name, "d": outline, "transform": f"scale({wide:g},{-high:g})"})
    path.set("stroke", "none")
    return ET.tostring(path, encoding="unicode")
