"""The plan of a song's form: its sections to scale, wide for a page and upright for a phone.

Sections with one letter share letter, shade and hatching, so that no colour is needed to see
what returns. A text that has no room in its section is left out: the table beside the plan has
them all. Lengths and places stand there in bars and in time; those of the classes `plan-length`
and `plan-bar-tick` are hidden until the page's styles show them in place of the others.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from string import ascii_uppercase
from typing import Literal

from sitegen.figures.lettering import fit_lines, text_width
from sitegen.figures.sheet import Anchor, Fill, Sheet, Target
from sitegen.score.clock import clock_text

WIDE, NARROW = 900, 340
"""Widths of the two layouts in pixels."""

_SHADES: tuple[Fill, ...] = ("plan-1", "plan-2", "plan-3", "plan-4")
_HATCHES = ("", "/", "\\", "x", "-", "|", "+")
_TIME_STEPS = (5, 10, 15, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600)
_BAR_STEPS = (1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 1024, 2048, 4096)
_LETTER, _NAME, _SMALL = 21, 14, 12.5
# Band of the shade and hatching in a wide plan, and in an upright one.
_BAND, _BAND_LEFT, _BAND_TOP = 12, 54, 73
# An upright section has texts from the first height on, of the full size from the second on; and
# a plan at most so high.
_LEAST_HEIGHT, _FULL_HEIGHT, _HIGHEST = 12, 17, 760


@dataclass(frozen=True)
class PlanLink:
    """A chart that a section names: its name on the page and where it stands, "" for unknown."""

    text: str
    href: str


@dataclass(frozen=True)
class PlanRow:
    """One section as the table prints it; texts that nothing gives are empty.

    `start` is "2:04", or "about 2:04" where it is counted from the tempo; `begin` and
    `end` are the seconds from which and up to which it is heard, to a thousandth; `share` is the
    section's part of all bars, in per cent.
    """

    letter: str
    name: str
    href: str
    bars: str
    start: str
    length: str
    charts: tuple[PlanLink, ...] = ()
    remark: str = ""
    begin: float | None = None
    end: float | None = None
    share: float = 0


@dataclass(frozen=True)
class PlanContent:
    """The plan in both layouts, its table and the findings as sentences."""

    svg: str
    narrow_svg: str
    rows: tuple[PlanRow, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True)
class PlanSection:
    """A section to draw, from `start` up to `end` in the plan's unit.

    `bars` is "16 bars", `length` the same in time ("0:37"), `first_bar` its number; the last two
    are "" where they are not told.
    """

    letter: str
    name: str
    bars: str
    start: Fraction
    end: Fraction
    target: Target
    length: str = ""
    first_bar: str = ""


@dataclass(frozen=True)
class Plan:
    """Everything that is drawn: sections along seconds, or along bars where no time is known."""

    anchor: str
    title: str
    unit: Literal["seconds", "bars"]
    sections: tuple[PlanSection, ...]
    end: Fraction


def draw_wide(plan: Plan) -> str:
    """Return the plan as an SVG 900 px wide: time runs from left to right."""
    sheet = Sheet(WIDE, 116, f"{plan.anchor}-wide")
    scale = (WIDE - 2) / float(plan.end)
    for number, section in enumerate(plan.sections):
        left = 1 + float(section.start) * scale
        width = float(section.end - section.start) * scale
        _draw_across(sheet, f"section-{number}", section, round(left, 2), round(width, 2))
    _draw_scale_across(sheet, plan, scale)
    if plan.unit == "seconds":
        _draw_bars_across(sheet, plan, scale)
    return sheet.svg("plan-wide", plan.title, _targets(plan.sections))


def _draw_across(
    sheet: Sheet, group: str, section: PlanSection, left: float, width: float
) -> None:
    shade, hatch = _pattern(section.letter)
    sheet.box(group, (left, 1), (width, _BAND_TOP - 1), fill="paper")
    sheet.box(group, (left, _BAND_TOP), (width, _BAND), fill=shade, hatch=hatch)
    letter_width = text_width(section.letter, _LETTER)
    margin = min(7, (width - letter_width) / 2)
    if margin < 1:
        return
    place = (round(left + margin, 2), 24)
    sheet.text(group, place, section.letter, role="plan-letter", size=_LETTER)
    if letter_width + text_width(section.bars, _SMALL) + 4 * margin <= width:
        _write_length(sheet, group, section, (round(left + width - margin, 2), 23))
    for line, text in enumerate(fit_lines(section.name, _NAME, width - margin - 4, lines=2)):
        place = (round(left + margin, 2), 45 + 17 * line)
        sheet.text(group, place, text, role="plan-name", size=_NAME)


def _write_length(
    sheet: Sheet, group: str, section: PlanSection, place: tuple[float, float]
) -> None:
    """Write a section's length in bars, and in its place, hidden, the one in time."""
    sheet.text(group, place, section.bars, role="plan-bars", size=_SMALL, anchor="right")
    if section.length:
        text, role = section.length, "plan-length"
        sheet.text(group, place, text, role=role, size=_SMALL, anchor="right", hidden=True)


def _draw_bars_across(sheet: Sheet, plan: Plan, scale: float) -> None:
    """Write the numbers of the bars where sections begin, hidden."""
    free = 0.0
    for section in plan.sections:
        left, width = 1 + float(section.start) * scale, text_width(section.first_bar, _SMALL)
        if section.first_bar and free <= left <= WIDE - width:
            place, text = (round(left, 2), 106), section.first_bar
            sheet.text("plan-scale", place, text, role="plan-bar-tick", size=_SMALL, hidden=True)
            free = left + width + 8


def _draw_scale_across(sheet: Sheet, plan: Plan, scale: float) -> None:
    """Draw ticks with their texts, and the length of the whole at the right end."""
    end_text = _tick(plan, plan.end) if plan.unit == "seconds" else ""
    free = WIDE - text_width(end_text, _SMALL) - 8
    for place, text in _ticks(plan, WIDE // 90):
        at = round(1 + place * scale, 2)
        half = text_width(text, _SMALL) / 2
        sheet.rule("plan-scale", (at, 85), (at, 91))
        if at + half <= free:
            anchor: Anchor = "center" if at > half else "left"
            spot = (at if at > half else 0, 106)
            sheet.text("plan-scale", spot, text, role="plan-tick", size=_SMALL, anchor=anchor)
    sheet.rule("plan-scale", (1, 85), (WIDE - 1, 85))
    if end_text:
        spot = (WIDE, 106)
        sheet.text("plan-scale", spot, end_text, role="plan-tick", size=_SMALL, anchor="right")
        sheet.rule("plan-scale", (WIDE - 1, 85), (WIDE - 1, 91))


def draw_narrow(plan: Plan) -> str:
    """Return the plan as an SVG 340 px wide: time runs downwards."""
    height = _narrow_height(plan)
    sheet = Sheet(NARROW, height + 8, f"{plan.anchor}-narrow")
    scale = height / float(plan.end)
    for number, section in enumerate(plan.sections):
        top = round(4 + float(section.start) * scale, 2)
        size = round(float(section.end - section.start) * scale, 2)
        _draw_down(sheet, f"section-{number}", section, top, size)
        if size >= _LEAST_HEIGHT:
            _write_start(sheet, plan, section, (_BAND_LEFT - 9, _baseline(top, size)))
    return sheet.svg("plan-narrow", plan.title, _targets(plan.sections))


def _write_start(
    sheet: Sheet, plan: Plan, section: PlanSection, place: tuple[float, float]
) -> None:
    """Write where an upright section starts, and in its place, hidden, its first bar."""
    group, text = "plan-scale", _tick(plan, section.start)
    sheet.text(group, place, text, role="plan-tick", size=_SMALL, anchor="right")
    if plan.unit == "seconds" and section.first_bar:
        text, role = section.first_bar, "plan-bar-tick"
        sheet.text(group, place, text, role=role, size=_SMALL, anchor="right", hidden=True)


def _narrow_height(plan: Plan) -> int:
    """Return a height that gives most sections room for a line, and each for a small one.

    Where that is too much, the shortest go without; a plan keeps within a screen and a half.
    """
    lengths = sorted(float(section.end - section.start) for section in plan.sections)
    usual, shortest = lengths[len(lengths) // 4] or 1, lengths[0] or 1
    wished = max(22 / usual, (_LEAST_HEIGHT + 0.1) / shortest) * float(plan.end)
    return int(min(max(wished, 160), _HIGHEST))


def _draw_down(sheet: Sheet, group: str, section: PlanSection, top: float, size: float) -> None:
    shade, hatch = _pattern(section.letter)
    sheet.box(group, (_BAND_LEFT, top), (_BAND, size), fill=shade, hatch=hatch)
    left = _BAND_LEFT + _BAND
    sheet.box(group, (left, top), (NARROW - left - 1, size), fill="paper")
    if size < _LEAST_HEIGHT:
        return
    base, name_left, right = _baseline(top, size), left + 44, NARROW - 9
    letter_size, name_size = (17, _NAME) if size >= _FULL_HEIGHT else (_SMALL, _SMALL)
    sheet.text(group, (left + 10, base), section.letter, role="plan-letter", size=letter_size)
    room = right - name_left - text_width(section.bars, _SMALL) - 8
    for text in fit_lines(section.name, name_size, room, lines=1):
        sheet.text(group, (name_left, base), text, role="plan-name", size=name_size)
    _write_length(sheet, group, section, (right, base))


def _baseline(top: float, size: float) -> float:
    """Return where the texts of an upright section stand: its middle, or a tall one's top."""
    return round(top + min(size / 2 + (5 if size >= _FULL_HEIGHT else 4), 18), 2)


def _targets(sections: Sequence[PlanSection]) -> dict[str, Target]:
    return {f"section-{number}": section.target for number, section in enumerate(sections)}


def _pattern(letter: str) -> tuple[Fill, str]:
    """Return shade and hatching of a letter; primes share those of their letter."""
    place = ascii_uppercase.index(letter[0])
    return _SHADES[place % len(_SHADES)], _HATCHES[place % len(_HATCHES)]


def _ticks(plan: Plan, most: int) -> list[tuple[int, str]]:
    """Return at most about `most` places of the scale with their texts, evenly spaced."""
    steps = _TIME_STEPS if plan.unit == "seconds" else _BAR_STEPS
    end = int(plan.end)
    step = next((step for step in steps if end // step <= most), steps[-1])
    return [(place, _tick(plan, Fraction(place))) for place in range(0, end + 1, step)]


def _tick(plan: Plan, place: Fraction) -> str:
    if plan.unit == "seconds":
        return clock_text(int(place + Fraction(1, 2)))
    return str(int(place) + 1)
