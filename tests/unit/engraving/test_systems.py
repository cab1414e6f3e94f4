"""Where lines break: every bar at its natural width, as few lines as possible, even ones."""

import pytest
from unit.engraving import samples

from sitegen.engraving.mei import write_mei
from sitegen.engraving.systems import (
    NARROW,
    WIDE,
    BarWidths,
    draw_endless,
    draw_sheet,
    measure_bars,
)

EVEN = BarWidths(edges=(0, 4000, 8000, 12000, 16000), around=500, opening=1000)


@pytest.mark.parametrize(
    ("room", "starts"),
    [
        (20000, []),
        (16500, []),
        # A second line costs its clef and signature: two bars are 500 + 1000 + 8000 wide.
        (14000, [2]),
        (9500, [2]),
        # Three lines: the first holds two bars, 8500, the others one, for two would need 9500.
        (9000, [2, 3]),
        (5500, [1, 2, 3]),
        (100, [1, 2, 3]),
    ],
)
def test_lines_are_few_and_even(room: float, starts: list[int]) -> None:
    assert EVEN.starts(room) == starts


@pytest.mark.parametrize("width", [WIDE, NARROW])
def test_no_bar_is_squeezed_below_its_natural_width(width: int) -> None:
    mei = write_mei(samples.song())
    natural = measure_bars(draw_endless(mei))
    sheet = draw_sheet(mei, width, by_author=False)
    drawn = [
        float(path.get("d", "").split("L")[1].split()[0])
        - float(path.get("d", "").removeprefix("M").split()[0])
        for measure in sheet.music.iter("g")
        if measure.get("class") == "measure"
        for path in [next(p for p in measure.iter("path") if "L" in p.get("d", ""))]
    ]
    wanted = [b - a for a, b in zip(natural.edges, natural.edges[1:], strict=False)]
    assert len(drawn) == len(wanted) > 1
    assert all(now >= 0.95 * then for now, then in zip(drawn[1:], wanted[1:], strict=True))
