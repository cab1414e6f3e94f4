"""Which findings stand under a chart: few, the telling first, none twice."""

from fractions import Fraction

import pytest
from unit.charts.reading_aloud import changes, chart_of

from sitegen.analysis.reading import ChartReading, Fact, Place
from sitegen.analysis.study import study_chart
from sitegen.kinds.findings import MOST, Finding, choose_findings, told_by
from sitegen.kinds.kind import Surroundings
from sitegen.kinds.studied import analyse_chart, compare_analyses
from sitegen.source import Source

FOUR_BARS = chart_of(changes("key: C\n\n| C | F | G | C |"))


def fact(path: str, sentence: str = "", *bars: int, notes: tuple[str, ...] = ()) -> Fact:
    places = tuple(Place(bar, Fraction(1), notes) for bar in bars)
    return Fact(path, 1, "1", "", places, sentence or f"{path} in bar {min(bars, default=1)}.")


def chosen(*facts: Fact, told: tuple[str, ...] = ()) -> tuple[Finding, ...]:
    return choose_findings(ChartReading(FOUR_BARS, (), (), facts), told)


def paths(*facts: Fact) -> list[str]:
    return [finding.path for finding in chosen(*facts)]


def test_a_fact_without_a_sentence_is_not_told() -> None:
    assert chosen(Fact("bars", 4, "4", "bars")) == ()


def test_what_a_part_does_comes_before_what_the_chords_do() -> None:
    assert paths(fact("cadence"), fact("loop"), fact("voice.climax")) == [
        "voice.climax",
        "loop",
        "cadence",
    ]


def test_one_subject_is_told_once() -> None:
    assert paths(fact("bass-descent"), fact("lament-bass")) == ["lament-bass"]
    assert paths(fact("guitar.longest-figure"), fact("bass.longest-figure")) == [
        "guitar.longest-figure"
    ]


def test_chords_do_not_repeat_what_a_part_says() -> None:
    assert paths(fact("pushes"), fact("voice.pushed-downbeats")) == ["voice.pushed-downbeats"]
    assert paths(fact("pushes")) == ["pushes"]


def test_a_kind_that_the_order_does_not_know_comes_last() -> None:
    assert paths(fact("something-new"), fact("voice.novel"), fact("cadence")) == [
        "voice.novel",
        "cadence",
        "something-new",
    ]


def test_there_are_never_more_than_a_few() -> None:
    many = "loop cadence borrowed-chords applied-dominants common-tone key-changes".split()
    assert len(chosen(*map(fact, many))) == MOST == 5


def test_what_only_describes_is_told_where_hardly_anything_else_is() -> None:
    assert paths(fact("harmonic-rhythm"), fact("cadence")) == ["cadence", "harmonic-rhythm"]
    assert paths(fact("harmonic-rhythm"), fact("cadence"), fact("loop")) == ["loop", "cadence"]


def test_a_sentence_that_was_told_before_is_not_told_again() -> None:
    assert chosen(fact("cadence", "It ends."), told=("It ends.",)) == ()


def test_what_holds_for_a_song_is_told_once_a_page() -> None:
    first = chosen(fact("like.verse", "It is as the verse in bar 1."), fact("cadence", "It ends."))
    told = tuple(told_by(first))
    assert chosen(fact("like.verse", "So is this, in bar 2."), told=told) == ()
    assert chosen(fact("like.chorus", "This is the chorus."), told=told) != ()
    assert chosen(fact("cadence", "This ends elsewhere."), told=told) != ()


def test_a_finding_points_at_its_bars_and_notes() -> None:
    (found,) = chosen(fact("voice.climax", "The top.", 2, notes=("voice-2-1",)))
    assert (found.bars, found.notes) == ((2,), ("voice-2-1",))


@pytest.mark.parametrize(
    ("sentence", "bars"),
    [
        ("Bars 1 to 3: it falls.", (1, 2, 3)),
        ("It comes in bars 1 and 3.", (1, 3)),
        ("It comes in bars 1, 2 and 4, as in bar 1.", (1, 2, 4)),
        ("Bar 2 is the fill.", (1, 2)),
    ],
)
def test_the_bars_that_a_sentence_names_are_marked(sentence: str, bars: tuple[int, ...]) -> None:
    assert chosen(fact("bass-descent", sentence, 1))[0].bars == bars


def test_bars_of_another_chart_are_not_taken_for_its_own() -> None:
    sentence = "Example 2 has the chords of bars 3 to 4 of Example 1."
    assert chosen(fact("like.verse", sentence, 1, 2))[0].bars == (1, 2)


def test_what_is_seen_everywhere_points_nowhere() -> None:
    assert chosen(fact("loop", "It goes round.", 1, 2, 3, 4))[0].bars == ()
    assert chosen(fact("third-less-share", "None has a third.", 1, 2))[0].bars == ()
    assert chosen(fact("voice.steps-share", "Steps.", 1, 2, 3, 4, notes=("a",)))[0].bars != ()


def test_charts_of_one_page_do_not_repeat_each_other() -> None:
    text = "key: C\n\n| C | A7 | Dm | G7 |"
    around = Surroundings("a", "Example 1")
    analyses = {name: analyse_chart(chart_of(changes(text)), around) for name in ("one", "two")}
    compared = compare_analyses(analyses, {"one": "Example 1", "two": "Example 2"})
    first, second = (
        {finding.sentence for finding in compared[name].findings} for name in ("one", "two")
    )
    assert first
    assert not first & second


def test_the_findings_of_a_real_chart_are_true_of_it() -> None:
    reading = study_chart(chart_of(changes("key: C\n\n| C | A7 | Dm | G7 |")), Source("a", ""))
    told = {finding.path: finding for finding in choose_findings(reading)}
    assert told["applied-dominants"].bars == (2,)
