"""The progressions of the demo's write-ups compared, as worked out by hand from their text."""

from functools import cache
from itertools import combinations
from pathlib import Path

import pytest

from sitegen.analysis.progressions import chart_progression, compare_charts, find_progression
from sitegen.analysis.reading import ChartReading
from sitegen.harmony.progressions import Progression, compare
from sitegen.kinds import KINDS
from sitegen.site.content import scan_content
from sitegen.site.study import study_file

CONTENT = Path(__file__).parents[2] / "content"
ARTICLES = {file.slug: file for file in scan_content(CONTENT).articles}

# first chart, second chart: what the second has of the first.
RELATIONS = {
    "borrowed-coat": {
        ("capo-figure", "verse-changes"): "the chords of X in bars 1 to 4",
        ("capo-figure", "verse-melody"): "the chords of X in bars 1 to 4",
        ("verse-changes", "verse-melody"): "the same nine chords as X",
        ("verse-changes", "inner-line"): "the chords of bars 5 to 8 of X",
        ("verse-melody", "inner-line"): "the chords of bars 5 to 8 of X",
        ("chorus", "chorus-changes"): "the chords of X in bars 1 to 4",
        ("chorus-end", "chorus-changes"): "the chords of X in bars 5 to 8",
    },
    "one-stair-short": {
        ("groove", "verse-melody"): "the same two chords as X",
        ("groove", "chorus-changes"): "the chords of X in bars 7 and 8",
        ("verse-melody", "chorus-changes"): "the chords of X in bars 7 and 8",
        ("chorus", "chorus-changes"): "the chords of X in bars 1 and 2",
    },
    "rust-calendar": {
        ("verse-melody", "verse-changes"): "the chords of X in bars 1 to 4",
        # The verse goes C♯ A E B; the chorus A E B C♯, without the ninths of the sus2 chords.
        ("verse-melody", "chorus"): (
            "the same four chords as X, starting from the second chord, "
            "with A5 for Asus2, E5 for Esus2 and B5 for Bsus2"
        ),
        ("verse-melody", "chorus-changes"): (
            "in its loop the same four chords as X, starting from the second chord, "
            "with A5 for Asus2, E5 for Esus2 and B5 for Bsus2"
        ),
        ("verse-changes", "chorus"): (
            "the same four chords as the loop of X, starting from the second chord, "
            "with A5 for Asus2, E5 for Esus2 and B5 for Bsus2"
        ),
        ("verse-changes", "chorus-changes"): (
            "the same four-chord loop as X, starting from the second chord, "
            "with A5 for Asus2, E5 for Esus2 and B5 for Bsus2"
        ),
        ("chorus", "chorus-changes"): "the chords of X in bars 1 to 4",
    },
}


@cache
def readings(slug: str) -> dict[str, ChartReading]:
    charts = study_file(ARTICLES[slug], KINDS).charts
    values = {chart.named.id: chart.analysis.value for chart in charts if chart.analysis}
    return {name: value for name, value in values.items() if isinstance(value, ChartReading)}


@cache
def progressions(slug: str) -> dict[str, Progression]:
    made = {name: chart_progression(value.chart) for name, value in readings(slug).items()}
    return {name: progression for name, progression in made.items() if progression.steps}


def test_every_write_up_is_compared() -> None:
    assert set(RELATIONS) == set(ARTICLES)
    assert all(len(progressions(slug)) >= 5 for slug in ARTICLES)


@pytest.mark.parametrize("slug", RELATIONS)
def test_the_charts_of_a_write_up_have_the_relations_that_are_there(slug: str) -> None:
    found = compare_charts(readings(slug), dict.fromkeys(readings(slug), "X"))
    order = list(readings(slug))
    told = {
        (fact.path.removeprefix("like."), chart): fact.text
        for chart, facts in found.items()
        for fact in facts
        if order.index(fact.path.removeprefix("like.")) < order.index(chart)
    }
    assert told == RELATIONS[slug]


def test_no_song_shares_a_progression_with_another() -> None:
    pairs = [
        (one, other)
        for first, second in combinations(ARTICLES, 2)
        for one in progressions(first).values()
        for other in progressions(second).values()
    ]
    assert len(pairs) > 90
    # One chord alone is that of any other chart in some key, or stands in its row.
    rows = [(one, other) for one, other in pairs if min(len(one.row), len(other.row)) > 1]
    assert {compare(one, other).kind for one, other in rows} == {"unlike"}


@pytest.mark.parametrize(
    ("slug", "chart", "loop"),
    [
        ("rust-calendar", "verse-changes", "C♯5 Asus2 Esus2 Bsus2, 4 bars, three times"),
        ("rust-calendar", "chorus-changes", "A5 E5 B5 C♯5, 4 bars, three times"),
        ("one-stair-short", "verse-melody", "Em7 A9, 2 bars, twice"),
    ],
)
def test_loops_are_those_of_the_text(slug: str, chart: str, loop: str) -> None:
    facts = {fact.path: fact.text for fact in find_progression(readings(slug)[chart])}
    assert facts["loop"] == loop


def test_no_other_chart_has_a_loop() -> None:
    loops = [
        name
        for slug in ARTICLES
        for name, progression in progressions(slug).items()
        if progression.loop
    ]
    assert sorted(loops) == ["chorus-changes", "verse-changes", "verse-melody"]
