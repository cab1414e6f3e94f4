"""Meters, tempos and times of a recording as authors write them."""

from fractions import Fraction

import pytest

from sitegen.score.clock import clock_text, read_clock
from sitegen.score.meter import Meter
from sitegen.score.tempo import read_tempo


@pytest.mark.parametrize(
    ("text", "groups", "length"),
    [
        ("4/4", (1, 1, 1, 1), 4),
        ("6/8", (3, 3), 3),
        ("12/8", (3, 3, 3, 3), 6),
        ("3/8", (3,), Fraction(3, 2)),
        ("7/8", (2, 2, 3), Fraction(7, 2)),
        ("7/8 (3+2+2)", (3, 2, 2), Fraction(7, 2)),
        ("2+3/8", (2, 3), Fraction(5, 2)),
        ("5/4", (3, 2), 5),
        ("2/2", (1, 1), 4),
    ],
)
def test_a_meter_is_read_with_its_beat_groups(
    text: str, groups: tuple[int, ...], length: int | Fraction
) -> None:
    meter = Meter.read(text)
    assert meter.groups == groups
    assert meter.length == length


@pytest.mark.parametrize(
    "text", ["", "4", "4/5", "0/4", "4/0", "1/1000", "65/4", "7/8 (2+2+2)", "-4/4", "4/4 (0+4)"]
)
def test_other_text_is_no_meter(text: str) -> None:
    with pytest.raises(ValueError, match=r"meter|beats|add up|number"):
        Meter.read(text)


@pytest.mark.parametrize(
    ("text", "compound", "quarters"),
    [
        ("96", False, 96),
        ("96 bpm", False, 96),
        ("58", True, 87),
        ("dotted quarter = 58", False, 87),
        ("eighth = 220", True, 110),
        ("half = 60", False, 120),
        ("♩ = 96", False, 96),
        ("♩.=58", False, 87),
        ("dotted-quarter = 58", False, 87),
        ("Eighth note = 200", False, 100),
    ],
)
def test_a_tempo_counts_its_note_value(text: str, compound: bool, quarters: int) -> None:
    assert read_tempo(text, compound=compound).quarters_per_minute == quarters


@pytest.mark.parametrize("text", ["0", "1e9", "fast", "1000000000", "9", "601", "breve = 60"])
def test_other_text_is_no_tempo(text: str) -> None:
    with pytest.raises(ValueError, match="tempo"):
        read_tempo(text)


@pytest.mark.parametrize(("text", "seconds"), [("0:07", 7), ("1:23", 83), ("1:02:33", 3753)])
def test_a_time_of_the_recording_reads_and_prints(text: str, seconds: int) -> None:
    assert read_clock(text) == seconds
    assert clock_text(seconds) == text


@pytest.mark.parametrize("text", ["83", "1:60", "1:2", "-1:00", "1:75:00", "٣:٤٥"])
def test_other_text_is_no_time(text: str) -> None:
    with pytest.raises(ValueError, match=r"time|minutes"):
        read_clock(text)
