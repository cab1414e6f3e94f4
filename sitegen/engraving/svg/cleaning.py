"""From a drawn sheet to the SVG of a page: no colours, fonts, styles or needless groups."""

from collections.abc import Collection

from sitegen.engraving.markup import attributes, escaped, markup
from sitegen.engraving.svg.flattening import Flattening
from sitegen.engraving.svg.glyphs import Glyphs
from sitegen.engraving.svg.paths import USUAL_STROKE
from sitegen.engraving.svg.sheet import Sheet
from sitegen.engraving.svg.text import USUAL_SIZE

_REM = 16


def clean(
    sheet: Sheet, prefix: str, title: str, summary: str, found: Collection[str] = ()
) -> tuple[str, dict[str, str]]:
    """Return the SVG for a page and the glyph definitions it refers to, by id.

    Ids of notes, rests and bars stay and begin with `prefix`, those of notes in chords only where
    they are to be `found`; `title` and `summary` name the
    drawing. Everything is drawn in `currentColor`; the widest it gets is its own size, in rem.
    """
    glyphs = Glyphs(sheet.root)
    music = Flattening(prefix, found, glyphs).written(sheet.music)
    named = "".join(
        markup(tag, [("id", f"{prefix}-{tag}")], escaped(content))
        for tag, content in (("title", title), ("desc", summary))
    )
    return f"<svg{_attributes(sheet, prefix)}>{named}{music}</svg>", glyphs.definitions


def _attributes(sheet: Sheet, prefix: str) -> str:
    left, top = sheet.margin
    box = (-left, -top, sheet.box[2], sheet.box[3])
    return attributes(
        {
            "class": "notation",
            "viewBox": " ".join(f"{n:g}" for n in box),
            "role": "img",
            "aria-labelledby": f"{prefix}-title {prefix}-desc",
            "fill": "currentColor",
            "stroke": "currentColor",
            "stroke-width": USUAL_STROKE,
            "font-size": USUAL_SIZE,
            "style": f"max-width:{sheet.size[0] / _REM:g}rem",
        }.items()
    )
