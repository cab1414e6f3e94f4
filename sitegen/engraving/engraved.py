"""A chart drawn: two widths of notation and the glyphs they share."""

from collections.abc import Mapping
from dataclasses import dataclass

from sitegen.analysis.reading import ChartReading
from sitegen.engraving.marks import marks_of
from sitegen.engraving.mei import write_mei
from sitegen.engraving.mei.plan import ScorePlan
from sitegen.engraving.svg import clean, draw_marks, place_sections, raise_tempo, redraw_tab_lines
from sitegen.engraving.systems import NARROW, WIDE, draw_sheet


@dataclass(frozen=True)
class Engraved:
    """A chart as inline SVG: `wide` for a column of notation, `narrow` for a phone.

    `glyphs` are the definitions that both use, by id; a page holds each once, in the `defs` of
    one hidden `svg`. `mei` is the file that was drawn.
    """

    wide: str
    narrow: str
    glyphs: Mapping[str, str]
    mei: str


def engrave(reading: ChartReading, prefix: str, title: str = "", summary: str = "") -> Engraved:
    """Return the chart drawn; every id in it starts with `prefix`, which a page uses once.

    `title` and `summary` become the drawing's name and description for who cannot see it.
    Notes, rests and bars have the ids `<prefix>-<part>-<bar>-<beat>` and `<prefix>-bar-<bar>`
    (with `<prefix>-narrow` in the narrow drawing).
    """
    mei = write_mei(reading)
    lines = any(bar.opens_line for bar in reading.chart.bars[1:])
    wide, glyphs = _draw(reading, mei, WIDE, prefix, (title, summary), by_author=lines)
    narrow, more = _draw(
        reading, write_mei(reading, "narrow"), NARROW, f"{prefix}-narrow", (title, summary)
    )
    return Engraved(wide, narrow, dict(sorted({**glyphs, **more}.items())), mei)


def _draw(
    reading: ChartReading,
    mei: str,
    width: int,
    prefix: str,
    named: tuple[str, str],
    *,
    by_author: bool = False,
) -> tuple[str, dict[str, str]]:
    sheet = draw_sheet(mei, width, by_author=by_author)
    draw_marks(sheet, marks_of(ScorePlan(reading)))
    redraw_tab_lines(sheet)
    raise_tempo(sheet)
    place_sections(sheet)
    title, summary = named
    return clean(sheet, prefix, title or reading.chart.title, summary)
