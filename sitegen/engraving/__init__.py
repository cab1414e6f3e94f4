"""Charts drawn as notation: chart -> MEI -> verovio -> clean SVG. The only room with verovio."""

from sitegen.engraving.alone import stand_alone
from sitegen.engraving.engraved import Engraved, engrave, engrave_plan
from sitegen.engraving.font import FAMILY, notation_font, notation_font_file
from sitegen.engraving.mei import write_mei
from sitegen.engraving.player_names import PlayerNames, player_names
from sitegen.engraving.style import NOTATION_STYLE

__all__ = [
    "FAMILY",
    "NOTATION_STYLE",
    "Engraved",
    "PlayerNames",
    "engrave",
    "engrave_plan",
    "notation_font",
    "notation_font_file",
    "player_names",
    "stand_alone",
    "write_mei",
]
