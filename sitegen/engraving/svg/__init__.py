"""Verovio's SVG completed, made small and quiet, and safe to stand beside others on a page."""

from sitegen.engraving.svg.cleaning import clean
from sitegen.engraving.svg.overlay import draw_marks, place_sections, raise_tempo
from sitegen.engraving.svg.sheet import Sheet
from sitegen.engraving.svg.tablines import redraw_tab_lines

__all__ = ["Sheet", "clean", "draw_marks", "place_sections", "raise_tempo", "redraw_tab_lines"]
