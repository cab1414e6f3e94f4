"""The plan of a form: to scale, legible, the same letter the same look."""

import re
import subprocess
import sys
from collections.abc import Callable
from fractions import Fraction
from typing import Literal
from xml.etree import ElementTree as ET

import pytest

from sitegen.figures.form_plan import NARROW, WIDE, Plan, PlanSection, draw_narrow, draw_wide
from sitegen.figures.lettering import text_width
from sitegen.figures.sheet import Target


def parsed(svg: str) -> ET.Element:
    return ET.fromstring(svg)  # noqa: S314 - our own drawing


def plan(
    *sections: tuple[str, str, int],
    end: int | None = None,
    unit: Literal["seconds", "bars"] = "seconds",
) -> Plan:
    at, made = 0, []
    for letter, name, length in sections:
        target = Target(f"#{name.lower().replace(' ', '-')}", name)
        place = Fraction(at), Fraction(at + length)
        told = (f"0:{length:02}", str(at + 1)) if unit == "seconds" else ("", "")
        made.append(PlanSection(letter, name, f"{length} bars", *place, target, *told))
        at += length
    return Plan("plan", "A plan", unit, tuple(made), Fraction(end or at))


SONG = plan(
    ("A", "Intro", 10),
    ("B", "Verse 1", 40),
    ("C", "Chorus 1", 30),
    ("B′", "Verse 2", 35),
    ("C", "Chorus 2", 30),
    ("D", "A bridge of no great length", 12),
    ("C", "Last chorus", 33),
)
BRIEF = plan(("A", "Verse 1", 19), ("B", "Turnaround", 5), ("A", "Verse 2", 184))
BUSY = plan(*(("AB"[n % 2], f"Section {n}", 1 + n % 5) for n in range(40)))
CROWDED = plan(*(("AB"[n % 2], f"Section {n}", 1 + n % 3) for n in range(500)))


def boxes(svg: str) -> list[list[tuple[float, float, float, float]]]:
    """Return left, top, right and bottom of each rectangle, section by section."""
    return [[extent(path) for path in link.iter("path")] for link in parsed(svg).iter("a")]


def extent(path: ET.Element) -> tuple[float, float, float, float]:
    numbers = [float(n) for n in re.findall(r"-?\d+(?:\.\d+)?", path.get("d", ""))]
    xs, ys = numbers[::2], numbers[1::2]
    return min(xs), min(ys), max(xs), max(ys)


def texts(element: ET.Element, role: str) -> list[str]:
    return [text.text or "" for text in element.iter("text") if text.get("class") == role]


def test_sections_lie_side_by_side_to_scale() -> None:
    wide = [section[0] for section in boxes(draw_wide(SONG))]
    scale = (WIDE - 2) / 190
    for (left, _, right, _), section in zip(wide, SONG.sections, strict=True):
        assert left == pytest.approx(1 + section.start * scale, abs=0.02)
        assert right == pytest.approx(1 + section.end * scale, abs=0.02)


def test_sections_of_the_narrow_plan_lie_below_each_other_to_scale() -> None:
    heights = [box[0][3] - box[0][1] for box in boxes(draw_narrow(SONG))]
    lengths = [float(s.end - s.start) for s in SONG.sections]
    assert [h / heights[0] for h in heights] == pytest.approx(
        [length / lengths[0] for length in lengths], rel=0.01
    )


@pytest.mark.parametrize(
    "given", [SONG, BRIEF, BUSY, CROWDED, plan(("A", "Whole", 1)), plan(("Z", "x" * 80, 9))]
)
@pytest.mark.parametrize("draw", [draw_wide, draw_narrow])
def test_no_text_leaves_its_section(given: Plan, draw: Callable[[Plan], str]) -> None:
    for link in parsed(draw(given)).iter("a"):
        extents = [extent(path) for path in link.iter("path")]
        left, top = min(e[0] for e in extents), min(e[1] for e in extents)
        right, bottom = max(e[2] for e in extents), max(e[3] for e in extents)
        for text in link.iter("text"):
            size = float(text.get("font-size", "0"))
            width = text_width(text.text or "", size)
            x, y = float(text.get("x", "0")), float(text.get("y", "0"))
            start = x - width if text.get("text-anchor") == "end" else x
            assert left <= start
            assert start + width <= right + 0.01
            assert top <= y - 0.7 * size
            assert y <= bottom


def test_a_brief_section_of_the_narrow_plan_has_its_letter_and_name() -> None:
    sections = list(parsed(draw_narrow(BRIEF)).iter("a"))
    assert [text.text for text in sections[1].iter("text")][:2] == ["B", "Turnaround"]


IN_BARS = ("plan-length", "plan-tick")
IN_TIME = ("plan-bars", "plan-bar-tick")
IN_BOTH = ("plan-length", "plan-bar-tick")


@pytest.mark.parametrize("unseen", [IN_BARS, IN_TIME, IN_BOTH])
@pytest.mark.parametrize(
    "svg", [draw_wide(SONG), draw_narrow(SONG), draw_narrow(BRIEF), draw_wide(BUSY)]
)
def test_no_text_lies_on_another(svg: str, unseen: tuple[str, str]) -> None:
    root = parsed(svg)
    placed = []
    for text in root.iter("text"):
        if text.get("class") in unseen:
            continue
        size = float(text.get("font-size", "0"))
        width = text_width(text.text or "", size)
        x, y = float(text.get("x", "0")), float(text.get("y", "0"))
        shift = {"end": width, "middle": width / 2}.get(text.get("text-anchor", ""), 0)
        placed.append((x - shift, x - shift + width, y - 0.7 * size, y))
    for n, (left, right, top, bottom) in enumerate(placed):
        for other in placed[n + 1 :]:
            apart = right <= other[0] or other[1] <= left or bottom <= other[2] or other[3] <= top
            assert apart


@pytest.mark.parametrize("draw", [draw_wide, draw_narrow])
def test_lengths_stand_in_bars_and_hidden_in_time_at_one_place(
    draw: Callable[[Plan], str],
) -> None:
    root = parsed(draw(SONG))
    bars, lengths = (
        [text for text in root.iter("text") if text.get("class") == role]
        for role in ("plan-bars", "plan-length")
    )
    assert {"0:40", "0:30"} <= {text.text for text in lengths}
    assert [(t.get("x"), t.get("y")) for t in bars] == [(t.get("x"), t.get("y")) for t in lengths]
    hidden = {text.get("class") for text in root.iter("text") if text.get("display") == "none"}
    assert hidden == {"plan-length", "plan-bar-tick"}


def test_first_bars_stand_where_their_sections_begin() -> None:
    root = parsed(draw_wide(SONG))
    numbers = [text for text in root.iter("text") if text.get("class") == "plan-bar-tick"]
    assert [text.text for text in numbers][:3] == ["1", "11", "51"]
    lefts = [section[0][0] for section in boxes(draw_wide(SONG))]
    assert float(numbers[1].get("x", "0")) == pytest.approx(lefts[1], abs=0.02)


def test_a_short_section_has_its_letter_only_and_its_name_as_title() -> None:
    links = list(parsed(draw_wide(SONG)).iter("a"))
    assert texts(links[0], "plan-letter") == ["A"]
    assert texts(links[5], "plan-name") == []
    assert links[5].findtext("title") == "A bridge of no great length"


def test_a_name_with_room_for_two_lines_is_broken() -> None:
    svg = draw_wide(plan(("A", "Verse", 160), ("B", "Instrumental breakdown", 40)))
    assert texts(list(parsed(svg).iter("a"))[1], "plan-name") == [
        "Instrumental",
        "breakdown",
    ]


def fills(svg: str) -> list[str]:
    """Return for each section how its band is filled: shade, or pattern."""
    links = parsed(svg).iter("a")
    return [
        re.findall(r"fill: ([^;]+)", link.findall("path")[-1].get("style", ""))[0]
        for link in links
    ]


def test_one_letter_has_one_look_and_another_letter_another() -> None:
    looks = fills(draw_wide(SONG))
    assert looks[2] == looks[4] == looks[6]
    assert looks[1] == looks[3]
    assert len({looks[0], looks[1], looks[2], looks[5]}) == 4


def test_looks_differ_by_pattern_not_by_shade_alone() -> None:
    svg = draw_wide(plan(*((letter, letter, 10) for letter in "ABCDEFG")))
    patterns = {p.get("id"): p.findall("path")[0].get("d") for p in parsed(svg).iter("pattern")}
    assert len(set(patterns.values())) == 6


def test_the_scale_is_in_minutes_and_seconds_up_to_the_end() -> None:
    ticks = texts(parsed(draw_wide(SONG)), "plan-tick")
    assert ticks[:3] == ["0:00", "0:20", "0:40"]
    assert ticks[-1] == "3:10"


def test_without_times_the_scale_counts_bars() -> None:
    svg = draw_wide(plan(("A", "Verse", 16), ("B", "Chorus", 8), unit="bars"))
    assert texts(parsed(svg), "plan-tick") == ["1", "5", "9", "13", "17", "21"]


def test_the_song_may_go_on_after_the_last_section() -> None:
    svg = draw_wide(plan(("A", "Verse", 50), end=100))
    assert boxes(svg)[0][0][2] == pytest.approx(1 + (WIDE - 2) / 2)


def test_both_layouts_keep_to_their_width() -> None:
    for svg, width in ((draw_wide(SONG), WIDE), (draw_narrow(SONG), NARROW)):
        root = parsed(svg)
        assert root.get("viewBox", "").split()[2] == str(width)
        for section in boxes(svg):
            assert all(left >= 0 and right <= width for left, _, right, _ in section)


def test_the_layouts_share_no_id() -> None:
    first, second = (
        set(re.findall(r'\bid="([^"]+)"', svg)) for svg in (draw_wide(SONG), draw_narrow(SONG))
    )
    assert first
    assert second
    assert not first & second


def test_a_plan_stays_small() -> None:
    assert len(draw_wide(SONG)) < 12_000


def test_drawing_a_plan_loads_no_plotting_library() -> None:
    program = (
        "import sys; from fractions import Fraction; from sitegen.figures.form_plan import *;"
        "section = PlanSection('B', 'Verse', '8 bars', Fraction(0), Fraction(20), Target('', ''));"
        "plan = Plan('plan', 'A plan', 'seconds', (section,), Fraction(20));"
        "print(draw_wide(plan) + draw_narrow(plan), *sys.modules)"
    )
    run = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert run.stdout.count("<pattern") == 2
    assert not {"matplotlib", "numpy"} & set(run.stdout.split())
