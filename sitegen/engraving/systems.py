"""How a chart falls into systems, and the sheet that verovio draws of it."""

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from xml.etree import ElementTree as ET
from xml.etree.ElementTree import Element

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
    "systemDivider": "none",
    "topMarginHarm": 2.6,
    "bottomMarginHarm": 1.8,
    "breaksNoWidow": True,
    "minLastJustification": 0.45,
    "lyricVerseCollapse": True,
}
# The distance between notes of one length: verovio's own, and the wider one that leaves words
# and slides their room. A last line keeps it too, which spreading a page would not give it.
_TIGHT, _AIRY = 0.25, 0.36
# Verovio's page units are tenths of the units it draws in.
_DRAWN = 10
_ENDLESS = 100_000
# Lines are even to a drawing unit; a staff space has 180.
_EVEN_ENOUGH = 1.0
_MEI = "{http://www.music-encoding.org/ns/mei}"
ET.register_namespace("", _MEI.strip("{}"))
_STAFF_LINE = re.compile(r"M(-?[\d.]+) \S+ L(-?[\d.]+)")


def draw_sheet(mei: str, width: int, *, by_author: bool) -> Sheet:
    """Return the sheet of an MEI file, at most `width` page units wide where a bar allows it.

    `by_author` keeps the systems of the file (`sb`) where the widest of them fits, with air
    between the notes or without; otherwise bars are laid out at their natural width and lines
    broken where the next bar has no room. Verovio's own breaks squeeze bars together until
    words collide. Several systems are spread to one width; one alone stays as wide as it is.
    """
    for breaks in ("encoded", "none") if by_author else ("none",):
        for spacing in (_AIRY, _TIGHT):
            sheet = draw_endless(mei, breaks, spacing)
            if sheet.box[2] / _DRAWN <= width:
                return _spread(mei, sheet, breaks, spacing)
    bars = measure_bars(sheet)
    room = max(width * _DRAWN, *(bars.alone(n) for n in range(len(bars.edges) - 1)))
    broken = _with_breaks(mei, bars.starts(room))
    return _drawn(broken, breaks="encoded", pageWidth=math.ceil(room / _DRAWN))


def draw_endless(mei: str, breaks: str = "none", spacing: float = _TIGHT) -> Sheet:
    """Return the sheet of an MEI file as wide as its music is; `breaks` is none or encoded."""
    return _drawn(
        mei, breaks=breaks, spacingLinear=spacing, adjustPageWidth=True, pageWidth=_ENDLESS
    )


@dataclass(frozen=True)
class BarWidths:
    """Where the bars of one endless system stand, in verovio's drawing units.

    `edges` are the places of the bar lines, the left and right end of the staff included;
    `around` is what the page adds to a staff at both sides, `opening` what clef and signature
    take at the start of a later system.
    """

    edges: tuple[float, ...]
    around: float
    opening: float

    def alone(self, bar: int) -> float:
        """Return the width of a page whose system holds only this bar (from 0)."""
        return self._width(bar, bar + 1)

    def starts(self, room: float) -> list[int]:
        """Return the bars before which a line is broken so that every line fits into `room`.

        There are as few lines as possible, and they are as even as they can be.
        """
        fewest = len(self._fill(room))
        # Narrower lines are never fewer, so the narrowest that stay as few are found by halving.
        narrow, wide = 0.0, room
        while wide - narrow > _EVEN_ENOUGH:
            middle = (narrow + wide) / 2
            if len(self._fill(middle)) == fewest:
                wide = middle
            else:
                narrow = middle
        return self._fill(wide)

    def _fill(self, room: float) -> list[int]:
        starts, first = [], 0
        for bar in range(len(self.edges) - 1):
            if bar > first and self._width(first, bar + 1) > room:
                starts.append(bar)
                first = bar
        return starts

    def _width(self, first: int, end: int) -> float:
        opening = self.opening if first else self.edges[0]
        return self.around + opening + self.edges[end] - self.edges[first]


def measure_bars(sheet: Sheet) -> BarWidths:
    """Return the widths of the bars of a sheet with one system."""
    lines = [_staff_line(group) for group in sheet.music.iter("g") if _is(group, "measure")]
    found = [line for line in lines if line is not None]
    edges = (found[0][0], *(end for _, end in found))
    notes = (sheet.left_edge(g) for g in sheet.music.iter("g") if _is_event(g))
    first_note = min(notes, default=edges[0])
    left, _ = sheet.margin
    return BarWidths(edges, 2 * left, first_note - edges[0])


def _is(group: Element, name: str) -> bool:
    return name in group.get("class", "").split()


def _is_event(group: Element) -> bool:
    return any(_is(group, name) for name in ("note", "rest")) and group.find(".//use") is not None


def _staff_line(measure: Element) -> tuple[float, float] | None:
    """Return where the first staff line of a bar starts and ends."""
    for staff in measure.iter("g"):
        if _is(staff, "staff"):
            for path in staff.iter("path"):
                match = _STAFF_LINE.match(path.get("d", ""))
                if match:
                    return float(match[1]), float(match[2])
    return None


def _with_breaks(mei: str, starts: list[int]) -> str:
    """Return the MEI with system breaks before these bars (from 0) and nowhere else."""
    root = ET.fromstring(mei)  # noqa: S314 - made by this room
    parents = {inner: outer for outer in root.iter() for inner in outer}
    for old in list(root.iter(f"{_MEI}sb")):
        parents[old].remove(old)
    measures = list(root.iter(f"{_MEI}measure"))
    for measure in (measures[bar] for bar in starts):
        home = parents[measure]
        at = list(home).index(measure)
        # A change of meter belongs to the bar it stands before, and the bracket of an ending to
        # its first bar: broken inside it, it would look as if it came on from the line above.
        if at and home[at - 1].tag == f"{_MEI}scoreDef":
            at -= 1
        if not at and home.tag == f"{_MEI}ending":
            home, at = parents[home], list(parents[home]).index(home)
        home.insert(at, ET.Element(f"{_MEI}sb"))
    return ET.tostring(root, encoding="unicode")


def _spread(mei: str, sheet: Sheet, breaks: str, spacing: float) -> Sheet:
    """Return a sheet with all its systems as wide as the widest."""
    if breaks == "none":
        return sheet
    natural = math.ceil(sheet.box[2] / _DRAWN)
    return _drawn(mei, breaks=breaks, spacingLinear=spacing, pageWidth=natural)


def _drawn(mei: str, **options: object) -> Sheet:
    return Sheet(render(mei, {**_OPTIONS, **options}).svg)
