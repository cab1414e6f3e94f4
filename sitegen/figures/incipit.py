"""The incipit of a write-up: its opening as a small picture, as thematic catalogues have it.

A file of its own in black on nothing, with no fonts but those of the reader's device: the page
that shows it turns it light on a dark ground. It is drawn into one frame whatever it shows, so
that its room is known before it has come.
"""

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from xml.etree import ElementTree as ET
from xml.etree.ElementTree import Element, SubElement

from sitegen.engraving.markup import serialise
from sitegen.engraving.svg.standalone import with_signs_drawn
from sitegen.figures.card import cut_opening
from sitegen.figures.form_plan import PlanRow
from sitegen.figures.lettering import text_width
from sitegen.figures.progression import ProgressionBar

INCIPIT = "incipit.svg"
"""The name of the file in the folder of a write-up."""

WIDTH, HEIGHT = 192, 112
"""The frame in pixels."""

_SHAPE = HEIGHT / WIDTH
_FACES = "'Times New Roman', 'Liberation Serif', 'Nimbus Roman', Tinos, Times, serif"
# What the drawing of a chart leaves to its page, in the few rules that a picture needs.
_STYLE = """\
text,use,rect,polygon,ellipse{stroke:none}.reh rect{stroke:#000;fill:none}\
.fret{font-size:324px;text-anchor:middle}.tempo,.reh,.ending{font-weight:bold}\
.dir,.dynam,.mNum{font-style:italic}"""
_STYLED = frozenset(("reh", "fret", "tempo", "ending", "dir", "dynam", "mNum", "sign"))
_OF_PAGES = frozenset(("id", "class", "tabindex", "role", "focusable"))
_BARS, _BARS_A_ROW = 8, 4
_ROW, _SIGN_FOOT, _LINE_TOP, _LINE_FOOT = 34, 22, 4, 30
_LARGEST, _SMALLEST, _PADDING = 15.0, 6.0, 5.0
_PLAN_TOP, _PLAN_FOOT, _LETTER = 6, 40, 15


def engraved_incipit(svg: str, glyphs: Mapping[str, str], rights: str = "") -> bytes:
    """Return the first system of an engraved chart as a file; more where they find room.

    `svg` and `glyphs` are the chart as `sitegen.engraving` draws it; `rights` says whose the music
    is. Raises ValueError for a drawing that holds no bar.
    """
    opening = cut_opening(svg, glyphs, _SHAPE)
    left, top, width, height = opening.box
    root = ET.fromstring(f"<g>{opening.elements}</g>")  # noqa: S314 - drawn by this program
    _strip(root)
    music = "".join(map(serialise, root))
    look = {**opening.look, "fill": "#000", "stroke": "#000", "font-family": _FACES}
    box = f"{left:g} {top:g} {width:g} {height:g}"
    style = f"<style>{_STYLE}</style>"
    return _file(box, look, style + with_signs_drawn(music), rights)


def progression_incipit(bars: Sequence[ProgressionBar], rights: str = "") -> bytes:
    """Return the first bars of a progression as a file."""
    root = Element("g")
    shown = bars[:_BARS]
    rows = [shown[at : at + _BARS_A_ROW] for at in range(0, len(shown), _BARS_A_ROW)]
    for number, row in enumerate(rows):
        _draw_row(root, row, number * _ROW)
    return _figure(root, len(rows) * _ROW, rights)


def plan_incipit(rows: Sequence[PlanRow], rights: str = "") -> bytes:
    """Return a form plan as a file: its sections to scale, with their letters."""
    root = Element("g")
    place, whole = 0.5, sum(row.share for row in rows) or 1
    for row in rows:
        width = (WIDTH - 1) * row.share / whole
        box = {"x": _number(place), "y": str(_PLAN_TOP), "width": _number(width)}
        SubElement(root, "rect", {**box, "height": str(_PLAN_FOOT - _PLAN_TOP), "fill": "none"})
        if text_width(row.letter, _LETTER) < width:
            _write(root, row.letter, (place + width / 2, _PLAN_FOOT - 12), _LETTER)
        place += width
    return _figure(root, _PLAN_FOOT + 2, rights)


def _draw_row(root: Element, row: Iterable[ProgressionBar], top: float) -> None:
    width = (WIDTH - 1) / _BARS_A_ROW
    place = 0.5
    _line(root, place, top)
    for bar in row:
        beats = sum((cell.beats for cell in bar.cells), Fraction(0)) or Fraction(1)
        at = place
        for cell in bar.cells:
            room = width * float(cell.beats / beats)
            text = "" if bar.same_as_before or cell.held else str(cell.chord)
            _write_fitting(root, text, at, room, top)
            at += room
        if bar.same_as_before:
            _draw_same(root, place + width / 2, top + (_LINE_TOP + _LINE_FOOT) / 2)
        place += width
        _line(root, place, top)


def _write_fitting(root: Element, text: str, left: float, room: float, top: float) -> None:
    """Write a chord symbol as large as it can be; one that cannot be read is left out."""
    size = min(_LARGEST, (room - _PADDING) / max(text_width(text, 1), 0.1))
    if text and size >= _SMALLEST:
        place = (left + _PADDING / 2, top + _SIGN_FOOT)
        _write(root, text, place, size).attrib.pop("text-anchor")


def _draw_same(root: Element, x: float, y: float) -> None:
    """Draw the sign of a bar that is the same as the one before it."""
    SubElement(
        root, "path", {"d": f"M{_number(x - 5)} {_number(y + 6)}l10 -12", "stroke-width": "2"}
    )
    for side in (-1, 1):
        at = {"cx": _number(x + 5 * side), "cy": _number(y + 3 * side), "r": "1.5"}
        SubElement(root, "circle", {**at, "stroke": "none"})


def _line(root: Element, x: float, top: float) -> None:
    SubElement(root, "path", d=f"M{_number(x)} {_number(top + _LINE_TOP)}V{top + _LINE_FOOT:g}")


def _write(root: Element, text: str, place: tuple[float, float], size: float) -> Element:
    x, y = map(_number, place)
    look = {"x": x, "y": y, "font-size": _number(size), "text-anchor": "middle", "stroke": "none"}
    element = SubElement(root, "text", look)
    element.text = text
    return element


def _number(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")


def _figure(root: Element, height: float, rights: str) -> bytes:
    drawn = ET.tostring(root, encoding="unicode").removeprefix("<g>").removesuffix("</g>")
    look = {"stroke": "#000", "stroke-width": "0.8", "font-family": _FACES}
    return _file(f"0 0 {WIDTH} {height:g}", look, drawn, rights)


def _file(box: str, look: Mapping[str, str], drawn: str, rights: str) -> bytes:
    """Return a file of the frame's size, with what is drawn at its upper left."""
    head = Element("svg", {"xmlns": "http://www.w3.org/2000/svg", "viewBox": box, **look})
    head.set("width", str(WIDTH))
    head.set("height", str(HEIGHT))
    head.set("preserveAspectRatio", "xMinYMin")
    if rights:
        SubElement(head, "desc").text = rights
    text = ET.tostring(head, encoding="unicode", short_empty_elements=False)
    return f"{text.removesuffix('</svg>')}{drawn}</svg>\n".encode()


def _strip(root: Element) -> None:
    """Leave out what only the page of a chart needs: names, roles, groups that say nothing."""
    used = {use.get("href", "").removeprefix("#") for use in root.iter("use")}
    for element in root.iter():
        name = element.get("id")
        kept = " ".join(c for c in element.get("class", "").split() if c in _STYLED)
        element.attrib = {
            key: value
            for key, value in element.attrib.items()
            if key not in _OF_PAGES and not key.startswith(("data-", "aria-"))
        }
        if kept:
            element.set("class", kept)
        if name in used:
            element.set("id", name)
    _flatten(root)


def _flatten(parent: Element) -> None:
    children: list[Element] = []
    for child in parent:
        _flatten(child)
        if child.tag == "g" and not child.attrib:
            children += child
        elif child.tag not in ("title", "desc"):
            children.append(child)
    parent[:] = children
