"""From a drawn sheet to the SVG of a page: no colours, fonts, styles or needless groups."""

from collections.abc import Collection
from xml.etree import ElementTree as ET
from xml.etree.ElementTree import Element

from sitegen.engraving.svg.brackets import mark_brackets
from sitegen.engraving.svg.flattening import flatten
from sitegen.engraving.svg.glyphs import share_glyphs
from sitegen.engraving.svg.paths import USUAL_STROKE, shorten_paths
from sitegen.engraving.svg.sheet import Sheet
from sitegen.engraving.svg.text import USUAL_SIZE, shorten_text

_REM = 16


def clean(
    sheet: Sheet, prefix: str, title: str, summary: str, found: Collection[str] = ()
) -> tuple[str, dict[str, str]]:
    """Return the SVG for a page and the glyph definitions it refers to, by id.

    Ids of notes, rests and bars stay and begin with `prefix`, those of notes in chords only where
    they are to be `found`; `title` and `summary` name the
    drawing. Everything is drawn in `currentColor`; the widest it gets is its own size, in rem.
    """
    glyphs = share_glyphs(sheet.root)
    shorten_text(sheet.music)
    mark_brackets(sheet.music)
    flatten(sheet.music, prefix, found)
    shorten_paths(sheet.music)
    root = _root(sheet, prefix)
    for tag, content in (("title", title), ("desc", summary)):
        named = Element(tag, {"id": f"{prefix}-{tag}"})
        named.text = content
        root.append(named)
    root.extend(sheet.music)
    return ET.tostring(root, encoding="unicode"), glyphs


def _root(sheet: Sheet, prefix: str) -> Element:
    left, top = sheet.margin
    box = (-left, -top, sheet.box[2], sheet.box[3])
    attributes = {
        "class": "notation",
        "viewBox": " ".join(f"{n:g}" for n in box),
        "role": "img",
        "aria-labelledby": f"{prefix}-title {prefix}-desc",
        "fill": "currentColor",
        "stroke": "currentColor",
        "stroke-width": USUAL_STROKE,
        "font-size": USUAL_SIZE,
        "style": f"max-width:{sheet.size[0] / _REM:g}rem",
    }
    return Element("svg", attributes)
