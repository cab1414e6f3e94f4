"""The head of a block: names and values however they are capitalised, faults at the word."""

import pytest
from unit.charts.reading_aloud import chart_of, faults, read

ROWS = "\n\ncount | 1   2   3   4   |\nvoice | C4              |"


def test_names_and_words_may_be_capitalised() -> None:
    chart = chart_of(read(f"Key: E flat minor\nFEEL: Swing\nShow: Staff\nRoman: On{ROWS}"))
    assert (str(chart.key), chart.feel, chart.roman) == ("E♭ minor", "swing", True)


@pytest.mark.parametrize(
    ("line", "faulty"),
    [
        ("show: staff, stav", "stav"),
        ("key: Eb minr", "minr"),
        ("key: H minor", "H minor"),
        ("feel: groovy", "groovy"),
        ("label: degreees", "degreees"),
        ("bars: 0", "0"),
        ("id: " + "a" * 61, "a" * 61),
        ("roman: maybe", "maybe"),
    ],
)
def test_the_very_word_is_reported_with_a_hint(line: str, faulty: str) -> None:
    reading = read(line + ROWS)
    column = 1 + line.rindex(faulty)
    assert faults(reading) == [f"head-value 1:{column}-{column + len(faulty)}"]
    assert reading.diagnostics[0].hint
