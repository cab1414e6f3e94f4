"""How a chart falls into systems, and the sheet that verovio draws of it."""

from collections.abc import Mapping

from sitegen.engraving.svg import Sheet
from sitegen.engraving.toolkit import render

WIDE, NARROW = 1600, 900
"""The widest a sheet gets, in verovio's page units, for a column of notation and for a phone."""

# Distances in verovio's own units, found by looking; the left margin leaves room for brackets.
_OPTIONS: Mapping[str, object] = {
    "header": "none",
    "footer": "none",
    "adjustPageHeight": True,
    "pageHeight": 60000,
    "scale": 45,
    "pageMarginTop": 10,
    "pageMarginRight": 10,
    "pageMarginBottom": 10,
    "pageMarginLeft": 45,
    "svgViewBox": True,
    "svgRemoveXlink": True,
    "svgFormatRaw": True,
    "smuflTextFont": "none",
    "xmlIdChecksum": True,
    "spacingStaff": 8,
    "spacingSystem": 6,
    "topMarginHarm": 2.6,
    "bottomMarginHarm": 1.8,
    "breaksNoWidow": True,
    "minLastJustification": 0.6,
    "lyricVerseCollapse": True,
}
# How much further than at its tightest a sheet of several systems is spread.
_AIR = 1.3
# Verovio's page units are tenths of the units it draws in.
_DRAWN = 10


def draw_sheet(mei: str, width: int, *, by_author: bool) -> Sheet:
    """Return the sheet of an MEI file, at most `width` page units wide.

    `by_author` keeps the systems of the file (`sb`) where the widest of them fits; otherwise
    lines break where they are full. Several systems are spread to one width; one alone stays
    as wide as it is.
    """
    if by_author:
        sheet = _drawn(mei, breaks="encoded", adjustPageWidth=True, pageWidth=width)
        natural = sheet.box[2] / _DRAWN
        if natural <= width:
            return _drawn(mei, breaks="encoded", pageWidth=round(min(width, _AIR * natural)))
    sheet = _drawn(mei, breaks="auto", adjustPageWidth=True, pageWidth=width)
    if sheet.system_count == 1:
        return sheet
    return _drawn(mei, breaks="auto", pageWidth=width)


def _drawn(mei: str, **options: object) -> Sheet:
    return Sheet(render(mei, {**_OPTIONS, **options}).svg)
