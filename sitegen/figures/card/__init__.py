"""The picture that link previews show of a write-up: its title and the opening of its music."""

from sitegen.figures.card.card import CardText, Palette, card_svg, draw_card
from sitegen.figures.card.layout import HEIGHT, SHAPE, WIDTH
from sitegen.figures.card.opening import Opening, cut_opening

__all__ = [
    "HEIGHT",
    "SHAPE",
    "WIDTH",
    "CardText",
    "Opening",
    "Palette",
    "card_svg",
    "cut_opening",
    "draw_card",
]
