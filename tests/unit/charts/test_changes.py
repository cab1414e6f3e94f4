"""Progressions bar by bar."""

import pytest
from unit.charts.reading_aloud import changes, chart_of, faults

from sitegen.charts.reading import Reading


def chords(reading: Reading) -> list[str]:
    return [f"{e.chord} {e.onset}+{e.duration}" for e in chart_of(reading).chords]


def test_chords_share_a_bar_evenly_and_beats_are_held() -> None:
    reading = changes("| Ebsus2 | Gbsus2 / C5/G / | F5 . Ab5 . | C G | % |")
    assert chords(reading) == [
        "E♭sus2 0+4",
        "G♭sus2 4+2",
        "C5/G 6+2",
        "F5 8+2",
        "A♭5 10+2",
        "C 12+2",
        "G 14+2",
        "C 16+2",
        "G 18+2",
    ]


def test_a_held_sign_at_the_start_of_a_bar_holds_the_chord_before() -> None:
    assert chords(changes("| C . . . | . . G . |")) == ["C 0+6", "G 6+2"]


def test_as_many_chords_as_beat_groups_share_an_uneven_bar_by_its_groups() -> None:
    reading = changes("meter: 7/8\n\n| Am F G | Am . F |")
    assert chords(reading) == ["Am 0+1", "F 1+1", "G 2+3/2", "Am 7/2+2", "F 11/2+3/2"]


def test_repeats_endings_meters_and_names_are_read() -> None:
    chart = chart_of(changes("Verse |: C | (3/4) F | (1.) (4/4) G :|(2.) C ||"))
    assert [bar.repeat_start for bar in chart.bars] == [True, False, False, False]
    assert [str(bar.meter) for bar in chart.bars] == ["4/4", "3/4", "4/4", "4/4"]
    assert [bar.ending for bar in chart.bars] == ["", "", "1.", "2."]
    assert chart.bars[2].repeat_end
    assert chart.bars[3].double_bar
    assert [f"{s.text} {s.onset}" for s in chart.sections] == ["Verse 0"]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("| C | Gmajj7 |", ["chord-quality 1:8-13"]),
        ("C G Am F", ["changes-line 1:1-9"]),
        ("| C / / | G |", ["changes-beats 1:3-8"]),
        ("| % | G |", ["changes-bar 1:3-4"]),
        ("| C | | G |", ["changes-bar 1:6-7"]),
        ("meter: 7/8\n\n| C G |", ["changes-split 3:3-6"]),
        ("id: a", ["changes-empty 1:1-1"]),
        ("key: Q\n\n| C |", ["head-value 1:6-7"]),
    ],
)
def test_a_fault_is_reported_where_it_stands(text: str, expected: list[str]) -> None:
    assert faults(changes(text)) == expected


def test_after_a_meter_that_cannot_be_read_no_bar_is_measured() -> None:
    assert faults(changes("meter: 4/5\n\n| C . | % | F |")) == ["head-value 1:8-11"]
    assert faults(changes("| C | (3/5) F . | G |")) == ["count-direction 1:7-12"]
