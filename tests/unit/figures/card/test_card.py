"""The card as a picture: its size, its colours, its margins, and the same bytes everywhere."""

import io
import os
import struct
import subprocess
import sys
import threading
from dataclasses import replace
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

import matplotlib.image
import numpy as np
import pytest
from fontTools.ttLib import TTFont
from resvg import render, usvg

from sitegen.engraving import FAMILY, notation_font_file
from sitegen.figures.card import HEIGHT, WIDTH, CardText, Opening, Palette, card_svg, draw_card
from sitegen.figures.card.faces import face_files

TEXT = CardText("The third is in the throat", "Low Tide", "The Harbour Lamps", "The Turnaround")
MUSIC = Opening(
    '<defs><path id="g-1" d="M0 0h200v-200z"/></defs><g class="measure">'
    '<path d="M0 1000H9000M0 1180H9000"/><use href="#g-1" x="500" y="1100"/>'
    '<text x="700" y="900">G<tspan class="sign">\ue262</tspan></text></g>',
    (-200, -100, 9400, 2600),
    {"fill": "currentColor", "stroke": "currentColor", "stroke-width": "18", "font-size": "405"},
)
PALETTE = Palette("#f3f2ed", "#191c24", "#9c1440")
MARGIN = 60
HOSTILE = "</text><script>alert(1)</script>&\"'<\0\x08\ufffe\ud800"


def pixels(png: bytes) -> Any:  # noqa: ANN401 - an array of numbers
    """Return rows of pixels, each red, green and blue from 0 to 255."""
    return np.rint(matplotlib.image.imread(io.BytesIO(png), "png")[:, :, :3] * 255).astype(int)


def colour(text: str) -> list[int]:
    return [int(text[place : place + 2], 16) for place in (1, 3, 5)]


def ink_box(png: bytes) -> tuple[int, int, int, int]:
    """Return left, top, right and bottom of all that is not paper."""
    inked = np.argwhere((pixels(png) != colour(PALETTE.paper)).any(axis=2))
    (top, left), (bottom, right) = inked.min(axis=0), inked.max(axis=0)
    return int(left), int(top), int(right), int(bottom)


def test_it_has_the_size_that_link_previews_ask_for() -> None:
    png = draw_card(TEXT, MUSIC, PALETTE)
    # The signature of a PNG file and the size in its first chunk (ISO/IEC 15948, 5.2 and 11.2.2).
    assert png[:8] == b"\x89PNG\r\n\x1a\n"
    assert struct.unpack(">II", png[16:24]) == (WIDTH, HEIGHT) == (1200, 630)


def test_it_is_drawn_in_the_palette() -> None:
    palette = Palette("#102030", "#e0f0ff", "#ff8800")
    found = pixels(draw_card(TEXT, MUSIC, palette)).reshape(-1, 3)
    assert found[0].tolist() == colour("#102030")
    for wanted in ("#e0f0ff", "#ff8800"):
        assert (found == colour(wanted)).all(axis=1).any()
    assert not (found == [0, 0, 0]).all(axis=1).any()


@pytest.mark.parametrize("music", [MUSIC, None])
@pytest.mark.parametrize(
    "title", ["Low", "The third is in the throat", "Why " * 80, "W" * 200, "Low Tide " * 15]
)
def test_nothing_leaves_the_margins(title: str, music: Opening | None) -> None:
    text = CardText(title, "Low Tide " * 20, "The Harbour Lamps " * 9, "The Turnaround " * 9)
    left, top, right, bottom = ink_box(draw_card(text, music, PALETTE))
    assert left >= MARGIN
    assert top >= 20
    assert right <= WIDTH - MARGIN
    assert bottom <= HEIGHT - 20


def test_ink_outside_of_the_margins_is_seen() -> None:
    wide = replace(MUSIC, elements=MUSIC.elements.replace("H9000", "H12000"))
    assert ink_box(draw_card(TEXT, wide, PALETTE))[2] > WIDTH - MARGIN


def test_music_takes_the_room_of_a_title_that_cannot_be_set() -> None:
    def scale(title: str) -> float:
        root = ET.fromstring(card_svg(replace(TEXT, title=title), MUSIC, PALETTE))  # noqa: S314
        group = next(one for one in root.iter() if one.get("class") == "music")
        return float(group.get("transform", "").split("scale(")[1].rstrip(")"))

    high = replace(MUSIC, box=(-200, -100, 9400, 6000))
    assert scale("夜の歌") >= scale("Night song")
    assert "夜" not in card_svg(replace(TEXT, title="夜の歌"), high, PALETTE)


def test_high_music_stands_beside_the_title() -> None:
    def place(music: Opening) -> float:
        root = ET.fromstring(card_svg(TEXT, music, PALETTE))  # noqa: S314
        group = next(one for one in root.iter() if one.get("class") == "music")
        return float(group.get("transform", "").removeprefix("translate(").split()[0])

    assert place(MUSIC) < 200
    assert place(replace(MUSIC, box=(-200, -100, 9400, 9000))) > 450


def test_words_of_the_music_that_cannot_be_set_are_left_out() -> None:
    sung = replace(MUSIC, elements=MUSIC.elements.replace(">G<", ">夜<"))
    svg = card_svg(TEXT, sung, PALETTE)
    assert "夜" not in svg
    assert "\ue262" in svg


def test_words_of_the_music_that_can_be_set_stay_as_they_are_written() -> None:
    words = '<text x="9">Hold &amp; wait &lt;3</text><tspan class="bass">Εω &#233;</tspan>'
    assert words in card_svg(TEXT, replace(MUSIC, elements=words), PALETTE)


def test_hostile_words_stay_words() -> None:
    svg = card_svg(CardText(HOSTILE, HOSTILE, HOSTILE, HOSTILE), MUSIC, PALETTE)
    root = ET.fromstring(svg)  # noqa: S314
    assert not [one for one in root.iter() if one.tag.endswith("script")]
    assert draw_card(CardText(HOSTILE, HOSTILE, HOSTILE, HOSTILE), MUSIC, PALETTE)


def test_the_same_card_has_the_same_bytes_in_another_process(tmp_path: Path) -> None:
    # Another home and no font settings: what the machine has installed must not matter.
    program = (
        "import sys, runpy; test = runpy.run_path(sys.argv[1]);"
        "sys.stdout.buffer.write(test['draw_card'](test['TEXT'], test['MUSIC'], test['PALETTE']))"
    )
    nowhere = str(tmp_path)
    surroundings = {**os.environ, "HOME": nowhere, "FONTCONFIG_FILE": nowhere, "LC_ALL": "C"}
    surroundings["PYTHONPATH"] = str(Path(__file__).parents[4])
    run = subprocess.run(
        [sys.executable, "-c", program, __file__],
        check=True,
        capture_output=True,
        env=surroundings,
        cwd=nowhere,
    )
    assert run.stdout == draw_card(TEXT, MUSIC, PALETTE)


def test_the_same_card_has_the_same_bytes_in_another_thread() -> None:
    drawn: list[bytes] = []
    thread = threading.Thread(target=lambda: drawn.append(draw_card(TEXT, MUSIC, PALETTE)))
    thread.start()
    thread.join()
    assert drawn == [draw_card(TEXT, MUSIC, PALETTE)]


def test_the_signs_of_the_notation_are_drawn() -> None:
    # A font without a PostScript name is not taken by the renderer.
    font = TTFont(io.BytesIO(notation_font_file()))
    assert [font["name"].getDebugName(number) for number in (1, 6)] == [FAMILY, "NotationSigns"]
    options = usvg.Options.default()
    for path in face_files():
        options.load_font_file(str(path))
    without = render(
        usvg.Tree.from_str(card_svg(TEXT, MUSIC, PALETTE), options), (1, 0, 0, 0, 1, 0)
    )
    assert pixels(without).shape == pixels(draw_card(TEXT, MUSIC, PALETTE)).shape
    assert (pixels(without) != pixels(draw_card(TEXT, MUSIC, PALETTE))).any()
