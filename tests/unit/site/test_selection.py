"""A path on the command line stands for a content folder, for a part of one, or for one file."""

from collections.abc import Callable
from pathlib import Path

import pytest

from sitegen.site.refusal import RefusedError
from sitegen.site.selection import select, select_article

WriteArticle = Callable[..., Path]


@pytest.fixture
def filled(content: Path, write_article: WriteArticle) -> Path:
    write_article("low-tide", "One.\n")
    write_article("still", "Two.\n")
    (content / "pages").mkdir()
    (content / "pages" / "about.md").write_text("---\ntitle: About\n---\n", encoding="utf-8")
    (content / "breakdowns" / "low tide").mkdir()
    (content / "breakdowns" / "low tide" / "article.md").touch()
    return content


@pytest.mark.parametrize(
    ("path", "slugs", "settings", "faults"),
    [
        ("content", ["low-tide", "still", "about"], 1, 1),
        ("content/breakdowns/..", ["low-tide", "still", "about"], 1, 1),
        ("content/site.toml", [], 1, 0),
        ("content/breakdowns", ["low-tide", "still"], 0, 1),
        ("content/breakdowns/still", ["still"], 0, 0),
        ("content/breakdowns/still/article.md", ["still"], 0, 0),
        ("content/breakdowns/low tide/article.md", ["low tide"], 0, 1),
        ("content/breakdowns/loose.md", ["breakdowns"], 0, 1),
        ("content/breakdowns/still/notes.md", ["still"], 0, 0),
        ("content/draft.md", ["content"], 0, 0),
        ("content/pages/about.md", ["about"], 0, 0),
    ],
)
def test_what_a_path_stands_for(
    filled: Path, path: str, slugs: list[str], settings: int, faults: int
) -> None:
    for name in ("breakdowns/loose.md", "breakdowns/still/notes.md", "draft.md"):
        if path.endswith(name):
            (filled / name).touch()
    found = select([filled.parent / path])

    assert [file.slug for file in (*found.articles, *found.pages)] == slugs
    assert (len(found.contents), len(found.diagnostics)) == (settings, faults)


def test_several_paths_are_looked_at_once_each(filled: Path) -> None:
    folder = filled / "breakdowns" / "still"

    assert len(select([folder, folder / "article.md", filled]).articles) == 2


def test_a_page_is_known_as_one(filled: Path) -> None:
    (page,) = select([filled / "pages"]).pages

    assert page.is_page
    assert page.address == "about/"


def test_a_file_without_a_content_folder_is_a_write_up(tmp_path: Path) -> None:
    path = tmp_path / "loose" / "song.md"
    path.parent.mkdir()
    path.touch()

    assert [file.path for file in select([path]).articles] == [path]
    assert select_article(path).path == path


def test_one_file_to_explain_is_a_write_up_or_a_page(filled: Path) -> None:
    assert not select_article(filled / "breakdowns" / "still").is_page
    assert select_article(filled / "pages" / "about.md").is_page


@pytest.mark.parametrize("path", ["content/notes.txt", "loose", "loose/notes.txt"])
def test_what_stands_for_nothing_is_refused(filled: Path, path: str) -> None:
    (filled.parent / "loose").mkdir()
    for name in ("content/notes.txt", "loose/notes.txt"):
        (filled.parent / name).touch()

    with pytest.raises(RefusedError):
        select([filled.parent / path])
