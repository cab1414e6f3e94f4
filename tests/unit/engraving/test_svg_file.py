"""A drawing as a file of its own: nothing is left to a page, and nothing is lost."""

import re

import pytest
from unit.engraving import samples
from unit.engraving.writing import parsed

from sitegen.engraving import engrave
from sitegen.engraving.svg.standalone import svg_file

SVG = "{http://www.w3.org/2000/svg}"
HREF = "{http://www.w3.org/1999/xlink}href"
EACH = pytest.mark.parametrize("chart", samples.ALL, ids=lambda make: make.__name__)
PRIVATE = re.compile("[\ue000-\uf8ff]")


def drawn(chart: samples.Make) -> tuple[str, str]:
    """Return the drawing for a page and the file made of it."""
    engraved = engrave(chart(), "a", title="Example 1", summary="One sentence.")
    return engraved.wide, svg_file(engraved.wide, engraved.glyphs)


@EACH
def test_nothing_is_left_to_a_page(chart: samples.Make) -> None:
    _, file = drawn(chart)
    assert not PRIVATE.search(file)
    assert not re.search(r"currentColor|var\(|@font-face|class=\"sign\"", file)
    root = parsed(file)
    ids = [e.get("id") for e in root.iter() if e.get("id")]
    assert len(ids) == len(set(ids))
    uses = list(root.iter(f"{SVG}use"))
    assert {use.get(HREF, "").removeprefix("#") for use in uses} <= set(ids)


@EACH
def test_everything_drawn_is_still_there(chart: samples.Make) -> None:
    page, file = drawn(chart)
    before, after = parsed(page), parsed(file)
    assert len(list(after.iter(f"{SVG}use"))) == len(list(before.iter("use")))
    named = {e.get("id") for e in before.iter() if e.get("id")}
    assert named <= {e.get("id") for e in after.iter()}
    texts = (PRIVATE.sub("", "".join(t.itertext())) for t in before.iter("text"))
    kept = (re.sub("[♭♮♯]", "", "".join(t.itertext())) for t in after.iter(f"{SVG}text"))
    assert list(filter(None, kept)) == list(filter(None, texts))


def test_accidentals_in_text_are_those_of_unicode() -> None:
    _, file = drawn(samples.riff)
    texts = ["".join(t.itertext()) for t in parsed(file).iter(f"{SVG}text")]
    assert "E♭sus2" in texts
    assert "G♭maj7♯11" in texts


def test_a_raised_accidental_is_no_larger_than_what_it_stands_with() -> None:
    _, file = drawn(samples.techniques)
    sizes = {
        span.text: span.get("font-size")
        for span in parsed(file).iter(f"{SVG}tspan")
        if span.text in {"7", "♯", "9"}
    }
    assert sizes == {"7": "281", "♯": "281", "9": "281"}


def test_a_note_value_is_an_outline_before_its_number() -> None:
    _, file = drawn(samples.techniques)
    tempo = next(g for g in parsed(file).iter(f"{SVG}g") if g.get("class") == "tempo")
    outline, text = list(tempo)
    assert outline.tag == f"{SVG}path"
    match = re.match(r"translate\((\d+),", outline.get("transform", ""))
    assert match is not None
    assert float(match[1]) < float(text.get("x", 0))
    assert "".join(text.itertext()).strip() == "= 84"


def test_it_is_named_and_lies_on_white_paper() -> None:
    _, file = drawn(samples.kit)
    root = parsed(file)
    assert root.findtext(f"{SVG}title") == "Example 1"
    assert root.findtext(f"{SVG}desc") == "One sentence."
    paper = root.find(f"{SVG}rect")
    assert paper is not None
    assert paper.get("fill") == "#fff"
    box = [float(n) for n in root.get("viewBox", "").split()]
    assert [float(paper.get(side, 0)) for side in ("x", "y", "width", "height")] == box
    wide, high = float(root.get("width", 0)), float(root.get("height", 0))
    assert wide / high == pytest.approx(box[2] / box[3], rel=0.01)


@EACH
def test_the_same_chart_gives_the_same_bytes(chart: samples.Make) -> None:
    assert drawn(chart)[1] == drawn(chart)[1]
