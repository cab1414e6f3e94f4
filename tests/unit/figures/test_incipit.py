"""The small picture of a write-up's opening: a file that needs nothing else, in one frame."""

import re
from fractions import Fraction

import pytest
from lxml import etree

from sitegen.charts.defaults import SongDefaults
from sitegen.figures.form_plan import PlanRow
from sitegen.figures.incipit import (
    HEIGHT,
    WIDTH,
    engraved_incipit,
    plan_incipit,
    progression_incipit,
)
from sitegen.figures.progression import ProgressionBar, ProgressionCell
from sitegen.harmony import read_chord
from sitegen.kinds.kind import Drawing, Surroundings
from sitegen.kinds.notation import EXAMPLE, NOTATION
from sitegen.source import Passage

SVG = "{http://www.w3.org/2000/svg}"
RIGHTS = "The song belongs to A & B."


@pytest.fixture(scope="module")
def drawing() -> Drawing:
    reading = NOTATION.read(Passage.of(EXAMPLE), SongDefaults())
    around = Surroundings("chart-a", "Example 1")
    return NOTATION.draw(NOTATION.analyse(reading.chart, around), around)


def bar(number: int, *symbols: str, same: bool = False) -> ProgressionBar:
    cells = tuple(ProgressionCell(read_chord(one), Fraction(2)) for one in symbols)
    return ProgressionBar(number, cells, same_as_before=same)


def row(letter: str, share: float) -> PlanRow:
    return PlanRow(letter, "Verse", "", "8", "", "", share=share)


def words(picture: bytes) -> list[str]:
    texts = etree.fromstring(picture).iter(f"{SVG}text")
    return ["".join(text.itertext()) for text in texts]


def test_the_first_system_is_shown_and_no_more_than_the_frame_holds(drawing: Drawing) -> None:
    picture = engraved_incipit(drawing.content.narrow, drawing.glyphs, RIGHTS)
    root = etree.fromstring(picture)
    assert (root.get("width"), root.get("height")) == (str(WIDTH), str(HEIGHT))
    bars = len(re.findall(r"<(?:use|path)", picture.decode()))
    whole = engraved_incipit(drawing.content.wide, drawing.glyphs, RIGHTS)
    assert bars > 20
    assert len(picture) < len(whole) < 20_000


def test_a_picture_needs_no_other_file(drawing: Drawing) -> None:
    picture = engraved_incipit(drawing.content.narrow, drawing.glyphs).decode()
    assert not re.search(r"@font-face|url\(|@import|<script|<image|currentColor|var\(", picture)
    # Signs of the music font are private; no other face has them.
    assert not re.search("[\ue000-\uf8ff]", picture)
    root = etree.fromstring(picture)
    defined = {one.get("id") for one in root.iter() if one.get("id")}
    used = {use.get("href", "").removeprefix("#") for use in root.iter(f"{SVG}use")}
    assert used
    assert used == defined


def test_nothing_is_left_that_only_a_page_needs(drawing: Drawing) -> None:
    picture = engraved_incipit(drawing.content.narrow, drawing.glyphs).decode()
    assert not re.search(r' (?:data|aria)-| tabindex| role=|<title|class="note', picture)


def test_a_picture_says_whose_the_music_is(drawing: Drawing) -> None:
    told = f"<desc>{RIGHTS.replace('&', '&amp;')}</desc>"
    pictures = (
        engraved_incipit(drawing.content.narrow, drawing.glyphs, RIGHTS),
        progression_incipit([bar(1, "C")], RIGHTS),
        plan_incipit([row("A", 1)], RIGHTS),
    )
    assert all(picture.decode().count(told) == 1 for picture in pictures)
    assert b"<desc>" not in progression_incipit([bar(1, "C")])


def test_a_progression_shows_two_rows_of_bars() -> None:
    bars = [bar(1, "C", "Am7"), bar(2, "F", same=True), *(bar(n, "G7") for n in range(3, 20))]
    picture = progression_incipit(bars)
    assert words(picture) == ["C", "Am7", *["G7"] * 6]
    # The sign of a bar like the one before has two dots.
    assert picture.count(b"<circle") == 2


def test_chords_that_have_no_room_are_left_out() -> None:
    crowded = bar(1, *["Cmaj7♯11", "F♯m7♭5/C"] * 3)
    assert words(progression_incipit([crowded])) == []


def test_a_plan_shows_its_sections_to_scale() -> None:
    picture = plan_incipit([row("A", 25), row("B", 74), row("C", 1)])
    root = etree.fromstring(picture)
    widths = [float(one.get("width", 0)) for one in root.iter(f"{SVG}rect")]
    assert widths == pytest.approx([191 * 0.25, 191 * 0.74, 191 * 0.01], abs=0.06)
    assert words(picture) == ["A", "B"]


def test_an_empty_plan_is_no_fault() -> None:
    assert words(plan_incipit([])) == []
