"""Lines written short: neighbouring strokes of one width as one path."""

import re
from xml.etree.ElementTree import Element

_STROKE = re.compile(r"M(-?\d+) (-?\d+) L(-?\d+) (-?\d+)")
USUAL_STROKE = "18"
"""The width of most strokes, in the sheet's units: set once, on the drawing."""


def shorten_paths(music: Element) -> None:
    """Join straight strokes of one width that follow one another in a group."""
    for parent in music.iter():
        kept: list[Element] = []
        for child in parent:
            _shorten(child)
            if kept and _same_stroke(kept[-1], child):
                kept[-1].set("d", kept[-1].get("d", "") + child.get("d", ""))
            else:
                kept.append(child)
        for child in list(parent):
            parent.remove(child)
        parent.extend(kept)


def _same_stroke(first: Element, second: Element) -> bool:
    def look(element: Element) -> dict[str, str]:
        return {name: value for name, value in element.attrib.items() if name != "d"}

    straight = "C" not in first.get("d", "C") and "C" not in second.get("d", "C")
    return first.tag == second.tag == "path" and straight and look(first) == look(second)


def _shorten(element: Element) -> None:
    if element.get("stroke-width") == USUAL_STROKE:
        del element.attrib["stroke-width"]
    match = _STROKE.fullmatch(element.get("d", ""))
    if match is None:
        return
    x1, y1, x2, y2 = match.groups()
    end = f"H{x2}" if y1 == y2 else f"V{y2}" if x1 == x2 else f"L{x2} {y2}"
    element.set("d", f"M{x1} {y1}{end}")
