"""A new write-up is made once, with a site around it where there is none."""

from pathlib import Path

import pytest
import yaml

from sitegen.site.refusal import RefusedError
from sitegen.site.starting import article_text, start_article, title_of


def test_the_first_write_up_brings_the_settings(tmp_path: Path) -> None:
    content = tmp_path / "content"

    files = start_article(content, "low-tide")

    assert files == (content / "site.toml", content / "breakdowns" / "low-tide" / "article.md")
    assert all(file.is_file() for file in files)


def test_settings_that_are_there_stay(tmp_path: Path) -> None:
    (tmp_path / "site.toml").write_text('title = "Mine"', encoding="utf-8")

    start_article(tmp_path, "low-tide")

    assert (tmp_path / "site.toml").read_text(encoding="utf-8") == 'title = "Mine"'


def test_a_write_up_is_never_overwritten(tmp_path: Path) -> None:
    path = start_article(tmp_path, "low-tide")[-1]
    path.write_text("my work", encoding="utf-8")

    with pytest.raises(RefusedError, match="is there already"):
        start_article(tmp_path, "low-tide")

    assert path.read_text(encoding="utf-8") == "my work"


@pytest.mark.parametrize("slug", ["../escape", "a/b", "low tide", "", ".", "-x", "a\n"])
def test_a_slug_must_be_usable_as_an_address(tmp_path: Path, slug: str) -> None:
    with pytest.raises(RefusedError, match="cannot be part of an address"):
        start_article(tmp_path, slug)

    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    (tmp_path / "content").touch()

    with pytest.raises(RefusedError, match="cannot be written"):
        start_article(tmp_path / "content", "low-tide")


@pytest.mark.parametrize(
    "title", ["Low: Tide #2", 'The "Other" Side', "{braces}", "♭II – Über", "- yes", "back\\slash"]
)
def test_any_title_survives_the_front_matter(title: str) -> None:
    front = article_text(title).split("---\n")[1]

    assert yaml.safe_load(front)["title"] == title


def test_a_slug_makes_a_title() -> None:
    assert title_of("low-tide_2") == "Low tide 2"


@pytest.mark.parametrize("slug", ["con", "NUL", "a" * 300])
def test_a_slug_must_be_a_name_on_every_system(tmp_path: Path, slug: str) -> None:
    with pytest.raises(RefusedError):
        start_article(tmp_path / "content", slug)
    assert not (tmp_path / "content").exists()


def test_nothing_is_written_through_a_link_out_of_the_content_folder(tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "content").mkdir()
    (tmp_path / "content" / "breakdowns").symlink_to("../elsewhere")

    with pytest.raises(RefusedError, match="outside"):
        start_article(tmp_path / "content", "low-tide")
    assert list((tmp_path / "elsewhere").iterdir()) == []


def test_a_title_that_is_no_text_is_written_as_far_as_it_is(tmp_path: Path) -> None:
    path = start_article(tmp_path, "low-tide", "Low\udcff Tide\x1b")[-1]

    assert 'title: "Low\ufffd Tide\ufffd"' in path.read_text(encoding="utf-8")
