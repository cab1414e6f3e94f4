"""No file beside the text may have the name of what is taken away of a chart."""

import pytest

from sitegen.article import read_article
from sitegen.site.taken_names import find_taken_names
from sitegen.source import Source

HEAD = "---\ntitle: Low Tide\nsummary: Made for a test.\nstatus: draft\n---\n\n"
ANCHORS = ["chart-verse"]


def codes(words: str, *files: str) -> list[str]:
    article, _ = read_article(Source("article.md", HEAD + words), ["changes"])
    return [found.code for found in find_taken_names(article, files, ANCHORS)]


@pytest.mark.parametrize(
    ("words", "file"),
    [
        ("![The stage](chart-verse.svg)", "chart-verse.svg"),
        ("[The tune](chart-verse.mid)", "chart-verse.mid"),
        ("[The tune](Chart-Verse.MusicXML)", "Chart-Verse.MusicXML"),
    ],
)
def test_a_name_that_a_chart_needs_is_a_fault(words: str, file: str) -> None:
    assert codes(words, file) == ["file-name-taken"]


@pytest.mark.parametrize("file", ["stage.svg", "chart-verse.png", "pictures/chart-verse.svg"])
def test_any_other_name_is_free(file: str) -> None:
    assert codes(f"![The stage]({file})", file) == []


@pytest.mark.parametrize("other", ["Stage.svg", "stag\u0065\u0301.svg"])
def test_two_names_that_are_one_to_some_systems_are_a_fault(other: str) -> None:
    first = "stag\u00e9.svg" if "\u0301" in other else "stage.svg"

    assert codes(f"![One]({first}) ![Two]({other}) ![One]({first})", first, other) == [
        "file-name-double"
    ]
