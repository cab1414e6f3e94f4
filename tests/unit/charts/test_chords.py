"""Chord symbols in charts, and those that writers use in two ways."""

from unit.charts.reading_aloud import changes, faults

from sitegen.diagnostics import Severity
from sitegen.score.chart import Chart

CHART = """
    id: a
    key: C

    | C2 F | C2 {} |
"""


def test_a_symbol_that_can_be_read_two_ways_is_read_and_says_so_once() -> None:
    reading = changes(CHART.format("G7"))

    assert isinstance(reading.chart, Chart)
    assert faults(reading) == ["chord-read-as 4:3-5"]
    note = reading.diagnostics[0]
    assert note.severity is Severity.NOTE
    assert note.message == '"C2" is read as "Cadd2", and others mean "Csus2" by it'
    assert note.hint == 'write "Cadd2" or "Csus2"'


def test_each_doubtful_symbol_has_its_own_note() -> None:
    assert faults(changes(CHART.format("G11"))) == ["chord-read-as 4:3-5", "chord-read-as 4:13-16"]


def test_a_refused_symbol_is_no_note() -> None:
    assert faults(changes(CHART.format("Bbb5"))) == [
        "chord-read-as 4:3-5",
        "chord-two-ways 4:13-17",
    ]
