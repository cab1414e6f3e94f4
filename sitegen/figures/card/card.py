"""The card itself: an SVG of our own, rendered as PNG by resvg."""

import re
from dataclasses import dataclass
from html import unescape
from xml.etree import ElementTree as ET
from xml.etree.ElementTree import Element, SubElement

from sitegen.engraving import FAMILY as SIGNS
from sitegen.figures.card.faces import FAMILY, NOTATION_FAMILY, settable, text_width
from sitegen.figures.card.layout import HEIGHT, MARGIN, RULE, WIDTH, Layout, lay_out
from sitegen.figures.card.opening import Opening
from sitegen.figures.card.rendering import render_png
from sitegen.figures.card.setting import cut_short

_ROOM = WIDTH - 2 * MARGIN
_SIZE = 30
# How much of the head line the publication's name may take, and the least gap beside it.
_SHARE, _GAP = 0.45, 40

# The rules of `sitegen.engraving.NOTATION_STYLE` in the few selectors that resvg knows.
_STYLE = f"""\
text {{ font-family: "{FAMILY}"; }}
.music text {{ font-family: {NOTATION_FAMILY}; }}
.music text, .music use, .music rect, .music polygon, .music ellipse {{ stroke: none; }}
.music .reh rect {{ stroke: currentColor; fill: none; }}
.music .sign {{ font-family: "{SIGNS}"; font-style: normal; font-weight: normal; }}
.music .fret {{ font-size: 324px; text-anchor: middle; }}
.music .tempo text, .music .reh text, .music .ending text {{ font-weight: bold; }}
.music .dir text, .music .dynam text, .music .mNum text {{ font-style: italic; }}
"""
_WORDS = re.compile(r"(<(?:text|tspan)\b[^>]*>)([^<]+)")
_SIGN = 'class="sign"'


@dataclass(frozen=True)
class Palette:
    """The colours of a card, as `#rrggbb`."""

    paper: str = "#f3f2ed"
    ink: str = "#191c24"
    accent: str = "#9c1440"


@dataclass(frozen=True)
class CardText:
    """The words of a card; "" for what is not known."""

    title: str
    song: str
    artist: str
    publication: str


def draw_card(text: CardText, music: Opening | None, palette: Palette) -> bytes:
    """Return the card as PNG; the same bytes for the same values, on every machine."""
    return render_png(card_svg(text, music, palette))


def card_svg(text: CardText, music: Opening | None, palette: Palette) -> str:
    """Return the card as SVG, whose colours are all given."""
    root = Element("svg", xmlns="http://www.w3.org/2000/svg", width=str(WIDTH), height=str(HEIGHT))
    root.set("viewBox", f"0 0 {WIDTH} {HEIGHT}")
    SubElement(root, "style").text = _STYLE
    SubElement(root, "rect", width=str(WIDTH), height=str(HEIGHT), fill=palette.paper)
    _draw_head(root, text, palette)
    layout = lay_out(settable(text.title), None if music is None else music.box)
    for foot, line in layout.lines:
        _write(root, line, (MARGIN, foot), layout.size, palette.ink)
    drawn = ET.tostring(root, encoding="unicode")
    if music is None:
        return drawn
    return f"{drawn.removesuffix('</svg>')}{_placed(music, layout, palette)}</svg>"


def _draw_head(root: Element, text: CardText, palette: Palette) -> None:
    """Write the song at the left and the publication at the right, over a double rule."""
    foot = RULE - 24
    name = cut_short(settable(text.publication), _SHARE * _ROOM, _SIZE)
    room = _ROOM - text_width(name, _SIZE) - _GAP * bool(name)
    _write(root, name, (WIDTH - MARGIN, foot), _SIZE, palette.ink).set("text-anchor", "end")
    _write_song(root, settable(text.song), settable(text.artist), (foot, room), palette)
    for y in (RULE, RULE + 4):
        SubElement(root, "rect", x=str(MARGIN), y=str(y), width=str(_ROOM), height="2",
                   fill=palette.ink)  # fmt: skip


def _write_song(
    root: Element, song: str, artist: str, place: tuple[float, float], palette: Palette
) -> None:
    """Write "Low Tide by The Harbour Lamps", the song in italics; `place` is foot and room."""
    foot, room = place
    song = cut_short(song, room, _SIZE, italic=True)
    rest = f" by {artist}" if song and artist else artist
    line = _write(root, "", (MARGIN, foot), _SIZE, palette.accent)
    SubElement(line, "tspan", {"font-style": "italic"}).text = song
    room -= text_width(song, _SIZE, italic=True)
    SubElement(line, "tspan").text = cut_short(rest, room, _SIZE)


def _write(
    root: Element, text: str, place: tuple[float, float], size: float, colour: str
) -> Element:
    attributes = {"x": f"{place[0]:g}", "y": f"{place[1]:.1f}", "font-size": f"{size:g}"}
    line = SubElement(root, "text", {**attributes, "fill": colour, "xml:space": "preserve"})
    line.text = text
    return line


def _placed(music: Opening, layout: Layout, palette: Palette) -> str:
    (x, y), scale = layout.place, layout.scale
    left, top, _, _ = music.box
    shift = f"translate({x - left * scale:.2f} {y - top * scale:.2f}) scale({scale:.6f})"
    look = {**music.look, "class": "music", "transform": shift, "color": palette.ink}
    group = ET.tostring(Element("g", look), encoding="unicode", short_empty_elements=False)
    # The opening is well-formed as it stands: to read it only to write it again takes long.
    return f"{group.removesuffix('</g>')}{_WORDS.sub(_settable_words, music.elements)}</g>"


def _settable_words(found: re.Match[str]) -> str:
    """Return the start of a text with its words, without those that no face holds."""
    tag, words = found.groups()
    kept = _SIGN in tag or not words.strip() or settable(unescape(words))
    return found[0] if kept else tag
