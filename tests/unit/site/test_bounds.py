"""A page holds so much and no more, and is told where it becomes too much."""

import os
from pathlib import Path

import pytest

from sitegen.article import read_article
from sitegen.site import bounds
from sitegen.site.bounds import find_excess
from sitegen.source import Source

CHART = "```changes\n| C |\n```\n\n"
FRONT = "---\ntitle: Low Tide\n---\n\n"


def excess(charts: int = 1, **files: Path) -> list[tuple[str, int]]:
    article, _ = read_article(Source("a.md", FRONT + CHART * charts), ("changes",))
    return [(found.code, found.span.line) for found in find_excess(article, files)]


def test_a_page_has_a_largest_number_of_charts(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(bounds, "MOST_CHARTS", 3)

    assert excess(3) == []
    assert excess(4) == [("page-large", 5 + 3 * 4)]


def test_a_page_has_a_largest_number_of_files(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(bounds, "MOST_FILES", 2)

    assert excess(a=tmp_path, b=tmp_path) == []
    assert excess(a=tmp_path, b=tmp_path, c=tmp_path) == [("page-large", 1)]


def test_the_files_of_a_page_have_a_largest_size(tmp_path: Path) -> None:
    path = tmp_path / "film.mp4"
    path.touch()
    os.truncate(path, bounds.MOST_BYTES // 2)

    assert excess(a=path, b=path) == []
    assert excess(a=path, b=path, c=path) == [("page-large", 1)]
    assert excess(a=tmp_path / "gone") == []
