"""Marks drawn into a finished sheet: arcs, slides, bends, dashed lines, signs in a tablature.

Sizes are in the sheet's units: a staff space is 180, the lines of a tablature are 315 apart.
"""

from dataclasses import dataclass
from xml.etree.ElementTree import Element, SubElement

from sitegen.engraving.marks import (
    Arc,
    BendArrow,
    BendCurve,
    Caption,
    DashedLine,
    FretSign,
    Mark,
    SlideLine,
    SlideStub,
)
from sitegen.engraving.svg.sheet import Sheet
from sitegen.engraving.svg.textwidth import text_width

FRET_SIZE = 324
RISE = 107
"""How far the foot of a fret number lies below the middle of its line."""

_CLEAR = 45
_HEAD = 215
_STUB = 240
_SLANT = 75
_STROKE = "22"
_TEXT = 405
_ROW = 300
_RAISE = 90
_LIFT = 60
_MARGIN = 100


@dataclass(frozen=True)
class _Body:
    """The box that a note takes up: what is drawn must stay clear of it."""

    left: float
    right: float
    middle: float
    home: Element


def draw_marks(sheet: Sheet, marks: tuple[Mark, ...]) -> None:
    """Draw the marks of a chart. Their notes must be on the sheet."""
    for mark in marks:
        match mark:
            case FretSign():
                _write_sign(sheet, mark)
            case Arc():
                _draw_arc(_body(sheet, mark.start), _body(sheet, mark.end))
            case Caption():
                start, end = _body(sheet, mark.start), _body(sheet, mark.end)
                _move_caption(sheet.by_id[mark.text], start, end)
            case SlideLine():
                _draw_slide(_body(sheet, mark.start), _body(sheet, mark.end), rises=mark.rises)
            case SlideStub():
                _draw_stub(_body(sheet, mark.note), into=mark.into, rises=mark.rises)
            case BendArrow():
                _draw_arrow(_body(sheet, mark.note), sheet.by_id[mark.text])
            case BendCurve():
                _draw_curve(_body(sheet, mark.note))
            case DashedLine():
                _draw_dashes(sheet.by_id[mark.text], _body(sheet, mark.last_note))


def raise_tempo(sheet: Sheet) -> None:
    """Lift the tempo mark clear of the meter that it stands over; verovio lets them touch."""
    for group in sheet.groups("tempo"):
        group.set("transform", f"translate(0,-{_LIFT})")


def place_sections(sheet: Sheet) -> None:
    """Let section names begin where their music does, and clear of the chords below them.

    Verovio centres them there, so that long names would leave the sheet, and does not count the
    raised part of a chord symbol as part of its height.
    """
    for group in sheet.groups("reh"):
        box = group.find("rect")
        if box is not None:
            left, width = float(box.get("x", 0)), float(box.get("width", 0))
            room = sheet.box[2] - sheet.margin[0] - _MARGIN - (left + width)
            shift = max(-left, min(width / 2 - _MARGIN, room))
            group.set("transform", f"translate({shift:.0f},-{_RAISE})")


def _body(sheet: Sheet, note: str) -> _Body:
    element = sheet.by_id[note]
    home = sheet.measure_of(element)
    spot = sheet.spot(note)
    if spot is None or home is None:
        raise ValueError(f"{note} is not drawn")
    text = element.find("text")
    if text is not None:
        half = text_width("".join(text.itertext()), FRET_SIZE) / 2
        return _Body(spot.x - half, spot.x + half, spot.y - RISE, home)
    return _Body(sheet.left_edge(element), spot.x + _HEAD, spot.y, home)


def _write_sign(sheet: Sheet, mark: FretSign) -> None:
    for span in sheet.by_id[mark.note].iter("tspan"):
        span.text = mark.text


def _line(home: Element, path: str, **attributes: str) -> None:
    SubElement(home, "path", {"d": path, "fill": "none", "stroke-width": _STROKE, **attributes})


def _same_line(start: _Body, end: _Body) -> bool:
    """Return whether two notes stand in one system: the later one to the right."""
    return start.right < end.left


def _draw_slide(start: _Body, end: _Body, *, rises: bool) -> None:
    slant = _SLANT if rises else -_SLANT
    if not _same_line(start, end):
        _draw_stub(start, into=False, rises=rises)
        _draw_stub(end, into=True, rises=rises)
        return
    left, right = start.right + _CLEAR, end.left - _CLEAR
    low, high = round(start.middle + slant), round(end.middle - slant)
    _line(start.home, f"M{left:.0f} {low}L{right:.0f} {high}")


def _draw_stub(body: _Body, *, into: bool, rises: bool) -> None:
    slant = _SLANT if rises else -_SLANT
    left = body.left - _CLEAR - _STUB if into else body.right + _CLEAR
    low, high = round(body.middle + slant), round(body.middle - slant)
    _line(body.home, f"M{left:.0f} {low}L{left + _STUB:.0f} {high}")


def _draw_arc(start: _Body, end: _Body) -> None:
    if _same_line(start, end):
        middle = ((start.left + start.right) / 2, (end.left + end.right) / 2)
        _bow(start.home, middle[0] + _CLEAR, middle[1] - _CLEAR, start.middle - RISE - _CLEAR)
        return
    reach = 2 * _STUB
    _bow(start.home, start.right, start.right + reach, start.middle - RISE - _CLEAR)
    _bow(end.home, end.left - reach, end.left, end.middle - RISE - _CLEAR)


def _move_caption(label: Element, start: _Body, end: _Body) -> None:
    """Centre a text over a note or between two; over a line break it stays near the first."""
    together = start == end or _same_line(start, end)
    middle = (start.left + end.right) / 2 if together else start.right + _STUB
    for text in label.iter("text"):
        lowest = start.middle - RISE - 2 * _CLEAR
        text.set("y", f"{min(float(text.get('y', 0)), lowest):.0f}")
        text.set("x", f"{middle:.0f}")
        text.set("text-anchor", "middle")


def _bow(home: Element, left: float, right: float, foot: float) -> None:
    """Draw a bow that is thicker in its middle, as slurs are."""
    shoulder = min(120.0, (right - left) / 3)
    outer, inner = foot - 120, foot - 95
    path = (
        f"M{left:.0f} {foot:.0f}"
        f"C{left + shoulder:.0f} {outer:.0f} {right - shoulder:.0f} {outer:.0f} "
        f"{right:.0f} {foot:.0f}"
        f"C{right - shoulder:.0f} {inner:.0f} {left + shoulder:.0f} {inner:.0f} "
        f"{left:.0f} {foot:.0f}"
    )
    SubElement(home, "path", {"d": path, "stroke-width": "9"})


def _draw_arrow(body: _Body, label: Element) -> None:
    """Draw the arrow of a bend up to its text, which moves over the arrow's head."""
    tip_x = body.right + 150
    text = label.find("text")
    if text is None:
        return
    text.set("x", f"{tip_x:.0f}")
    text.set("text-anchor", "middle")
    tip_y = float(text.get("y", 0)) + 60
    left = body.right + _CLEAR
    _line(
        body.home,
        f"M{left:.0f} {body.middle:.0f}C{left + 130:.0f} {body.middle:.0f} "
        f"{tip_x:.0f} {body.middle - 80:.0f} {tip_x:.0f} {tip_y + 100:.0f}",
    )
    head = f"M{tip_x:.0f} {tip_y:.0f}l-55 120h110z"
    SubElement(body.home, "path", {"d": head, "stroke": "none"})


def _draw_curve(body: _Body) -> None:
    left = body.right + _CLEAR
    _line(body.home, f"M{left:.0f} {body.middle:.0f}q150 -10 190 -200")


def _draw_dashes(label: Element, last: _Body) -> None:
    """Draw a dashed line from the text to the last note, with a stroke down at its end.

    Verovio's own dashes, few and far apart, go; they tell how the line runs over systems.
    """
    text = label.find("text")
    if text is None:
        return
    foot = float(text.get("y", 0))
    rows: dict[float, list[float]] = {}
    for rect in label.findall("rect"):
        left, height = float(rect.get("x", 0)), float(rect.get("y", 0))
        row = foot if abs(height - foot) < _ROW else height
        rows.setdefault(row, []).extend((left, left + float(rect.get("width", 0))))
        label.remove(rect)
    width = text_width("".join(text.itertext()), _TEXT)
    rows.setdefault(foot, []).append(float(text.get("x", 0)) + width + 80)
    *running, final = sorted(rows)
    for row in running:
        _dash(label, min(rows[row]), max(rows[row]), row - 100, ends=False)
    _dash(label, min(rows[final]), last.right, final - 100, ends=True)


def _dash(home: Element, left: float, right: float, height: float, *, ends: bool) -> None:
    if right <= left:
        return
    _line(home, f"M{left:.0f} {height:.0f}H{right:.0f}", **{"stroke-dasharray": "110 80"})
    if ends:
        _line(home, f"M{right:.0f} {height:.0f}v110")
