"""The contour of a melody, drawn and said."""

import re

from unit.charts.reading_aloud import chart_of, read

from sitegen.figures.contour import draw_contour

TUNE = """
    count | 1   2   3   4   | 1   2   3   4   |
    voice | C4  E4  G4  r   | E4      C5      |
"""


def test_the_sentence_says_where_the_line_goes() -> None:
    contour = draw_contour(chart_of(read(TUNE)))
    assert contour is not None
    assert contour.sentence == (
        "Contour of the voice: from C4 to C5, between C4 at the lowest and C5 at the highest."
    )


def test_the_line_rises_with_the_pitch_and_breaks_at_a_rest() -> None:
    contour = draw_contour(chart_of(read(TUNE)))
    assert contour is not None
    (line,) = re.findall(r'class="melody" d="([^"]+)"', contour.svg)
    heights = [float(y) for y in re.findall(r"[ML][\d.]+ ([\d.]+)", line)]
    # Further up the page is a smaller y: C4, E4, G4, E4 again, C5.
    assert heights[0] > heights[1] > heights[2]
    assert heights[3] == heights[1]
    assert heights[4] == min(heights)
    assert [stroke[0] for stroke in re.findall(r"[ML][^MLH]*", line)] == ["M", "L", "L", "M", "L"]


def test_drums_have_no_contour() -> None:
    chart = chart_of(read("count | 1   2   3   4   |\ndrums\n  SD  | o---o---o---o---|"))
    assert draw_contour(chart) is None
