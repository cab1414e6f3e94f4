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
