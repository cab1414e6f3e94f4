"""A figure as a file of its own: plain colours and faces in the place of the page's."""

import re
from xml.etree import ElementTree as ET

# On paper, as a page is printed: dark on white, the shades of a plan light enough to write on.
_COLOURS = {
    "ink": "#000",
    "paper": "#fff",
    "plan-1": "#d5d0c1",
    "plan-2": "#e0a3b0",
    "plan-3": "#a9bcbf",
    "plan-4": "#c77f92",
}
_VARIABLE = re.compile(r"var\(--([a-z0-9-]+)\)")
_FACES = "Charter, Palatino, Georgia, 'DejaVu Serif', serif"
_MARGIN = 8


def svg_file(svg: str) -> str:
    """Return a figure of this room as an SVG file on white paper; its links lead nowhere now."""
    root = ET.fromstring(svg)  # noqa: S314 - made by this room
    left, top, width, height = (float(n) for n in root.get("viewBox", "").split())
    box = (left - _MARGIN, top - _MARGIN, width + 2 * _MARGIN, height + 2 * _MARGIN)
    for element in root.iter():
        if element.tag == "a":
            element.tag = "g"
            element.attrib.pop("href", None)
    sides = dict(zip(("x", "y", "width", "height"), (f"{n:g}" for n in box), strict=True))
    root.insert(1, ET.Element("rect", {"class": "sheet", **sides, "fill": "var(--paper)"}))
    root.attrib = {
        "xmlns": "http://www.w3.org/2000/svg",
        "width": sides["width"],
        "height": sides["height"],
        **root.attrib,
        "viewBox": " ".join(f"{n:g}" for n in box),
        "role": "img",
        "font-family": _FACES,
    }
    text = ET.tostring(root, encoding="unicode")
    plain = _VARIABLE.sub(lambda found: _COLOURS[found[1]], text)
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{plain}\n'
