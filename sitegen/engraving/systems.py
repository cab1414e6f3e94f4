"""How a chart falls into systems, and the sheet that verovio draws of it."""

import math
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from sitegen.engraving.svg import Sheet
from sitegen.engraving.toolkit import render

WIDE, NARROW = 1600, 900
"""The widest a sheet gets, in verovio's page units, for a column of notation and for a phone."""

# The distance between notes of one length: verovio's own, and the wider one that leaves words
# and slides their room. A last line keeps it too, which spreading a page would not give it.
_TIGHT, _AIRY = 0.25, 0.36
# Distances in verovio's own units, found by looking; the left margin leaves room for brackets.
# What differs between sheets is named too: the toolkit starts anew where an option is left out.
_OPTIONS: Mapping[str, object] = {
    "header": "none",
    "footer": "none",
    "adjustPageHeight": True,
    "adjustPageWidth": False,
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
    "spacingLinear": _TIGHT,
    "spacingStaff": 8,
    "spacingSystem": 6,
    "systemDivider": "none",
    "topMarginHarm": 2.6,
    "bottomMarginHarm": 1.8,
    "breaksNoWidow": True,
    "minLastJustification": 0.45,
    "lyricVerseCollapse": True,
}
# With air between its notes a bar is seldom narrower: a guess at which spacing to try first.
_USUAL_BAR = 460
# Verovio's page units are tenths of the units it draws in.
_DRAWN = 10
_ENDLESS = 100_000
# Lines are even to a drawing unit; a staff space has 180.
_EVEN_ENOUGH = 1.0
_AUTHORS_BREAK = "<sb />"
_MEASURE = "<measure "
_STAFF_LINE = re.compile(r'd="M(-?[\d.]+) \S+ L(-?[\d.]+)')
_TAG = re.compile(r"<g\b([^>]*)>|</g>|<use\b([^>]*)>")
_NOTE = re.compile(r'class="(?:note|rest)\b')
_ACROSS = re.compile(r"translate\((-?[\d.]+)")


def draw_sheet(mei: str, width: int, *, by_author: bool) -> Sheet:
    """Return the sheet of an MEI file, as `Layouts` draws it."""
    return Layouts(mei).sheet(width, by_author=by_author)


def draw_endless(mei: str, breaks: str = "none", spacing: float = _TIGHT) -> Sheet:
    """Return the sheet of an MEI file as wide as its music is; `breaks` is none or encoded."""
    return _drawn(
        mei, breaks=breaks, spacingLinear=spacing, adjustPageWidth=True, pageWidth=_ENDLESS
    )


class Layouts:
    """The sheets of one MEI file in different widths; what they have in common is drawn once.

    The narrowest is best asked for first: what is drawn for it answers most for the others.
    """

    def __init__(self, mei: str) -> None:
        self._mei = {"encoded": mei, "none": mei.replace(_AUTHORS_BREAK, "")}
        self._bar_count = mei.count(_MEASURE)
        self._endless: dict[tuple[str, float], Sheet] = {}

    def sheet(self, width: int, *, by_author: bool) -> Sheet:
        """Return a sheet of its own, at most `width` page units wide where a bar allows it.

        `by_author` keeps the systems of the file (`sb`) where the widest of them fits, with air
        between the notes or without; otherwise bars are laid out at their natural width and lines
        broken where the next bar has no room. Verovio's own breaks squeeze bars together until
        words collide. Several systems are spread to one width; one alone stays as wide as it is.
        """
        for breaks in ("encoded", "none") if by_author else ("none",):
            for spacing in (_AIRY, _TIGHT):
                if self._fits(breaks, spacing, width):
                    return self._spread(breaks, spacing)
        bars = self._bars
        room = max(width * _DRAWN, *(bars.alone(n) for n in range(len(bars.edges) - 1)))
        broken = _with_breaks(self._mei["none"], bars.starts(room))
        return _drawn(broken, breaks="encoded", pageWidth=math.ceil(room / _DRAWN))

    def _fits(self, breaks: str, spacing: float, width: int) -> bool:
        """Tell whether a layout keeps to a width; it is drawn only where that is open.

        Music is as wide with more air between its notes, or wider, and so it is in one line beside
        its widest system: what has been drawn too wide already answers for those. So do bars of
        one line, for systems of the author's that they do not fit into.
        """
        asked, is_long = (breaks, spacing), self._bar_count * _USUAL_BAR > width
        if asked == ("none", _AIRY) and asked not in self._endless and is_long:
            self._natural("none", _TIGHT)
        for (lines, air), sheet in self._endless.items():
            narrower = air <= spacing and lines in (breaks, "encoded")
            if narrower and sheet.box[2] / _DRAWN > width:
                return False
        if breaks == "encoded" and ("none", _TIGHT) in self._endless:
            starts = _author_starts(self._mei["encoded"])
            if self._bars.least(starts) / _DRAWN > width:
                return False
        return self._natural(breaks, spacing).box[2] / _DRAWN <= width

    @cached_property
    def _bars(self) -> "BarWidths":
        return measure_bars(self._natural("none", _TIGHT))

    def _natural(self, breaks: str, spacing: float) -> Sheet:
        key = (breaks, spacing)
        if key not in self._endless:
            self._endless[key] = draw_endless(self._mei[breaks], *key)
        return self._endless[key]

    def _spread(self, breaks: str, spacing: float) -> Sheet:
        """Return a sheet with all its systems as wide as the widest."""
        sheet = self._natural(breaks, spacing)
        if breaks == "none":
            return Sheet(sheet.svg)
        natural = math.ceil(sheet.box[2] / _DRAWN)
        return _drawn(self._mei[breaks], breaks=breaks, spacingLinear=spacing, pageWidth=natural)


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

    def least(self, starts: Sequence[int]) -> float:
        """Return what the widest of the lines that start at these bars (from 0) takes at least.

        It is its bars' width and the margin before them; clef and signature take more.
        """
        lines = pairwise((0, *starts, len(self.edges) - 1))
        first, *others = (self.edges[end] - self.edges[start] for start, end in lines)
        return self.around / 2 + max(self.edges[0] + first, *others, 0.0)

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
    first, *others = sheet.svg.split('class="measure"')[1:]
    lines = [line for bar in (first, *others) if (line := _staff_line(bar)) is not None]
    edges = (lines[0][0], *(end for _, end in lines))
    first_note = min(_note_edges(first), default=edges[0])
    left, _ = sheet.margin
    return BarWidths(edges, 2 * left, first_note - edges[0])


def _staff_line(measure: str) -> tuple[float, float] | None:
    """Return where the first staff line of a bar starts and ends."""
    match = _STAFF_LINE.search(measure, max(measure.find('class="staff"'), 0))
    return (float(match[1]), float(match[2])) if match else None


def _note_edges(measure: str) -> Iterator[float]:
    """Yield the left edges of all glyphs of a bar's notes and rests."""
    # How many groups are open, and how many were where the note began that is open now.
    depth, note = 0, None
    for tag in _TAG.finditer(measure):
        opening, glyph = tag.groups()
        if glyph is not None:
            across = _ACROSS.search(glyph)
            if note is not None and across is not None:
                yield float(across[1])
        elif opening is None:
            depth -= 1
            note = None if note is not None and depth <= note else note
        elif not opening.endswith("/"):
            note = depth if note is None and _NOTE.search(opening) else note
            depth += 1


def _author_starts(mei: str) -> list[int]:
    """Return the bars (from 0) before which the file has a system break."""
    before = mei.split(_MEASURE)[:-1]
    return [bar for bar, written in enumerate(before) if bar and _AUTHORS_BREAK in written]


def _with_breaks(mei: str, starts: Sequence[int]) -> str:
    """Return the MEI with system breaks before these bars (from 0); it has none yet."""
    first, *others = mei.split(_MEASURE)
    written = [first]
    for bar, measure in enumerate(others):
        if bar in starts:
            at = _break_place(written[-1])
            written[-1] = f"{written[-1][:at]}{_AUTHORS_BREAK}{written[-1][at:]}"
        written.append(measure)
    return _MEASURE.join(written)


def _break_place(before: str) -> int:
    """Return where a line is broken in what stands before a bar.

    A change of meter belongs to the bar it stands before, and the bracket of an ending to its
    first bar: broken inside it, it would look as if it came on from the line above.
    """
    if before.endswith("</scoreDef>"):
        return before.rindex("<scoreDef>")
    last = before.rindex("<")
    return last if before.startswith("<ending ", last) else len(before)


def _drawn(mei: str, **options: object) -> Sheet:
    return Sheet(render(mei, {**_OPTIONS, **options}).svg)
