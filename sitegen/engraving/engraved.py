"""A chart drawn: two widths of notation and the glyphs they share."""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from sitegen.analysis.reading import ChartReading
from sitegen.engraving.marks import marks_of
from sitegen.engraving.mei import write_mei
from sitegen.engraving.mei.plan import ScorePlan
from sitegen.engraving.mei.tab import tab_id
from sitegen.engraving.player_names import PlayerNames
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
    plan, named = ScorePlan(reading, names), (title or reading.chart.title, summary)
    notes = frozenset(_both_staves(found))
    mei = write_mei(reading, names=names)
    lines = any(bar.opens_line for bar in reading.chart.bars[1:])
    wide, glyphs = _draw(plan, mei, WIDE, prefix, named, notes, by_author=lines)
    broken = write_mei(reading, "narrow", names)
    narrow, more = _draw(plan, broken, NARROW, f"{prefix}-narrow", named, notes)
    return Engraved(wide, narrow, dict(sorted({**glyphs, **more}.items())), mei)


def _both_staves(found: Collection[str]) -> Iterator[str]:
    """Yield the ids of notes of chords on the staff and in the tablature."""
    for identity in found:
        event, mark, place = identity.rpartition("-n")
        if mark and place.isdecimal():
            yield identity
            yield f"{tab_id(event)}{mark}{place}"


def engrave_wide(reading: ChartReading, prefix: str, title: str, summary: str) -> Engraved:
    """Return the chart drawn for a column alone, as `engrave` does; `narrow` is empty."""
    mei = write_mei(reading)
    lines = any(bar.opens_line for bar in reading.chart.bars[1:])
    plan, named = ScorePlan(reading), (title, summary)
    wide, glyphs = _draw(plan, mei, WIDE, prefix, named, by_author=lines)
    return Engraved(wide, "", glyphs, mei)


def _draw(
    plan: ScorePlan,
    mei: str,
    width: int,
    prefix: str,
    named: tuple[str, str],
    found: Collection[str] = (),
    *,
    by_author: bool = False,
) -> tuple[str, dict[str, str]]:
    sheet = draw_sheet(mei, width, by_author=by_author)
    draw_marks(sheet, marks_of(plan))
    redraw_tab_lines(sheet)
    raise_tempo(sheet)
    place_sections(sheet)
    return clean(sheet, prefix, *named, found)
