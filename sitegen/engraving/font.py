"""The few signs of the music font that stand in text, made at build time from verovio's own.

Leipzig comes with verovio under the SIL Open Font License 1.1. The subset goes by a family name
of its own, as that licence asks.
"""

import base64
import io
import re
from functools import lru_cache
from importlib.resources import files

FAMILY = "Notation Signs"
"""The family name under which a page's style declares the font."""

_NAMES = {1: FAMILY, 6: FAMILY.replace(" ", "")}
# SMuFL: accidentals in text and for figured bass, a wave of vibrato, metronome note values.
_SIGNS = (*range(0xE260, 0xE265), 0xEAA4, *range(0xEA50, 0xEA70), *range(0xECA0, 0xECB8))
_PACKED = re.compile(r"base64,([A-Za-z0-9+/=]+)")


@lru_cache(maxsize=1)
def notation_font() -> bytes:
    """Return the subset as WOFF2: accidentals and metronome notes; the same bytes every time."""
    from fontTools.ttLib import woff2  # noqa: PLC0415 - heavy, and only a build needs it

    packed = io.BytesIO()
    woff2.compress(io.BytesIO(notation_font_file()), packed)
    return packed.getvalue()


@lru_cache(maxsize=1)
def notation_font_file() -> bytes:
    """Return the subset as an OpenType file, for what draws outside of a browser."""
    from fontTools import subset  # noqa: PLC0415 - heavy, and only a build needs it
    from fontTools.ttLib import TTFont  # noqa: PLC0415 - the same

    options = subset.Options(hinting=False, notdef_outline=True)
    options.name_IDs = [1, 2, 6]
    options.drop_tables += ["FFTM"]
    font = TTFont(io.BytesIO(_installed()), recalcTimestamp=False)
    pruned = subset.Subsetter(options)
    pruned.populate(unicodes=_SIGNS)
    pruned.subset(font)
    for record in font["name"].names:
        if record.nameID in _NAMES:
            record.string = _NAMES[record.nameID]
    font.flavor = None
    packed = io.BytesIO()
    font.save(packed)
    return packed.getvalue()


def _installed() -> bytes:
    sheet = files("verovio").joinpath("data", "Leipzig.css").read_text(encoding="utf-8")
    packed = _PACKED.search(sheet)
    if packed is None:
        raise ValueError("the installed verovio carries no Leipzig font")
    return base64.b64decode(packed[1])
