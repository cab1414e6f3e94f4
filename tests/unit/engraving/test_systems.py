"""Where lines break: every bar at its natural width, as few lines as possible, even ones."""

from collections.abc import Callable, Mapping
from dataclasses import replace

import pytest
from unit.engraving import samples

from sitegen.analysis.reading import ChartReading
from sitegen.engraving import systems
from sitegen.engraving.mei import write_mei
from sitegen.engraving.systems import (
    NARROW,
    WIDE,
    BarWidths,
    Layouts,
    draw_endless,
    draw_sheet,
    measure_bars,
)
from sitegen.engraving.toolkit import Rendering, render

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


@pytest.mark.parametrize(
    ("starts", "least"),
    [
        # Half of what stands around, and the bars: two of four, three of four, all.
        ([2], 250 + 8000),
        ([3], 250 + 12000),
        ([], 250 + 16000),
    ],
)
def test_a_line_takes_at_least_its_bars(starts: list[int], least: float) -> None:
    assert EVEN.least(starts) == least


@pytest.mark.parametrize("make", [samples.song, samples.band, samples.riff])
def test_what_lines_take_at_least_is_no_more_than_verovio_gives_them(
    make: Callable[[], ChartReading],
) -> None:
    reading = make()
    lines = tuple(replace(bar, opens_line=True) for bar in reading.chart.bars)
    mei = write_mei(replace(reading, chart=replace(reading.chart, bars=lines)))
    bars = measure_bars(draw_endless(mei.replace("<sb />", "")))
    least = bars.least(range(1, len(lines)))
    assert 0 < least <= draw_endless(mei, "encoded").box[2]


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


@pytest.mark.parametrize(
    ("make", "shared"),
    # Two bars have air in a column and none on a phone: nothing is drawn for both.
    [(samples.song, 1), (samples.band, 1), (samples.riff, 0)],
)
def test_two_widths_share_what_is_drawn_for_both(
    make: Callable[[], ChartReading], shared: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    drawn: list[str] = []

    def counted(mei: str, options: Mapping[str, object]) -> Rendering:
        drawn.append(mei)
        return render(mei, options)

    monkeypatch.setattr(systems, "render", counted)
    mei = write_mei(make())
    alone = [draw_sheet(mei, width, by_author=False).svg for width in (NARROW, WIDE)]
    apart, together = len(drawn), Layouts(mei)
    assert [together.sheet(width, by_author=False).svg for width in (NARROW, WIDE)] == alone
    assert apart - (len(drawn) - apart) >= shared


def test_one_line_is_drawn_alike_with_and_without_the_breaks_of_the_author() -> None:
    chart = samples.song()
    lines = tuple(replace(bar, opens_line=True) for bar in chart.chart.bars)
    broken = write_mei(replace(chart, chart=replace(chart.chart, bars=lines)))
    assert broken.count("<sb />") == len(lines) - 1 > 0
    plain = broken.replace("<sb />", "")
    assert measure_bars(draw_endless(broken)) == measure_bars(draw_endless(plain))
