"""The facts of one chart's progression."""

import pytest
from hypothesis import given
from unit.analysis.transposing import transpose_chart
from unit.charts.reading_aloud import changes, chart_of, read
from unit.harmony.progressions.bars_aloud import intervals

from sitegen.analysis.progressions import find_progression
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.analysis.study import study_chart
from sitegen.score.interval import Interval
from sitegen.source import Source


def facts_of(text: str) -> dict[str, Fact]:
    reading = study_chart(chart_of(changes(text)), Source("chart", ""))
    return {fact.path: fact for fact in find_progression(reading)}


def test_a_loop_with_another_ending_is_told() -> None:
    facts = facts_of("""
        key: A minor
        |: Am | F | C | G :|
        | Am | F | C | G |
        | Am | F | Dm | E7 |
    """)
    assert facts["loop"].text == "Am F C G, 4 bars, three times"
    assert facts["loop"].sentence == (
        "Bars 1 to 8: Am F C G goes round three times; the fourth time it ends Dm E7 "
        "(bars 11 and 12)."
    )
    assert facts["progression"].text == "i ♭VI ♭III ♭VII"
    assert [f"{p.bar}.{p.beat}" for p in facts["loop"].evidence] == ["1.1", "2.1", "3.1", "4.1"]


def test_a_loop_before_other_chords_is_told_without_its_ending() -> None:
    facts = facts_of("| C | F | C | F | C | F | G | Am |")
    assert facts["loop"].sentence == "Bars 1 to 6: C F goes round three times."


def test_a_chart_that_is_all_loop_needs_no_sentence() -> None:
    facts = facts_of("|: Em7 | A9 :|")
    assert (facts["loop"].text, facts["loop"].sentence) == ("Em7 A9, 2 bars, twice", "")


def test_without_a_key_the_way_from_root_to_root_is_told() -> None:
    facts = facts_of("| C | Am | F | G |")
    assert facts["progression"].text == "down a minor third, down a major third, up a whole tone"
    assert "loop" not in facts


def test_the_last_chord_of_a_loop_is_read_by_where_it_leads() -> None:
    # D♭7 falls to C when the loop comes round; at the end of a row it leads nowhere.
    round_and_round = facts_of("key: C major\n|: Cmaj7 | Am7 | Dm7 | Db7 :|")
    assert round_and_round["progression"].text == "Imaj7 vi7 ii7 subV7"


@pytest.mark.parametrize("text", ["| C | % | C |", "| N.C. |", "| N.C. | G |"])
def test_one_chord_is_no_progression(text: str) -> None:
    assert facts_of(text) == {}


def test_drums_alone_have_no_progression() -> None:
    chart = chart_of(
        read("""
        count | 1   2   3   4   |
        drums
          SD  | ----x-------x---|
        """)
    )
    assert find_progression(ChartReading(chart, (), ())) == ()


def test_bars_of_a_pickup_and_other_meters_are_counted_as_written() -> None:
    facts = facts_of("""
        meter: 3/4
        bars: 5
        | Em | C | (4/4) D | (3/4) Em | C | (4/4) D |
    """)
    assert facts["loop"].text == "Em C D, 3 bars, twice"
    assert [place.bar for place in facts["loop"].evidence] == [5, 6, 7]


@given(intervals())
def test_transposing_a_chart_leaves_its_numerals_and_the_times_of_its_loop(
    interval: Interval,
) -> None:
    chart = chart_of(
        changes("key: Eb major\n|: Cm | Ab7 | Eb/G | Bb :| Cm | Ab7 | Eb/G | Bb | Fm | Abm |")
    )
    here, there = (
        {fact.path: fact for fact in find_progression(ChartReading(c, (), ()))}
        for c in (chart, transpose_chart(chart, interval))
    )
    assert here["progression"] == there["progression"]
    assert here["loop"].evidence == there["loop"].evidence
    assert here["loop"].text.partition(",")[2] == there["loop"].text.partition(",")[2]
