"""A drawing as a file of its own, for a browser, a vector editor or a printed page.

What a drawing borrows from its page comes with it: the glyphs, the style, the few signs of the
music font that stand in text. Colours are plain, the paper is white: black lines on nothing
would be lost on the dark ground of many viewers, and a sheet is taken out with one click. Text
stays text in the faces that every system has one of; accidentals in it become the signs of
Unicode, since no width of the text before them is known here, and signs that open a text (note
values, waves) become outlines.
"""

import re
from collections.abc import Mapping
from functools import lru_cache
from importlib.resources import files
from xml.etree import ElementTree as ET
from xml.etree.ElementTree import Element

from sitegen.engraving.markup import attributes, escaped, markup, serialise
from sitegen.engraving.svg.text import USUAL_SIZE

_REM = 16
# Room for what reaches over the edge of a sheet, in its own units: a staff space.
_MARGIN = 180
_INK, _PAPER = "#000", "#fff"
_FACES = "'Times New Roman', 'Liberation Serif', 'Nimbus Roman', Tinos, Times, serif"
_STYLE = """\
text, use, rect, polygon, ellipse { stroke: none }
.reh rect { stroke: #000; fill: none }
.fret { font-size: 324px; text-anchor: middle }
.tempo, .reh, .ending { font-weight: bold }
.dir, .dynam, .mNum { font-style: italic }
"""
# SMuFL accidentals, plain and as figures of a figured bass.
_UNICODE = {
    **dict(zip("\ue260\ue261\ue262\ue263\ue264", ("♭", "♮", "♯", "♯♯", "♭♭"), strict=True)),
    **dict(zip("\uea63\uea64\uea65\uea66\uea67", ("♭♭", "♭", "♮", "♯", "♯♯"), strict=True)),
}
# What is written differently in a file than on a page: a drawing's name, the uses of its glyphs,
# which older programs know by another attribute, and its texts.
_NAMED = re.compile(r"(?:<(title|desc)\b[^>]*(?:/>|>[^<]*</\1>))*")
_USE = re.compile(r'<use href="([^"]+)"([^>]*) />')
_FOR_OLDER_PROGRAMS = r'<use\2 xlink:href="\1" />'
_USED = re.compile(r'href="#([^"]+)"')
_TEXT = re.compile(r"<text\b[^>]*[^/]>.*?</text>", re.DOTALL)
_SIGN = 'class="sign"'
_ACCIDENTALS = str.maketrans(_UNICODE)
_PRIVATE = re.compile("[\ue000-\uf8ff]+")
_EM = 1000
# Sizes of most text and of the signs in it.
_TEXT_SIZE, _SIGN_SIZE = int(USUAL_SIZE), 720
_OUTLINE = re.compile(r' d="([^"]+)"')
_ADVANCE = re.compile(r'<g c="([0-9A-F]{4})"[^>]* h-a-x="([\d.]+)"')


def svg_file(svg: str, glyphs: Mapping[str, str]) -> str:
    """Return a drawing of this room as an SVG file; `glyphs` are the definitions it may use.

    Ids, the name and the description stay as they are. The file is as wide as the drawing gets
    on a page.
    """
    head, _, rest = svg.partition(">")
    root = ET.fromstring(f"{head} />")  # noqa: S314 - made by this room
    paper = _paper(root)
    _address(root)
    named = _NAMED.match(rest)
    at = named.end() if named else 0
    music = with_signs_drawn(_USE.sub(_FOR_OLDER_PROGRAMS, rest[at:]))
    definitions = "".join(glyphs[name] for name in sorted(set(_USED.findall(rest))))
    return (
        f'<?xml version="1.0" encoding="UTF-8"?>\n<svg{attributes(root.items())}>{rest[:at]}'
        f"{markup('style', (), escaped(_STYLE))}{markup('defs', (), definitions)}"
        f"{serialise(paper)}{music}\n"
    )


def _paper(root: Element) -> Element:
    left, top, width, height = (float(n) for n in root.get("viewBox", "").split())
    box = (left - _MARGIN, top - _MARGIN, width + 2 * _MARGIN, height + 2 * _MARGIN)
    root.set("viewBox", " ".join(f"{n:g}" for n in box))
    sides = dict(zip(("x", "y", "width", "height"), (f"{n:g}" for n in box), strict=True))
    return Element("rect", {"class": "paper", **sides, "fill": _PAPER})


def _address(root: Element) -> None:
    """Give the outermost element all that it had from its page."""
    _, _, width, height = (float(n) for n in root.get("viewBox", "").split())
    rem = float(root.attrib.pop("style").removeprefix("max-width:").removesuffix("rem"))
    scale = rem * _REM / (width - 2 * _MARGIN)
    root.attrib = {
        "xmlns": "http://www.w3.org/2000/svg",
        "xmlns:xlink": "http://www.w3.org/1999/xlink",
        "width": f"{width * scale:.0f}",
        "height": f"{height * scale:.0f}",
        **root.attrib,
        "fill": _INK,
        "stroke": _INK,
        "font-family": _FACES,
    }


def with_signs_drawn(music: str) -> str:
    """Return drawn music whose texts need no signs of the music font any more."""
    return _TEXT.sub(_with_signs_drawn, music)


def _with_signs_drawn(found: re.Match[str]) -> str:
    """Return a text with accidentals of Unicode, and outlines, for signs of the music font."""
    if _SIGN not in found[0]:
        return found[0]
    parent = ET.fromstring(f"<g>{found[0]}</g>")  # noqa: S314 - made by this room
    text = parent[0]
    for run in text.iter():
        if run.get("class") == "sign":
            run.text = (run.text or "").translate(_ACCIDENTALS)
            if not _PRIVATE.search(run.text):
                _make_plain(run)
    _draw_opening(parent, text)
    return "".join(map(serialise, parent))


def _make_plain(run: Element) -> None:
    """Give a run of accidentals the face and size of the text around it."""
    del run.attrib["class"]
    size = round(float(run.attrib.pop("font-size", _SIGN_SIZE)) * _TEXT_SIZE / _SIGN_SIZE)
    if size != _TEXT_SIZE:
        run.set("font-size", str(size))


def _draw_opening(parent: Element, text: Element) -> None:
    """Draw the signs that a text opens with, and move the text behind them."""
    run = next((run for run in text.iter() if run.get("class") == "sign"), None)
    if run is None:
        return
    scale = float(run.get("font-size", text.get("font-size", 0))) / _EM
    signs = [_sign(sign) for sign in run.text or ""]
    width = sum(advance for _, advance in signs) * scale
    x, y = float(text.get("x", 0)), text.get("y", "0")
    x -= width / 2 if text.get("text-anchor") == "middle" else 0
    at = list(parent).index(text)
    for number, (outline, advance) in enumerate(signs):
        transform = f"translate({x:.0f},{y}) scale({scale:g},{-scale:g})"
        path = Element("path", {"d": outline, "transform": transform, "stroke": "none"})
        parent.insert(at + number, path)
        x += advance * scale
    if run is text:
        parent.remove(text)
        return
    text.remove(run)
    text.set("x", f"{x:.0f}")


@lru_cache(maxsize=64)
def _sign(sign: str) -> tuple[str, float]:
    """Return outline and advance of a sign of verovio's music font, in thousandths of an em."""
    code = f"{ord(sign):04X}"
    glyph = files("verovio").joinpath("data", "Leipzig", f"{code}.xml").read_text("utf-8")
    found = _OUTLINE.search(glyph)
    return found[1] if found else "", _advances()[code]


@lru_cache(maxsize=1)
def _advances() -> dict[str, float]:
    metrics = files("verovio").joinpath("data", "Leipzig.xml").read_text("utf-8")
    return {code: float(advance) for code, advance in _ADVANCE.findall(metrics)}
