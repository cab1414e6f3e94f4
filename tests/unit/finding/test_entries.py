"""What a write-up is filed under is what its charts hold, bar by bar."""

import pytest
from unit.finding.conftest import FileWriteUp

from sitegen.finding import Beat, Entry, Technique
from sitegen.finding.entries import bass_of, is_odd
from sitegen.score.meter import Meter

CHANGES = """\
```changes
id: loop
title: Round and round
key: A minor
meter: 4/4
tempo: 88

| Am | F/C | C | G | Am | F/C | C | G | Am | F/C | C | G |
```
"""
TUNE = """\
```notation
id: tune
key: D minor
meter: 4/4
tempo: 120
guitar: drop D, capo 2

count | 4   &   | 1   &   2   &   3   &   4   &   | 1   &   2   &   3   &   4   &   |
chord |         | Dm                              | A7                              |
voice | A4  D5  | F5      E5      D5      r       | E5              A4              |
guitar
  4   |         | 0---------------0---------------| ----------------3---------------|
bass  |         | D2              Ab2             | A2              E2              |
```
"""
BEAT = """\
```notation
id: beat
meter: 4/4

count | 1 & 2 & 3 & 4 & | 1 & 2 & 3 & 4 & | 1 & 2 & 3 & 4 & |
drums
  HH  | x x x x x x x x | x x x x x x x x | x x x x x x x x |
  SD  | - - x - - g x - | - - x - - - x - | - - x - - - x x |
  BD  | x - - - x - - - | x - - - x - - - | x - - - x - - - |
```
"""
FORM = """\
```form
id: plan
meter: 4/4

Verse  | 16
Chorus | 8
Coda   | 7 1/2
```
"""


def test_a_progression_is_filed_in_the_order_of_play_with_its_loop(
    file_write_up: FileWriteUp,
) -> None:
    (chart,) = file_write_up(CHANGES).charts
    assert chart.progression is not None
    steps = chart.progression.steps
    assert [step.symbol for step in steps[:4]] == ["Am", "F/C", "C", "G"]
    assert [step.root for step in steps[:4]] == [9, 5, 0, 7]
    assert [step.family for step in steps[:4]] == ["minor", "major", "major", "major"]
    assert steps[1].notes == "047/7"
    assert bass_of(steps[1]) == 0
    assert [step.bar for step in steps] == list(range(1, 13))
    assert (chart.progression.tonic, chart.progression.minor) == (9, True)
    assert (chart.progression.loop_start, chart.progression.loop_length) == (0, 4)
    assert (chart.anchor, chart.name, chart.kind) == ("chart-loop", "Example 1", "changes")
    assert (chart.key, chart.meter, chart.tempo) == ("A minor", "4/4", 88)
    assert set(chart.qualities) == {"m", ""}


def test_one_chord_is_no_progression(file_write_up: FileWriteUp) -> None:
    (chart,) = file_write_up(CHANGES.replace("F/C | C | G", "Am | Am | Am")).charts
    assert chart.progression is None


def test_a_tune_is_filed_as_it_sounds_with_its_pickup(file_write_up: FileWriteUp) -> None:
    (chart,) = file_write_up(TUNE).charts
    by_part = {melody.part: melody for melody in chart.melodies}
    voice = by_part["voice"]
    assert voice.midi == (69, 74, 77, 76, 74, 76, 69)
    assert voice.onsets == (0, 12, 24, 48, 72, 120, 168)
    assert voice.bars == (0, 0, 1, 1, 1, 2, 2)
    assert (voice.tonic, voice.bass) == (2, False)
    # The capo raises what the guitar's string says.
    assert by_part["guitar"].midi == (52, 52, 55)
    assert by_part["bass"].bass
    assert chart.instruments == ("voice", "guitar", "bass")
    assert chart.tunings == ("drop D", "capo 2", "standard")


def test_bars_of_drums_that_are_alike_are_filed_once(file_write_up: FileWriteUp) -> None:
    (chart,) = file_write_up(BEAT).charts
    hats = tuple(range(0, 96, 12))
    # The ghost note of the first bar is a touch, no part of the pattern.
    groove = (("BD", (0, 48)), ("HH", hats), ("SD", (24, 72)))
    other = (("BD", (0, 48)), ("HH", hats), ("SD", (24, 72, 84)))
    assert chart.beats == (Beat("4/4", 96, groove, (1, 2)), Beat("4/4", 96, other, (3,)))


def test_a_tritone_in_the_bass_is_filed_under_its_bars(file_write_up: FileWriteUp) -> None:
    (chart,) = file_write_up(TUNE).charts
    found = {technique.name: technique.bars for technique in chart.techniques}
    assert found["tritone in the bass"] == (1,)
    assert found["pickup"] == (0,)
    assert "odd meter" not in found


@pytest.mark.parametrize(
    ("chords", "bars"), [("| C | F#7 | B | E |", (1, 2)), ("| C/E | Am | Bb7 | E |", (3, 4))]
)
def test_roots_and_slash_basses_a_tritone_apart_are_found(
    chords: str, bars: tuple[int, ...], file_write_up: FileWriteUp
) -> None:
    (chart,) = file_write_up(f"```changes\nkey: C\n\n{chords}\n```\n").charts
    assert Technique("tritone in the bass", bars) in chart.techniques


@pytest.mark.parametrize(
    ("meter", "odd"),
    [
        ("4/4", False),
        ("3/4", False),
        ("6/8", False),
        ("12/8", False),
        ("3/8", False),
        ("5/4", True),
        ("7/8", True),
        ("3+3+2/8", True),
        ("11/8", True),
    ],
)
def test_meters_of_unequal_beats_are_odd(meter: str, odd: bool) -> None:
    # Common practice, no source.
    assert is_odd(Meter.read(meter)) is odd


def test_the_form_plan_is_filed_by_its_sections(file_write_up: FileWriteUp) -> None:
    entry = file_write_up(FORM)
    assert [(one.name, one.letter, one.bars) for one in entry.sections] == [
        ("Verse", "A", 16),
        ("Chorus", "B", 8),
        ("Coda", "C", 7.5),
    ]
    assert entry.charts == ()


def test_a_write_up_without_charts_holds_nothing(file_write_up: FileWriteUp) -> None:
    assert file_write_up("Words alone.\n") == Entry()
