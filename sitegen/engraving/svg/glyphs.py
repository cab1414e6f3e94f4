"""Glyph definitions that all drawings of a page share."""

import re
from xml.etree.ElementTree import Element

_NAMED = re.compile(r"#?([0-9A-F]{4,5})-.+")
_SIZED = re.compile(r"\s*scale\(([-\d.]+),\s*([-\d.]+)\)")
_PLACED = re.compile(r"translate\(([-\d.]+),\s*([-\d.]+)")


class Glyphs:
    """The glyphs of one sheet; `definitions` are those that have been used, by id.

    A definition has its size built in: `g-E0A4` for a full-sized head, `g-E0A4-54` for one at 75
    per cent of it, so that a use needs nothing but its place.
    """

    def __init__(self, root: Element) -> None:
        self._outlines = _outlines(root)
        self._names: dict[tuple[str, str], str] = {}
        self.definitions: dict[str, str] = {}

    def written(self, use: Element) -> str:
        """Return a `use` that points to the shared definition of its glyph."""
        # Verovio's transform: first where the glyph stands, then its size.
        place, _, size = use.get("transform", "").partition(")")
        placed, key = _PLACED.fullmatch(place), (use.get("href", ""), size)
        name = self._names.get(key) or self._define(*key)
        if placed is None:
            raise ValueError(f"an unknown glyph: {use.attrib}")
        return f'<use href="#{name}" x="{placed[1]}" y="{placed[2]}" />'

    def _define(self, address: str, size: str) -> str:
        named, sized = _NAMED.fullmatch(address), _SIZED.fullmatch(size)
        if named is None or sized is None:
            raise ValueError(f"an unknown glyph: {address} {size}")
        wide, high = sized.groups()
        name = f"g-{named[1]}-{_hundredths(wide)}" + (f"x{_hundredths(high)}" * (wide != high))
        self._names[address, size] = name
        self.definitions[name] = (
            f'<path id="{name}" d="{self._outlines[named[1]]}" '
            f'transform="scale({float(wide):g},{-float(high):g})" stroke="none" />'
        )
        return name


def _outlines(root: Element) -> dict[str, str]:
    outlines: dict[str, str] = {}
    for glyph in root.iterfind("defs/g"):
        path = glyph.find("path")
        named = _NAMED.fullmatch(glyph.get("id", ""))
        if named is not None and path is not None:
            outlines[named[1]] = path.get("d", "")
    return outlines


def _hundredths(scale: str) -> str:
    return f"{round(float(scale) * 100)}"
