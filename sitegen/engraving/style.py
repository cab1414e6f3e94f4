"""The rules that a page's stylesheet needs for notation; the drawings carry none themselves."""

from sitegen.engraving.font import FAMILY

NOTATION_STYLE = f"""\
.notation {{ display: block; width: 100%; height: auto; overflow: visible; color: inherit;
  font-family: "Times New Roman", "Liberation Serif", "Nimbus Roman", Tinos, Times, serif; }}
.notation :is(text, use, rect, polygon, ellipse) {{ stroke: none; }}
.notation .reh rect {{ stroke: currentColor; fill: none; }}
.notation .sign {{ font-family: "{FAMILY}"; font-style: normal; font-weight: normal; }}
.notation .fret {{ font-size: 324px; text-anchor: middle; }}
.notation :is(.tempo, .reh, .ending) {{ font-weight: bold; }}
.notation :is(.dir, .dynam, .mNum) {{ font-style: italic; }}
"""
"""CSS that draws every chart in the text's colour; the `@font-face` of the signs is the page's."""
