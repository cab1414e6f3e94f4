"""The progression of a chart."""

import pytest
from unit.charts.reading_aloud import changes, chart_of, read

from sitegen.analysis.progressions import chart_progression
from sitegen.harmony.progressions import Progression


def told(progression: Progression) -> list[str]:
    return [f"{s.chord} {s.bar} {s.offset} {s.duration}" for s in progression.steps]


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("|: C | F :|", "| C | F | C | F |"),
        ("| C | % | F |", "| C | C | F |"),
        ("| C / / / | F / C / |", "| C | F C |"),
        ("|: C | (1.) F :| (2.) G |", "| C | F | C | G |"),
    ],
)
def test_signs_of_repeat_are_played_out(written: str, meant: str) -> None:
    one, other = (chart_progression(chart_of(changes(text))) for text in (written, meant))
    assert [bar.changes for bar in one.bars] == [bar.changes for bar in other.bars]
    assert [step.chord for step in one.steps] == [step.chord for step in other.steps]


def test_a_push_counts_from_the_bar_line() -> None:
    chart = chart_of(
        read("""
        count | 1   &   2   &   3   &   4   &   | 1   &   2   &   3   &   4   &   |
        chord | C                           F   |             G               Am  |
        voice | C4  C4  C4  C4  C4  C4  C4  C4  | C4  C4  C4  C4  C4  C4  C4  C4  |
        """)
    )
    # A minor comes early as well, but nothing follows over the last bar line.
    assert told(chart_progression(chart)) == ["C 1 0 4", "F 2 0 3/2", "G 2 3/2 2", "Am 2 7/2 1/2"]


def test_bars_before_the_first_chord_are_none() -> None:
    chart = chart_of(
        read("""
        count | 4   | 1   2   3   4   | 1   2   3   4   |
        chord |     | Em              | N.C.    D       |
        voice | E4  | E4  E4  E4  E4  | E4  E4  D4  D4  |
        """)
    )
    progression = chart_progression(chart)
    assert [bar.number for bar in progression.bars] == [1, 2]
    assert told(progression) == ["Em 1 0 4", "D 2 2 2"]


def test_a_chart_without_chords_has_an_empty_progression() -> None:
    chart = chart_of(read("count | 1   2   3   4   |\nvoice | E4  E4  E4  E4  |"))
    assert chart_progression(chart).steps == ()
