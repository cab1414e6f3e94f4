"""The lines of a tablature, broken where numbers and signs stand on them."""

from xml.etree.ElementTree import Element

from sitegen.engraving.svg.overlay import FRET_SIZE, RISE
from sitegen.engraving.svg.sheet import Sheet, numbers
from sitegen.engraving.svg.textwidth import text_width

_CLEAR = 45
_NEAR = 20


def redraw_tab_lines(sheet: Sheet) -> None:
    """Replace the lines of every tablature by lines that keep clear of what stands on them.

    Verovio breaks its lines for the plain numbers; `<12>` and the like are wider.
    """
    for staff in sheet.groups("staff") if sheet.groups("tabGrp") else ():
        if any(group.get("class") == "tabGrp" for group in staff.iter("g")):
            _redraw(staff)


def _redraw(staff: Element) -> None:
    strokes = staff.findall("path")
    extents: dict[float, list[float]] = {}
    for path in strokes:
        left, height, right, _ = numbers(path.get("d", ""))
        extents.setdefault(height, []).extend((left, right))
        staff.remove(path)
    gaps = _gaps(staff)
    parts = [
        f"M{start:.0f} {height:.0f}H{end:.0f}"
        for height, ends in extents.items()
        for start, end in _pieces(min(ends), max(ends), _near(gaps, height))
    ]
    width = strokes[0].get("stroke-width", "")
    staff.insert(0, Element("path", {"d": "".join(parts), "stroke-width": width}))


def _gaps(staff: Element) -> list[tuple[float, float, float]]:
    """Return (line, left, right) of everything that stands on the lines."""
    gaps = []
    for note in staff.iter("g"):
        text = note.find("text")
        if note.get("class", "").split(" ")[0] == "note" and text is not None:
            half = text_width("".join(text.itertext()), FRET_SIZE) / 2 + _CLEAR
            middle = float(text.get("x", 0))
            gaps.append((float(text.get("y", 0)) - RISE, middle - half, middle + half))
    return gaps


def _near(gaps: list[tuple[float, float, float]], height: float) -> list[tuple[float, float]]:
    return sorted((left, right) for line, left, right in gaps if abs(line - height) < _NEAR)


def _pieces(
    left: float, right: float, gaps: list[tuple[float, float]]
) -> list[tuple[float, float]]:
    pieces = []
    for gap_left, gap_right in gaps:
        if gap_left > left:
            pieces.append((left, gap_left))
        left = max(left, gap_right)
    if right > left:
        pieces.append((left, right))
    return pieces
