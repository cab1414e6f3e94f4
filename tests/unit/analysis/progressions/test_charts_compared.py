"""The charts of one article compared."""

from collections.abc import Mapping

from hypothesis import given
from hypothesis import strategies as st
from unit.charts.reading_aloud import changes, chart_of

from sitegen.analysis.progressions import compare_charts
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.score.chart import Chart

CHORDS = st.lists(st.sampled_from("C Am F G7 Dm7 E Bb5 N.C.".split()), min_size=1, max_size=8)


def compared(charts: Mapping[str, str]) -> dict[str, dict[str, Fact]]:
    """Return the facts of charts that are written as "Title: | C | F |", by id and path."""
    readings = {name: ChartReading(_chart(text), (), ()) for name, text in charts.items()}
    names = {name: f"Example {place}" for place, name in enumerate(charts, start=1)}
    found = compare_charts(readings, names)
    return {name: {fact.path: fact for fact in facts} for name, facts in found.items()}


def _chart(text: str) -> Chart:
    title, _, row = text.rpartition(":: ")
    return chart_of(changes(f"title: {title or 'Untitled'}\n{row}"))


def sentences(found: dict[str, dict[str, Fact]]) -> list[str]:
    return [fact.sentence for facts in found.values() for fact in facts.values() if fact.sentence]


def test_a_rotation_is_a_fact_of_both_charts_and_a_sentence_of_the_later_one() -> None:
    found = compared({"verse": "| C | G | Am | F |", "chorus": "| Am | F | C | G |"})
    assert found["verse"]["like.chorus"].text == (
        "the same four chords as Example 2, starting from the third chord"
    )
    assert found["chorus"]["like.verse"].value == "rotation"
    assert sentences(found) == [
        "Example 2 has the same four chords as Example 1, starting from the third chord."
    ]


def test_another_key_is_told() -> None:
    found = compared({"verse": "| C | G | Am | F |", "last": "| D | A | Bm | G |"})
    assert sentences(found) == [
        "Example 2 has the same four chords as Example 1, a whole tone higher."
    ]


def test_charts_of_one_section_share_its_chords_without_a_sentence() -> None:
    found = compared(
        {
            "melody": "Verse, the voice:: | C | G | Am |",
            "row": "Verse 1:: | C | G | Am | F |",
            "intro": "Introduction:: | C | G | Am |",
        }
    )
    assert found["row"]["like.melody"].text == "the chords of Example 1 in bars 1 to 3"
    assert sentences(found) == ["Example 3 has the same three chords as Example 1."]


def test_a_chart_has_one_sentence_for_what_is_hardest_to_see() -> None:
    found = compared(
        {
            "intro": "Introduction:: | Am | F | C | G |",
            "verse": "Verse:: | C | G | Am | F |",
            "chorus": "Chorus:: | Am | F | C | G |",
        }
    )
    assert set(found["chorus"]) == {"like.intro", "like.verse"}
    assert [fact.value for fact in found["chorus"].values() if fact.sentence] == ["rotation"]


def test_one_other_chord_is_told_with_its_bar() -> None:
    found = compared(
        {"verse": "| C | Am | F | Em | Dm | G |", "second": "| C | Am | F | Em | F | G |"}
    )
    assert sentences(found) == [
        "Example 2 has the same chords as Example 1, with F for Dm in bar 5."
    ]


def test_what_is_not_worth_telling_is_left_out() -> None:
    assert compared({"one": "| C | C |", "two": "| C | % |"}) == {"one": {}, "two": {}}
    assert compared({"one": "| C | F |", "two": "| Bb | Gm |"}) == {"one": {}, "two": {}}
    # Two chords in another key are the same in half of all songs.
    assert compared({"one": "| C | F |", "two": "| Bb | Eb |"}) == {"one": {}, "two": {}}


@given(st.lists(CHORDS, min_size=1, max_size=4))
def test_any_charts_can_be_compared(rows: list[list[str]]) -> None:
    charts = {f"chart-{n}": f"| {' | '.join(row)} |" for n, row in enumerate(rows)}
    for chart, facts in compared(charts).items():
        assert all(path == f"like.{path[5:]}" and path[5:] in charts for path in facts)
        assert f"like.{chart}" not in facts
        assert sum(bool(fact.sentence) for fact in facts.values()) <= 1
