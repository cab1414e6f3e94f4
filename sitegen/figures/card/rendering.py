"""A card's SVG as a picture, set in our own faces and never in the system's."""

import threading
from typing import TYPE_CHECKING

from sitegen.engraving import notation_font_file
from sitegen.figures.card.faces import FAMILY, face_files

if TYPE_CHECKING:
    from resvg.usvg import Options

_AS_IT_IS = (1.0, 0.0, 0.0, 0.0, 1.0, 0.0)
"""The transformation that changes nothing, row by row."""


class _Loaded(threading.local):
    """The renderer with the faces, loaded once; what is loaded by a thread stays in it."""

    options: "Options | None" = None


_LOADED = _Loaded()


def render_png(svg: str) -> bytes:
    """Return an SVG as PNG in its own size; the same bytes for the same SVG, on every machine."""
    from resvg import render, usvg  # noqa: PLC0415 - only a build needs it

    if _LOADED.options is None:
        _LOADED.options = _load()
    return render(usvg.Tree.from_str(svg, _LOADED.options), _AS_IT_IS)


def _load() -> "Options":
    from resvg import usvg  # noqa: PLC0415 - only a build needs it

    options = usvg.Options.default()
    options.font_family = FAMILY
    for path in face_files():
        options.load_font_file(str(path))
    options.load_font_data(notation_font_file())
    return options
