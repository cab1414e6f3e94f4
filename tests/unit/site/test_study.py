"""A write-up is studied whole: every fault at once, every reference resolved."""

from collections.abc import Callable
from pathlib import Path

import pytest

from sitegen.diagnostics import Diagnostic
from sitegen.kinds.form import FORM
from sitegen.kinds.kind import ChartKind
from sitegen.site.content import ContentFile
from sitegen.site.study import Study, study_file

WriteArticle = Callable[..., Path]
Studied = Callable[..., Study]
CHART = "```claps\nid: {id}\n\n{body}\n```\n\n"


@pytest.fixture
def study(write_article: WriteArticle, claps: ChartKind) -> Studied:
    """Return what writes a write-up and studies it."""

    def write_and_study(words: str, more: str = "") -> Study:
        path = write_article("low-tide", words, more=more)
        return study_file(ContentFile("low-tide", path), (claps,))

    return write_and_study


def places(found: tuple[Diagnostic, ...]) -> list[tuple[str, int, int]]:
    return [(one.code, one.span.line, one.span.column) for one in found]


def test_charts_are_read_named_and_analysed(study: Studied) -> None:
    words = CHART.format(id="a", body="x x") + CHART.format(id="b", body="x x x")

    found = study(words)

    assert found.diagnostics == ()
    assert [chart.named.name for chart in found.charts] == ["Example 1", "Example 2"]
    analyses = [chart.analysis for chart in found.charts]
    assert [one.record["claps"] for one in analyses if one is not None] == [2, 3]


def test_a_chart_knows_headings_and_other_charts(study: Studied) -> None:
    words = "## The Beat\n\n" + CHART.format(id="a", body="x") + CHART.format(id="b", body="x")

    surroundings = study(words).charts[0].surroundings

    assert (surroundings.anchor, surroundings.name) == ("chart-a", "Example 1")
    assert surroundings.charts["b"] == ("chart-b", "Example 2")
    assert "the beat" in surroundings.headings


def test_a_form_that_names_an_unknown_chart_is_told_where(write_article: WriteArticle) -> None:
    path = write_article(
        "low-tide", "```form\nid: f\n\nVerse | 8 | changes: vesre\n```\n", more=""
    )

    found = study_file(ContentFile("low-tide", path), (FORM,))

    line = path.read_text(encoding="utf-8").splitlines().index("Verse | 8 | changes: vesre") + 1
    assert places(found.diagnostics) == [("chart-unknown", line, 22)]


def test_the_songs_key_reaches_the_charts(study: Studied) -> None:
    words = CHART.format(id="a", body="x") + "In {fact a key}.\n"

    found = study(words, more="song:\n  key: Eb minor\n")

    assert [citation.text for citation in found.citations.values()] == ["E♭ minor"]


def test_all_faults_are_told_at_once_each_at_its_place(study: Studied) -> None:
    words = (
        CHART.format(id="a", body="x ? x")  # lines 7 to 12
        + CHART.format(id="a", body="x")  # its id on line 14
        + "See {see nobody} and {fact a claps = 2}.\n\n"  # line 19
        + "![A stage](missing.png) and [there](#nowhere)\n"  # line 21
    )

    found = study(words)

    assert [(code, line) for code, line, _ in places(found.diagnostics)] == [
        ("mark-sign", 10),
        ("chart-id-double", 14),
        ("chart-unknown", 19),
        ("image-missing", 21),
        ("link-nowhere", 21),
    ]


def test_links_to_headings_and_charts_of_the_page_are_found(study: Studied) -> None:
    words = "## The Beat\n\n" + CHART.format(id="a", body="x") + "[a](#chart-a) [b](#the-beat)\n"

    assert study(words).diagnostics == ()


def test_a_fact_of_a_lost_chart_is_not_told_as_well(study: Studied) -> None:
    words = CHART.format(id="a", body="?") + "{see a} has {fact a claps} claps.\n"

    assert [code for code, *_ in places(study(words).diagnostics)] == ["mark-sign"]


@pytest.mark.parametrize("step", ["reading", "analysing"])
def test_a_failure_names_the_chart_and_the_others_go_on(study: Studied, step: str) -> None:
    words = CHART.format(id="a", body=f"break {step}") + CHART.format(id="b", body="x")

    found = study(words)

    (bug,) = found.bugs
    assert bug.doing == f"{step} the claps chart at content/breakdowns/low-tide/article.md:7"
    assert found.charts[-1].analysis is not None


def test_a_file_that_cannot_be_read_is_a_fault(content: Path, claps: ChartKind) -> None:
    found = study_file(ContentFile("gone", content / "gone.md"), (claps,))

    assert [one.code for one in found.diagnostics] == ["content-unreadable"]
    assert found.article is None


@pytest.mark.parametrize(
    "target",
    [
        "../still/",
        "../still/index.html",
        "../still/#chart-a",
        "../../about/",
        "../..",
        "../../index.html",
        "score%20page.pdf",
        "https://example.org/",
        "//example.org/",
        "/top/",
        "mailto:a@example.org",
        "#",
        "?page=2",
    ],
)
def test_a_link_to_a_page_or_a_file_is_good(
    study: Studied, write_article: WriteArticle, content: Path, target: str
) -> None:
    write_article("still", "Words.\n")
    (content / "pages").mkdir()
    (content / "pages" / "about.md").touch()
    (content / "breakdowns" / "low-tide").mkdir()
    (content / "breakdowns" / "low-tide" / "score page.pdf").touch()

    found = study(f"[there]({target})\n")

    assert found.diagnostics == ()
    assert list(found.files) == (["score page.pdf"] if "score" in target else [])


@pytest.mark.parametrize(
    "target", ["../stil/", "../../abuot/", "score.pdf", "still/", "article.md"]
)
def test_a_link_to_nothing_is_a_fault(
    study: Studied, write_article: WriteArticle, target: str
) -> None:
    write_article("still", "Words.\n")

    found = study(f"[there]({target})\n")

    assert places(found.diagnostics) == [("link-nowhere", 7, 1)]


def test_a_block_that_is_not_closed_is_one_fault_whatever_it_swallows(study: Studied) -> None:
    swallowed = CHART.format(id="b", body="x")[:-5]
    words = "See {see b}.\n\n" + CHART.format(id="a", body="x")[:-5] + "\n## Next\n\n" + swallowed

    found = study(words)

    assert [one.code for one in found.diagnostics] == ["block-open"]
