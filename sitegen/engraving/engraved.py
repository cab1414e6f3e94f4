"""A chart drawn: two widths of notation and the glyphs they share."""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from sitegen.analysis.reading import ChartReading
from sitegen.engraving.marks import Mark, marks_of
from sitegen.engraving.mei.document import write_plan
from sitegen.engraving.mei.plan import ScorePlan
from sitegen.engraving.mei.tab import tab_id
from sitegen.engraving.player_names import PlayerNames
from sitegen.engraving.svg import (
    Sheet,
    clean,
    draw_marks,
    place_sections,
    raise_tempo,
    redraw_tab_lines,
)
from sitegen.engraving.systems import NARROW, WIDE, Layouts, draw_sheet


@dataclass(frozen=True)
class Engraved:
    """A chart as inline SVG: `wide` for a column of notation, `narrow` for a phone.

    `glyphs` are the definitions that both use, by id; a page holds each once, in the `defs` of
    one hidden `svg`. `mei` is the file that was drawn, `plan` the layout that it was written from.
    """

    wide: str
    narrow: str
    glyphs: Mapping[str, str]
    mei: str
    plan: ScorePlan


def engrave(
    reading: ChartReading,
    prefix: str,
    title: str = "",
    summary: str = "",
    *,
    names: PlayerNames | None = None,
    found: Collection[str] = (),
) -> Engraved:
    """Return the chart drawn; every id in it starts with `prefix`, which a page uses once.

    `title` and `summary` become the drawing's name and description for who cannot see it.
    Notes, rests and bars have the ids `<prefix>-<part>-<bar>-<beat>` and `<prefix>-bar-<bar>`
    (with `<prefix>-narrow` in the narrow drawing). With `names` the chart is drawn as its players
    name it, with the same ids. `found` are ids of notes that are to be found one by one; else a
    chord is found as a whole.
    """
    return engrave_plan(ScorePlan(reading, names), prefix, title, summary, found)


def engrave_plan(
    plan: ScorePlan, prefix: str, title: str, summary: str, found: Collection[str]
) -> Engraved:
    """Return the chart of a plan drawn, as `engrave` does."""
    named, notes = (title or plan.reading.chart.title, summary), frozenset(_both_staves(found))
    mei, marks = write_plan(plan), marks_of(plan)
    layouts, lines = Layouts(mei), any(bar.opens_line for bar in plan.chart.bars[1:])
    sheet = layouts.sheet(NARROW, by_author=False)
    narrow, more = _finish(sheet, marks, f"{prefix}-narrow", named, notes)
    sheet = layouts.sheet(WIDE, by_author=lines)
    wide, glyphs = _finish(sheet, marks, prefix, named, notes)
    return Engraved(wide, narrow, dict(sorted({**glyphs, **more}.items())), mei, plan)


def _both_staves(found: Collection[str]) -> Iterator[str]:
    """Yield the ids of notes of chords on the staff and in the tablature."""
    for identity in found:
        event, mark, place = identity.rpartition("-n")
        if mark and place.isdecimal():
            yield identity
            yield f"{tab_id(event)}{mark}{place}"


def engrave_wide(reading: ChartReading, prefix: str, title: str, summary: str) -> Engraved:
    """Return the chart drawn for a column alone, as `engrave` does; `narrow` is empty."""
    plan = ScorePlan(reading)
    mei = write_plan(plan)
    lines = any(bar.opens_line for bar in reading.chart.bars[1:])
    sheet = draw_sheet(mei, WIDE, by_author=lines)
    wide, glyphs = _finish(sheet, marks_of(plan), prefix, (title, summary))
    return Engraved(wide, "", glyphs, mei, plan)


def _finish(
    sheet: Sheet,
    marks: tuple[Mark, ...],
    prefix: str,
    named: tuple[str, str],
    found: Collection[str] = (),
) -> tuple[str, dict[str, str]]:
    """Return a drawn sheet with its marks, as SVG for a page, and the glyphs that it uses."""
    draw_marks(sheet, marks)
    redraw_tab_lines(sheet)
    raise_tempo(sheet)
    place_sections(sheet)
    return clean(sheet, prefix, *named, found)
