"""Time by counting: divisions, pickups, meters, repeats, systems."""

from fractions import Fraction

import pytest
from unit.charts.reading_aloud import chart_of, faults, played, read


def test_marks_divide_a_beat_evenly_however_many_they_are() -> None:
    chart = chart_of(
        read("""
            count | 1 e & a 2  la li 3  .  .  .  .  4  |
            voice | C4  D4  E4    F4 G4          A4 B4 |
        """)
    )
    assert played(chart) == [
        "C4 0+1/2",
        "D4 1/2+1/2",
        "E4 1+2/3",
        "F4 5/3+1/3",
        "G4 2+4/5",
        "A4 14/5+1/5",
        "B4 3+1",
    ]


def test_marks_may_touch_the_numbers() -> None:
    chart = chart_of(
        read("""
            count | 1e&a2e&a3lali4+|
            drums
              SD  | o-o-o---oo-o-oo|
        """)
    )
    struck = [event.onset for event in chart.parts[0].voices[0] if event.notes]
    assert struck == [Fraction(text) for text in ("0", "1/2", "1", "2", "7/3", "8/3", "3", "7/2")]


def test_a_compound_meter_counts_its_eighths() -> None:
    chart = chart_of(
        read("""
            meter: 6/8

            count | 1   2   3   4   5   6 & |
            voice | C4          D4      E4  |
        """)
    )
    assert played(chart) == ["C4 0+3/2", "D4 3/2+1", "E4 5/2+1/2"]


def test_a_bar_that_starts_later_is_a_pickup_and_bar_0() -> None:
    chart = chart_of(
        read("""
            count | 4   &   | 1   2   3   4   | 1   2   3   |
            voice |     C4  | D4              | E4          |
        """)
    )
    assert [f"{bar.number}: {bar.length}" for bar in chart.bars] == ["0: 1", "1: 4", "2: 3"]
    assert chart.bar_count == 2
    assert played(chart) == ["r 0+1/2", "C4 1/2+1/2", "D4 1+4", "E4 5+3"]


def test_bars_are_numbered_from_the_head() -> None:
    chart = chart_of(
        read("""
            bars: 17

            count | 1   2   3   4   | 1   2   3   4   |
            voice | C4              | D4              |
        """)
    )
    assert [bar.number for bar in chart.bars] == [17, 18]


def test_the_meter_changes_at_the_head_of_a_bar() -> None:
    chart = chart_of(
        read("""
            meter: 4/4

            count | 1   2   3   4   | (7/8 (2+2+3)) 1   2   3   4   5   6   7   |
            voice | C4              |               D4                          |
        """)
    )
    first, second = chart.bars
    assert (str(first.meter), str(second.meter)) == ("4/4", "7/8")
    assert second.meter.groups == (2, 2, 3)
    assert second.new_meter
    assert second.length == Fraction(7, 2)


def test_repeats_and_endings_stand_at_the_bar_lines() -> None:
    chart = chart_of(
        read("""
            count |: 1   2   3   4   |(1.) 1   2   3   4   :|(2.) 1   2   3   4   ||
            voice |  C4              |     D4               |     E4              |
        """)
    )
    assert [bar.repeat_start for bar in chart.bars] == [True, False, False]
    assert [bar.repeat_end for bar in chart.bars] == [False, True, False]
    assert [bar.ending for bar in chart.bars] == ["", "1.", "2."]
    assert [bar.ending_closes for bar in chart.bars] == [False, True, True]
    assert chart.bars[2].double_bar


def test_no_sound_is_held_over_a_repeat_sign() -> None:
    chart = chart_of(
        read("""
            count |: 1   2   3   4   :| 1   2   3   4   |
            voice |  C4               |     D4          |
        """)
    )
    assert played(chart) == ["C4 0+4", "r 4+1", "D4 5+3"]


def test_a_note_is_held_over_a_bar_line_and_into_the_next_system() -> None:
    chart = chart_of(
        read("""
            count | 1   2   3   4   | 1   2   3   4   |
            voice | C4          D4  |         E4      |

            count | 1   2   3   4   |
            voice |     F4      r   |
        """)
    )
    assert played(chart) == ["C4 0+3", "D4 3+3", "E4 6+3", "F4 9+2", "r 11+1"]
    assert [bar.opens_line for bar in chart.bars] == [True, False, True]


def test_a_row_left_out_of_a_system_rests() -> None:
    chart = chart_of(
        read("""
            count | 1   2   3   4   |
            voice | C4              |
            keys  | C3,E3           |

            count | 1   2   3   4   |
            voice | D4              |

            count | 1   2   3   4   |
            voice | E4              |
            keys  | E3,G3           |
        """)
    )
    assert played(chart, "keys") == ["C3,E3 0+4", "r 4+4", "E3,G3 8+4"]


def test_a_bar_split_over_two_lines_keeps_its_number() -> None:
    chart = chart_of(
        read("""
            count | 1   2   |
            voice | C4      |

            count | 3   4   |
            voice | D4      |
        """)
    )
    assert [f"{bar.number}: {bar.skipped}" for bar in chart.bars] == ["1: 0", "1: 2"]
    assert chart.bar_count == 1


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (
            "count | 1   2   4   |\nvoice | C4          |",
            ["count-order 1:17-18"],
        ),
        ("count | 1   2   3   |\nvoice | C4          |", ["count-short 1:9-21"]),
        ("count | 1 2 3 4 5 |\nvoice | C4        |", ["count-order 1:17-18"]),
        ("count | & 1 2 3 4 |\nvoice |   C4      |", ["count-mark 1:9-10"]),
        ("count | 1 u 2 3 4 |\nvoice | C4        |", ["count-mark 1:11-12"]),
        ("count | 1 2 (3/4) 3 4 |\nvoice | C4            |", ["count-direction 1:13-18"]),
        ("count | (waltz) 1 2 3 4 |\nvoice |         C4      |", ["count-direction 1:9-16"]),
        ("voice | C4 |", ["count-missing 1:1-6"]),
        ("count | 1 2 3 4 |\ncount | 1 2 3 4 |\nvoice | C4      |", ["count-double 2:1-6"]),
        ("count | 1 2 3 4 | 3 4 |\nvoice | C4      |     |", ["count-start 1:19-20"]),
        ("count | 1 2 3 4 |   |\nvoice | C4      |   |", ["count-empty 1:17-21"]),
        ("count | 1 2 3 4 |\nvoice |\tC4      |", ["grid-tab 2:8-9"]),
        ("count | 1 2 3 4 |\nvoice | C4     |", ["bar-line 2:16-17"]),
        ("count | 1 2 3 4 |\nvoice |C4       |", ["off-count 2:8-10"]),
    ],
)
def test_a_fault_of_the_count_is_reported_where_it_stands(text: str, expected: list[str]) -> None:
    assert faults(read(text)) == expected


def test_a_row_that_slipped_sideways_is_reported_once() -> None:
    reading = read("""
        count | 1   2   3   4   | 1   2   3   4   |
        voice | C4   D4  E4  F4 | C4   D4         |
    """)
    assert faults(reading) == ["off-count 2:14-16", "off-count 2:32-34"]


def test_all_faults_of_a_block_come_in_one_go() -> None:
    reading = read("""
        id: Loud
        key: H minor
        tmepo: 90

        count | 1   2   3   4   |
        chrod | C               |
        voice | C4   D4     H4  |
        words | one two three four five |
    """)
    assert sorted(d.code for d in reading.diagnostics) == [
        "head-field",
        "head-value",
        "head-value",
        "off-count",
        "pitch",
        "row-unknown",
        "words-many",
    ]


@pytest.mark.parametrize(
    ("count", "cells", "expected"),
    [
        ("&   4   &   ", "C4  D4  E4  ", ["C4 0+1/2", "D4 1/2+1/2", "E4 1+1/2", "F4 3/2+4"]),
        ("&   ", "C4  ", ["C4 0+1/2", "F4 1/2+4"]),
        ("li  4   ", "C4  D4  ", ["C4 0+1/3", "D4 1/3+1", "F4 4/3+4"]),
        ("e   &   a   ", "C4  D4  E4  ", ["C4 0+1/4", "D4 1/4+1/4", "E4 1/2+1/4", "F4 3/4+4"]),
    ],
)
def test_a_pickup_may_begin_between_two_beats(count: str, cells: str, expected: list[str]) -> None:
    # A pickup of an eighth is counted "and": common practice, no source.
    chart = chart_of(
        read(f"count | {count}| 1   2   3   4   |\nvoice | {cells}| F4              |")
    )
    assert played(chart) == expected
    assert [bar.number for bar in chart.bars] == [0, 1]
    assert chart.bars[0].skipped + chart.bars[0].length == 4


def test_marks_that_do_not_say_where_they_lie_begin_no_bar() -> None:
    text = "count | .   4   | 1 2 3 4 |\nvoice |     C4  | D4      |"
    assert faults(read(text)) == ["count-mark 1:9-10"]
    text = "count | 1 2 3 4 | & 1 2 3 4 |\nvoice | C4      |   D4      |"
    assert faults(read(text)) == ["count-mark 1:19-20"]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("meter: 4/5\n\ncount | 1 2 3 4 5 |\nvoice | C4        |", ["head-value 1:8-11"]),
        ("count | 1 2 3 4 | (7/9) 1 2 3 |\nvoice | C4      |", ["count-direction 1:19-24"]),
        ("count | 1 2 3 4 | (3/4 1 2 3 |\nvoice | C4      |", ["count-direction 1:19-23"]),
        ("count |\t1 2 3 4 | 1 2 3 4 |\nvoice |  C4      | D4      |", ["grid-tab 1:8-9"]),
    ],
)
def test_one_slip_is_one_fault(text: str, expected: list[str]) -> None:
    assert faults(read(text)) == expected


def test_a_row_that_slips_as_a_whole_is_reported_once_where_the_slip_begins() -> None:
    at_the_bar_line = """
        count | 1 2 3 4 | 1 2 3 4 |
        voice | C4     | D4  E4  |
    """
    assert faults(read(at_the_bar_line)) == ["bar-line 2:16-17"]
    at_a_note = """
        count | 1   2   3   4   | 1   2   3   4   |
        voice | C4   D4          | E4  F4          |
    """
    assert faults(read(at_a_note)) == ["off-count 2:14-16"]


def test_syllables_of_notes_that_were_reported_are_not_too_many() -> None:
    text = """
        count | 1   2   3   4   |
        voice | C4  H4  E4      |
        words | one two three   |
    """
    assert faults(read(text)) == ["pitch 2:13-15"]


def test_a_row_with_a_tab_is_read_on_without_further_faults() -> None:
    text = "count | 1   2   3   4   |\nvoice |\tC4  D4\nwords | one two   |"
    assert faults(read(text)) == ["grid-tab 2:8-9"]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("count   1   2   3   4\nvoice | C4", ["count-missing 1:1-22"]),
        ("count | ¹   2   3   4   |\nvoice | C4  D4          |", ["count-mark 1:9-10"]),
        ("count | x   y   |\nvoice | C4      |", ["count-mark 1:9-10", "count-mark 1:13-14"]),
        ("count | 1.................. 2 3 4 |\nvoice | C4", ["count-mark 1:25-26"]),
    ],
)
def test_nothing_is_reported_of_what_stands_under_a_reported_count(
    text: str, expected: list[str]
) -> None:
    assert faults(read(text)) == expected


@pytest.mark.parametrize(
    "rows",
    [
        "count | 1 & 2 & 3 & 4 & | & a |\nvoice | C4              | D4  |",
        "count | 1 & 2 & 3 & 4 & |\nvoice | C4              |\n\ncount | & |\nvoice | C |",
        "count | & | 1 2 3 4 | & | 1 2 3 4 |\nvoice | C4| D4      | E4| F4      |",
    ],
)
def test_a_later_bar_of_marks_alone_is_one_fault(rows: str) -> None:
    found = read(rows)

    assert [fault.code for fault in found.diagnostics] == ["count-mark"]
    assert found.chart is not None
