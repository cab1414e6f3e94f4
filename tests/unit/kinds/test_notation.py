"""What the notation kind adds to an engraving: the setting of its instruments, the legend."""

import pytest
from unit.charts.reading_aloud import chart_of, read

from sitegen.kinds.kind import Surroundings
from sitegen.kinds.notation import LegendEntry, NotationDrawing, draw_notation
from sitegen.kinds.studied import analyse_chart


def drawn(head: str, part: str, cells: str) -> NotationDrawing:
    rows = f"count | 1   2   3   4   |\nchord | Eb5             |\n{part} | {cells:<15} |"
    around = Surroundings("a", "Example 1")
    drawing = draw_notation(analyse_chart(chart_of(read(f"{head}\n\n{rows}")), around), around)
    assert isinstance(drawing.content, NotationDrawing)
    return drawing.content


@pytest.mark.parametrize(
    ("line", "setup"),
    [
        ("bass: half-step down", ("Bass: half-step down, fingered in E minor",)),
        ("bass: standard", ()),
        ("bass: standard, capo 2", ("Bass: capo 2, fingered in C♯ minor",)),
        ("bass: drop C#", ("Bass: drop C♯, fingered in E minor",)),
        ("bass: D1 A1 D2 G2", ("Bass: D1 A1 D2 G2",)),
    ],
)
def test_a_setting_that_is_not_the_plain_one_is_told(line: str, setup: tuple[str, ...]) -> None:
    assert drawn(f"key: Eb minor\n{line}", "bass ", "Eb2").setup == setup


def test_a_transposing_instrument_tells_the_key_it_reads_in() -> None:
    assert drawn("key: Eb\nsax: reads in Bb", "sax  ", "Eb4").setup == (
        "Sax: reads in B♭, in F major",
    )


def test_the_legend_tells_only_the_roles_that_are_there() -> None:
    assert drawn("key: Eb", "voice", "Eb4     F4").legend == (
        LegendEntry("chord-tone", "R", "chord tone, upright"),
        LegendEntry("tension", "9", "tension, in italics"),
    )
    assert drawn("key: Eb", "voice", "Eb4     B4").legend == (
        LegendEntry("chord-tone", "R", "chord tone, upright"),
        LegendEntry("non-chord", "(♯5)", "non-chord tone, in brackets"),
    )
    assert drawn("key: Eb", "voice", "Eb4     Bb4").legend == ()
    assert drawn("key: Eb\nlabel: none", "voice", "Eb4     F4").legend == ()
