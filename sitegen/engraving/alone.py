"""A drawing as a file that needs no page around it."""

import base64
import re
from collections.abc import Mapping
from functools import lru_cache

from sitegen.engraving.font import FAMILY, notation_font
from sitegen.engraving.style import NOTATION_STYLE

_USED = re.compile(r'href="#([^"]+)"')
_PAPER = "svg{color:#000;background:#fff}"


def stand_alone(svg: str, glyphs: Mapping[str, str]) -> bytes:
    """Return an engraving as an SVG file that brings its glyphs, its style and its font.

    `glyphs` are the definitions that a page would share, by id; those in use are taken along.
    """
    used = sorted(set(_USED.findall(svg)))
    head, _, music = svg.partition(">")
    head = head.replace("<svg", '<svg xmlns="http://www.w3.org/2000/svg"', 1)
    definitions = "".join(glyphs[name] for name in used)
    style = f"<style>{_font_face()}{NOTATION_STYLE}{_PAPER}</style>"
    return f"{head}>{style}<defs>{definitions}</defs>{music}\n".encode()


@lru_cache(maxsize=1)
def _font_face() -> str:
    packed = base64.b64encode(notation_font()).decode()
    return f'@font-face{{font-family:"{FAMILY}";src:url(data:font/woff2;base64,{packed})}}'
