"""The small picture that stands beside a write-up in the archive: what it shows of its charts."""

from collections.abc import Sequence

from sitegen.figures.incipit import engraved_incipit, plan_incipit, progression_incipit
from sitegen.kinds.kind import Drawing
from sitegen.pages.views import ChartView

_PIECES = ("engraved", "progression", "plan")
"""What is shown goes before what comes behind it here, wherever it stands on the page."""


def make_incipit(charts: Sequence[ChartView]) -> bytes:
    """Return the opening of the first engraved chart, else of a progression or plan, else b""."""
    drawing = _shown(charts)
    if drawing is None:
        return b""
    content, rights = drawing.content, drawing.rights
    if drawing.piece == "engraved":
        return engraved_incipit(content.narrow or content.wide, drawing.glyphs, rights)
    if drawing.piece == "progression":
        return progression_incipit(content.bars, rights)
    return plan_incipit(content.rows, rights)


def incipit_parts(charts: Sequence[ChartView]) -> tuple[object, ...]:
    """Return all that the picture of a write-up comes of."""
    drawing = _shown(charts)
    if drawing is None:
        return ("incipit",)
    if drawing.piece != "engraved":
        return "incipit", drawing.piece, drawing.content, drawing.rights
    content = drawing.content
    return "incipit", content.narrow or content.wide, drawing.glyphs, drawing.rights


def _shown(charts: Sequence[ChartView]) -> Drawing | None:
    drawings = [view.drawing for view in charts if view.drawing is not None]
    found = (one for piece in _PIECES for one in drawings if one.piece == piece)
    return next(found, None)
