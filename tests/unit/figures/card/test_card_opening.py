"""The first systems of an engraving, cut out whole."""

from collections.abc import Mapping
from xml.etree import ElementTree as ET

import pytest
from fontTools.pens.boundsPen import ControlBoundsPen
from fontTools.svgLib.path import parse_path

from sitegen.charts.defaults import SongDefaults
from sitegen.figures.card.opening import cut_opening
from sitegen.kinds.kind import Surroundings
from sitegen.kinds.notation import NOTATION
from sitegen.source import Passage

# Two systems of two bars; the bracket of the second ending opens the second one.
DRAWING = """\
<svg viewBox="-450 -100 10000 8000" fill="currentColor" stroke-width="18" font-size="405"
 role="img"><title>Example</title><use href="#g-1" x="-180" y="900"/>
<g class="measure" id="one"><path d="M0 1000H4000M0 1720H4000"/><text x="9" y="2400">la</text></g>
<g class="measure" id="two"><path d="M4000 1000H9000M4000 1720H9000"/><use href="#g-2" x="5000"
 y="1800"/></g>
<path id="tie-in" d="M0 1500q9 9 18 0"/>
<g class="ending" id="ending"><path d="M0 3500H900V3600"/></g>
<g class="measure" id="three"><path d="M0 5000H4500M0 5720H4500"/></g>
<g class="measure" id="four"><path d="M4500 5000H9000M4500 5720H9000"/></g></svg>"""
GLYPHS = {
    "g-1": '<path id="g-1" d="M0 0h10v10" transform="scale(0.72,-0.72)"/>',
    "g-2": '<path id="g-2" d="M0 -1000h10v10" transform="scale(1,-1)"/>',
    "g-3": '<path id="g-3" d="M0 0h10" transform="scale(1,-1)"/>',
}


def ids(elements: str) -> set[str]:
    return {one.get("id", "") for one in ET.fromstring(f"<g>{elements}</g>").iter()}  # noqa: S314


def test_one_system_is_kept_where_two_would_be_too_high() -> None:
    opening = cut_opening(DRAWING, GLYPHS, 0.5)
    assert {"one", "two", "tie-in"} <= ids(opening.elements)
    assert not {"ending", "three", "four"} & ids(opening.elements)
    # From the top of the sheet to the lowest sign, 1000 below its place, and a staff space of air.
    assert opening.box == (-200, -100, 9750, 1800 + 1000 + 180 + 100)


def test_all_systems_are_kept_where_they_fit() -> None:
    opening = cut_opening(DRAWING, GLYPHS, 0.8)
    assert {"one", "two", "ending", "three", "four"} <= ids(opening.elements)
    assert opening.box == (-200, -100, 9750, 8000)


def test_the_first_system_is_kept_however_high() -> None:
    assert {"one", "two"} <= ids(cut_opening(DRAWING, GLYPHS, 0.01).elements)


# Measured beside fontTools, whose reader of paths is its own.
@pytest.mark.parametrize(
    "path",
    [
        "M7 2600V4000",
        "M7 4000L90 2500",
        "M0 2900H80M0 3100H80",
        "M1.5 3900.25 L4 2800",
        "M0 2500v1750",
        "M0 2500C50 4400 60 4400 90 2500",
        "M0 2500L9 3000 18 4100",
    ],
)
def test_a_system_is_as_low_as_its_lowest_path(path: str) -> None:
    pen = ControlBoundsPen(None)
    parse_path(path, pen)
    drawing = DRAWING.replace('<text x="9"', f'<path d="{path}"/><text x="9"')
    foot = cut_opening(drawing, GLYPHS, 0.1).box[3] - 100 - 180
    assert foot == pen.bounds[3]


def test_only_the_glyphs_in_use_come_along() -> None:
    found = ids(cut_opening(DRAWING, GLYPHS, 0.5).elements)
    assert {"g-1", "g-2"} <= found
    assert "g-3" not in found


def test_what_holds_for_the_whole_drawing_is_kept() -> None:
    look = cut_opening(DRAWING, GLYPHS, 0.5).look
    assert look == {"fill": "currentColor", "stroke-width": "18", "font-size": "405"}


def test_the_names_of_instruments_keep_their_room() -> None:
    named = DRAWING.replace(
        "<title>", '<g class="label"><text x="9" y="1300">Bass</text></g><title>'
    )
    assert cut_opening(named, GLYPHS, 0.5).box[0] == -450


def test_a_drawing_without_a_bar_is_refused() -> None:
    with pytest.raises(ValueError, match="no bar"):
        cut_opening('<svg viewBox="0 0 9 9"/>', {}, 0.5)


TWO_SYSTEMS = """\
id: verse
meter: 4/4
key: G

count | 1   &   2   &   3   &   4   &   |
chord | G                               |
voice | G4      A4      B4      r       |
words | low     and     slow            |

count | 1   &   2   &   3   &   4   &   |
chord | Em                              |
voice | E4      G4      B4      r       |
words | so      it      goes            |
"""


def engraved(text: str) -> tuple[str, Mapping[str, str]]:
    passage = Passage.of(text)
    reading = NOTATION.read(passage, SongDefaults())
    surroundings = Surroundings("chart-verse", "Example 1")
    drawing = NOTATION.draw(NOTATION.analyse(reading.chart, surroundings), surroundings)
    return drawing.content.wide, drawing.glyphs


def test_a_real_engraving_is_cut_between_its_systems() -> None:
    svg, glyphs = engraved(TWO_SYSTEMS)
    opening = cut_opening(svg, glyphs, 0.1)
    words = "".join(ET.fromstring(f"<g>{opening.elements}</g>").itertext())  # noqa: S314
    assert "slow" in words
    assert "goes" not in words
    assert "chart-verse-bar-1" in ids(opening.elements)
    assert "chart-verse-bar-2" not in ids(opening.elements)
    assert 0 < opening.box[3] < cut_opening(svg, glyphs, 9).box[3]
