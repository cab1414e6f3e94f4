"""The picture that link previews show of a write-up: made from what is drawn for its page."""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, fields

from sitegen.article.front import FrontMatter
from sitegen.figures.card import (
    HEIGHT,
    SHAPE,
    WIDTH,
    CardText,
    Opening,
    Palette,
    cut_opening,
    draw_card,
)
from sitegen.pages.sharing import song_line
from sitegen.pages.views import CardView, ChartView, SiteView

_ENGRAVED = "engraved"
"""The piece that lays out notation: a drawing whose content has it `wide`."""


@dataclass(frozen=True)
class Card:
    """A card: its file in the folder of the write-up, and what the page says of it."""

    name: str
    data: bytes
    view: CardView


def make_card(
    site: SiteView,
    front: FrontMatter,
    charts: Collection[ChartView],
    colours: Mapping[str, str],
    taken: Collection[str],
) -> Card:
    """Return the card of a write-up, with the opening of its first engraved chart.

    `colours` are the theme's by name, `taken` the names of the files beside the page.
    """
    first = _opening_chart(charts)
    text = CardText(front.title, front.song.title, front.song.artist, site.title)
    name = _free_name(taken)
    address = f"{site.address}{name}" if site.address else ""
    view = CardView(address, WIDTH, HEIGHT, _alt(front, first))
    return Card(name, draw_card(text, _opening(first), _palette(colours)), view)


def card_parts(
    site: SiteView,
    front: FrontMatter,
    charts: Collection[ChartView],
    colours: Mapping[str, str],
    taken: Collection[str],
) -> tuple[object, ...]:
    """Return all that the card of a write-up comes of."""
    first = _opening_chart(charts)
    drawing = None if first is None else first.drawing
    opening = None if drawing is None else (drawing.content.wide, drawing.glyphs)
    name = "" if first is None else first.name
    return "card", site.title, site.address, front, name, opening, colours, sorted(taken)


def _opening_chart(charts: Iterable[ChartView]) -> ChartView | None:
    """Return the chart whose first bars are on the card: the first engraved one."""
    engraved = (view for view in charts if view.drawing and view.drawing.piece == _ENGRAVED)
    return next(engraved, None)


def _opening(chart: ChartView | None) -> Opening | None:
    if chart is None or chart.drawing is None:
        return None
    return cut_opening(chart.drawing.content.wide, chart.drawing.glyphs, SHAPE)


def _palette(colours: Mapping[str, str]) -> Palette:
    """Return the theme's colours, and the usual ones where it calls none so."""
    known = {field.name for field in fields(Palette)}
    return Palette(**{name: colour for name, colour in colours.items() if name in known})


def _free_name(taken: Collection[str]) -> str:
    """Return a name that no other file has; capitals make no difference on many systems."""
    name, others = "card.png", {other.casefold() for other in taken}
    while name in others:
        name = f"link-{name}"
    return name


def _alt(front: FrontMatter, first: ChartView | None) -> str:
    """Return what the card shows."""
    music = f"With the first bars of {first.name} in notation" if first else ""
    return ". ".join(filter(None, (front.title, song_line(front.song), music))) + "."
