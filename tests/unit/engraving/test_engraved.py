"""The drawings: found ids, shared glyphs, no colours, the same bytes every time."""

import os
import re
from dataclasses import replace

import pytest
from unit.engraving import samples
from unit.engraving.building import (
    GUITAR,
    SPAN,
    bars,
    fretted_part,
    melody,
    reading,
    sung,
    tab,
    voice_part,
)
from unit.engraving.writing import parsed

from sitegen.engraving import NOTATION_STYLE, Engraved, engrave, notation_font, write_mei
from sitegen.engraving.svg import Sheet, clean
from sitegen.engraving.systems import draw_endless, draw_sheet
from sitegen.engraving.toolkit import EngravingError, render
from sitegen.score.chart import Chart
from sitegen.score.role import Role

_COLOUR = re.compile(r"#[0-9a-fA-F]{3,8}\b|\brgb|\bblack\b|\bwhite\b|\bred\b")


@pytest.fixture(params=samples.ALL, ids=lambda make: make.__name__)
def drawn(request: pytest.FixtureRequest) -> Engraved:
    return engrave(request.param(), "ex1", title="Opening", summary="Two bars.")


def test_ids_are_unique_and_prefixed(drawn: Engraved) -> None:
    ids = re.findall(r'\bid="([^"]+)"', drawn.wide + drawn.narrow)
    assert len(ids) == len(set(ids))
    assert all(found.startswith("ex1-") for found in ids)


def test_every_glyph_that_is_used_is_given(drawn: Engraved) -> None:
    used = set(re.findall(r'href="#([^"]+)"', drawn.wide + drawn.narrow))
    assert used == set(drawn.glyphs)
    for name, definition in drawn.glyphs.items():
        assert parsed(definition).get("id") == name


def test_only_the_texts_colour_is_used(drawn: Engraved) -> None:
    for svg in (drawn.wide, drawn.narrow):
        assert not _COLOUR.search(re.sub(r'href="#[^"]+"', "", svg))
        assert set(re.findall(r'fill="([^"]+)"', svg)) <= {"currentColor", "none"}
        assert "<style" not in svg
        assert "@font-face" not in svg


def test_it_is_one_named_image(drawn: Engraved) -> None:
    for svg, prefix in ((drawn.wide, "ex1"), (drawn.narrow, "ex1-narrow")):
        root = parsed(svg)
        assert root.get("role") == "img"
        assert root.get("aria-labelledby") == f"{prefix}-title {prefix}-desc"
        assert [(e.tag, e.text) for e in root[:2]] == [
            ("title", "Opening"),
            ("desc", "Two bars."),
        ]
        assert len(list(root.iter("title"))) == 1
        assert root.get("width") is None
        assert root.get("viewBox")


def test_it_is_the_same_every_time(drawn: Engraved, request: pytest.FixtureRequest) -> None:
    make = request.node.callspec.params["drawn"]
    engrave(samples.riff(), "between")
    assert engrave(make(), "ex1", title="Opening", summary="Two bars.") == drawn


def test_notes_are_found_by_part_bar_and_beat() -> None:
    root = parsed(engrave(samples.riff(), "ex1").wide)
    classes = {e.get("id"): e.get("class") for e in root.iter("g")}
    assert classes["ex1-bar-2"] == "measure"
    assert classes["ex1-voice-1-2"] == "note tension"
    assert classes["ex1-voice-1-3_1_2"] == "note chord-tone"
    assert classes["ex1-voice-1-4"] == "rest"
    assert classes["ex1-guitar-2-1"] == "chord"
    assert classes["ex1-guitar-2-1-tab"] == "tabGrp"


def test_words_stay_out_of_a_notes_colour() -> None:
    root = parsed(engrave(samples.riff(), "ex1").wide)
    notes = [g for g in root.iter("g") if g.get("class", "").startswith("note")]
    assert notes
    assert not [text for note in notes for text in note.iter("text")]


def test_four_bars_of_voice_and_tablature_are_small() -> None:
    assert 2 * len(engrave(samples.riff(), "ex1").wide) < 30_000


def fret_texts(svg: str) -> list[str]:
    return [t.text or "" for t in parsed(svg).iter("text") if t.get("class") == "fret"]


def test_a_tablature_shows_what_players_write() -> None:
    texts = fret_texts(engrave(samples.techniques(), "ex1").wide)
    assert texts == [
        *("5", "7", "5", "7", "5", "7", "8", "5"),
        *("x", "x", "12", "12", "(7)", "5", "(8)"),
        *("<12>", "9", "3", "3"),
    ]


def test_what_the_engraver_leaves_out_is_drawn() -> None:
    """Arcs, slides, bends and dashes are paths beyond those of the same notes played plainly."""
    with_marks = engrave(samples.techniques(), "ex1").wide
    plain = engrave(samples.without_marks(samples.techniques()), "ex1").wide
    assert with_marks.count("<path") >= plain.count("<path") + 12
    assert with_marks.count("stroke-dasharray") == 2
    assert "stroke-dasharray" not in plain


def test_tablature_lines_keep_clear_of_wide_signs() -> None:
    svg = engrave(samples.techniques(), "ex1").wide
    root = parsed(svg)
    sign = next(t for t in root.iter("text") if t.text == "<12>")
    x, line = float(sign.get("x", 0)), float(sign.get("y", 0)) - 107
    strokes = re.findall(r"M(\d+) (\d+)H(\d+)", svg)
    near = [(int(a), int(b)) for a, y, b in strokes if abs(int(y) - line) < 20]
    assert near
    assert not [ends for ends in near if ends[0] < x < ends[1]]
    assert min(abs(edge - x) for ends in near for edge in ends) > 300


def system_count(sheet: Sheet) -> int:
    return sum(group.get("class") == "system" for group in sheet.music.iter("g"))


def test_an_ending_has_one_bracket() -> None:
    root = parsed(engrave(samples.band(), "ex1").wide)
    endings = [g for g in root.iter("g") if g.get("class", "").startswith("ending")]
    assert [[t.text for t in g.iter("text")] for g in endings] == [["1."], ["2."]]


def test_an_ending_that_opens_a_line_is_not_bracketed_as_if_it_came_on() -> None:
    sheet = draw_sheet(write_mei(samples.band(), "narrow"), 400, by_author=False)
    assert system_count(sheet) == 3
    assert {"1.", "2."} <= _texts(sheet).keys()


def _texts(sheet: Sheet) -> dict[str, float]:
    """Return how far down the foot of each text lies."""
    found = {"".join(text.itertext()).strip(): text for text in sheet.music.iter("text")}
    feet = {name: [s.get("y") for s in text.iter() if s.get("y")] for name, text in found.items()}
    return {name: float(foot[0] or 0) for name, foot in feet.items() if foot}


def test_systems_of_many_staves_have_no_strokes_between_them() -> None:
    made = samples.riff()
    voice, guitar = made.chart.parts
    parts = (voice, guitar, replace(guitar, name="lead"))
    two = replace(made, chart=replace(made.chart, parts=parts))
    sheet = draw_sheet(write_mei(two, "narrow"), 600, by_author=False)
    assert system_count(sheet) == 2
    assert not [g for g in sheet.music.iter("g") if g.get("class") == "systemDivider"]


@pytest.mark.parametrize("width", [600, 700, 800, 900])
def test_a_letter_keeps_clear_of_the_degrees_above_it(width: int) -> None:
    bar = "6.0:1/2 4.2:1/2 4.0:1/2 5.2:1/2 5.0:1/4 5.2:1/4 6.3:1/2 6.2:1/2 "
    events = tab(GUITAR, bar, n4={"joins": "hammer-on"})
    chart = Chart("run", "notation", SPAN, bars("7/8", 2), parts=(fretted_part(events),))
    degrees = [(text, Role.TENSION) for text in ("R", "R", "b7", "5", "11", "5", "b3", "9")]
    feet = _texts(draw_sheet(write_mei(reading(chart, degrees)), width, by_author=False))
    assert feet["h"] - feet["11"] > 250


@pytest.mark.parametrize(("word", "lines"), [("I", 1), ("mmm", 0)])
def test_a_held_syllable_has_a_line_only_where_there_is_room(word: str, lines: int) -> None:
    events = sung(melody("C5:1 C5:1 C5:2"), f"{word} _ on")
    chart = Chart("held", "notation", SPAN, bars("4/4", 1), parts=(voice_part(events),))
    drawn, _ = clean(draw_endless(write_mei(reading(chart))), "ex1", "Held", "")
    assert sum(1 for _ in parsed(drawn).iter("rect")) == lines


def test_the_authors_lines_are_kept_where_they_fit() -> None:
    root = parsed(engrave(samples.song(), "ex1").wide)
    clefs = [u for u in root.iter("use") if u.get("href", "").startswith("#g-E050")]
    assert len(clefs) == 4


def test_nothing_is_said_on_the_terminal(capfd: pytest.CaptureFixture[str]) -> None:
    for make in samples.ALL:
        engrave(make(), "ex1")
    assert capfd.readouterr() == ("", "")


@pytest.mark.parametrize("make", samples.ALL, ids=lambda make: make.__name__)
def test_the_engraver_has_no_remarks(make: samples.Make) -> None:
    for width in ("wide", "narrow"):
        assert not render(write_mei(make(), width), {}).remarks


def test_a_remark_is_no_error() -> None:
    lost = write_mei(samples.techniques()).replace('endid="#guitar-1-2"', 'endid="#nowhere"')
    assert "[Warning]" in render(lost, {}).remarks


def test_a_file_that_cannot_be_read_is_an_error(capfd: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(EngravingError):
        render("<mei>", {})
    assert capfd.readouterr() == ("", "")
    os.write(2, b"still here")
    assert capfd.readouterr().err == "still here"


def test_the_font_holds_the_signs_of_every_drawing(drawn: Engraved) -> None:
    from io import BytesIO  # noqa: PLC0415

    from fontTools.ttLib import TTFont  # noqa: PLC0415 - slow to import

    held = set(TTFont(BytesIO(notation_font())).getBestCmap())
    signs = {ord(c) for c in drawn.wide + drawn.narrow if 0xE000 <= ord(c) <= 0xF8FF}
    assert signs <= held


def test_the_font_is_small_and_the_same_every_time() -> None:
    font = notation_font()
    notation_font.cache_clear()
    assert notation_font() == font
    assert font[:4] == b"wOF2"
    assert len(font) < 6_000


def test_the_style_names_the_font_that_signs_use(drawn: Engraved) -> None:
    assert "font-family" not in drawn.wide
    assert '.sign { font-family: "Notation Signs"' in NOTATION_STYLE


def test_a_letter_stands_between_the_notes_that_it_joins() -> None:
    root = parsed(engrave(samples.techniques(), "ex1").wide)
    letters = [float(t.get("x", 0)) for t in root.iter("text") if t.text in ("h", "p")]
    frets = [float(t.get("x", 0)) for t in root.iter("text") if t.get("class") == "fret"]
    between = [(frets[0], frets[1]), (frets[2], frets[3]), (frets[3], frets[4])]
    assert [round((low + high) / 2) for low, high in between] == pytest.approx(letters, abs=2)


def test_a_long_section_name_stays_on_the_sheet() -> None:
    made = samples.riff()
    section = replace(made.chart.sections[0], text="The part before the last refrain")
    named = replace(made, chart=replace(made.chart, sections=(section,)))
    root = parsed(engrave(named, "ex1").wide)
    left, _, width, _ = (float(n) for n in root.get("viewBox", "").split())
    group = next(g for g in root.iter("g") if g.get("class") == "reh")
    box = next(group.iter("rect"))
    shift = float(re.findall(r"-?\d+", group.get("transform", ""))[0])
    start = float(box.get("x", 0)) + shift
    assert left <= start
    assert start + float(box.get("width", 0)) <= left + width
