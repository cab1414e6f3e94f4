"""A drawing as an inline SVG: the page's colours and fonts, own ids, links, nothing else."""

import re
from xml.etree import ElementTree as ET

from sitegen.figures.sheet import Fill, Sheet, Target


def parsed(svg: str) -> ET.Element:
    return ET.fromstring(svg)  # noqa: S314 - our own drawing


def drawn(prefix: str = "plan", href: str = "#verse") -> str:
    sheet = Sheet(200, 80, prefix)
    sheet.box("one", (10, 10), (50, 40), fill="plan-1", hatch="/")
    sheet.text("one", (12, 30), "A′ $x$ <♭>あ", role="letter", size=18)
    sheet.text("two", (150, 30), "16 bars", role="bars", size=12, anchor="right")
    sheet.rule("scale", (0, 70), (200, 70))
    return sheet.svg("plan-wide", "The whole", {"one": Target(href, "Verse: A")})


def test_takes_colours_and_fonts_from_the_page() -> None:
    svg = drawn()
    assert "font-family" not in svg
    assert not re.search(r"#[0-9a-f]{6}\b", svg)
    assert set(re.findall(r"var\(--([a-z0-9-]+)\)", svg)) == {"ink", "plan-1"}
    assert "<style" not in svg


def test_writes_texts_as_they_are() -> None:
    root = parsed(drawn())
    texts = {text.get("class"): text for text in root.iter("text")}
    assert texts["letter"].text == "A′ $x$ <♭>あ"
    assert texts["bars"].get("text-anchor") == "end"
    assert (texts["letter"].get("x"), texts["letter"].get("y")) == ("12", "30")


def test_puts_a_rectangle_where_it_was_asked_for() -> None:
    (path,) = (p for p in parsed(drawn()).iter("path") if "url" in p.get("style", ""))
    numbers = [float(n) for n in re.findall(r"-?\d+(?:\.\d+)?", path.get("d", ""))]
    assert (min(numbers[::2]), max(numbers[::2])) == (10, 60)
    assert (min(numbers[1::2]), max(numbers[1::2])) == (10, 50)


def test_links_a_group_as_a_whole_with_its_title() -> None:
    root = parsed(drawn())
    (link,) = root.iter("a")
    assert link.get("href") == "#verse"
    assert [child.tag for child in link] == ["title", "path", "text"]
    assert link[0].text == "Verse: A"


def test_is_one_image_only_without_links() -> None:
    assert parsed(drawn()).get("role") is None
    alone = parsed(drawn(href=""))
    assert alone.get("role") == "img"
    assert not list(alone.iter("a"))


def test_is_named_by_its_title() -> None:
    root = parsed(drawn())
    assert root[0].tag == "title"
    assert root[0].text == "The whole"
    assert root.get("aria-labelledby") == root[0].get("id")


def test_ids_bear_the_prefix_and_are_found() -> None:
    svg = drawn(prefix="plan-7")
    ids = re.findall(r'\bid="([^"]+)"', svg)
    assert len(set(ids)) == len(ids) >= 2
    assert all(name.startswith("plan-7-") for name in ids)
    assert set(re.findall(r"url\(#([^)]+)\)", svg)) <= set(ids)


def test_two_drawings_of_one_thing_are_the_same() -> None:
    assert drawn() == drawn()


def test_what_is_hatched_alike_shares_a_pattern() -> None:
    sheet = Sheet(90, 30, "plan")
    looks: tuple[tuple[Fill, str], ...] = (("plan-1", "/"), ("plan-2", "/"), ("plan-1", "/"))
    for number, (fill, hatch) in enumerate(looks):
        sheet.box("one", (30 * number, 0), (30, 30), fill=fill, hatch=hatch)
    root = parsed(sheet.svg("plan-wide", "Three", {}))
    first, second, third = (path.get("style") for path in root.iterfind("g/path"))
    assert first == third != second
    assert len(list(root.iter("pattern"))) == 2
    grounds = [pattern[0].get("fill") for pattern in root.iter("pattern")]
    assert grounds == ["var(--plan-1)", "var(--plan-2)"]


def test_coordinates_are_written_to_a_hundredth_of_a_pixel() -> None:
    sheet = Sheet(9000, 80, "plan")
    sheet.rule("scale", (1 / 3, 0.1 + 0.2), (8888.884, 70.0))
    assert 'd="M 0.33 0.3 L 8888.88 70"' in sheet.svg("plan-wide", "A line", {})


def test_names_cannot_break_out_of_their_place() -> None:
    sheet = Sheet(90, 30, "plan")
    sheet.text("one", (0, 9), "</text><script>", role="bars", size=9)
    target = Target('"><script>', "</title><script>")
    root = parsed(sheet.svg("plan-wide", "</title><script>", {"one": target}))
    assert not list(root.iter("script"))
    assert root.find("a/text") is not None
    assert [link.get("href") for link in root.iter("a")] == ['"><script>']
