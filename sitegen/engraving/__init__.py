"""Charts drawn as notation: chart -> MEI -> verovio -> clean SVG. The only room with verovio."""

from sitegen.engraving.engraved import Engraved, engrave
from sitegen.engraving.font import FAMILY, notation_font
from sitegen.engraving.mei import write_mei
from sitegen.engraving.style import NOTATION_STYLE

__all__ = ["FAMILY", "NOTATION_STYLE", "Engraved", "engrave", "notation_font", "write_mei"]
