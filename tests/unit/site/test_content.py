"""The content folder is read by its names; what cannot be published is told."""

import unicodedata
from pathlib import Path

import pytest

from sitegen.site.content import scan_content, shown
from sitegen.site.content_folder import default_content, find_content


def make_article(content: Path, slug: str) -> Path:
    path = content / "breakdowns" / slug / "article.md"
    path.parent.mkdir(parents=True)
    path.write_text("---\n---\n", encoding="utf-8")
    return path


def codes(content: Path) -> list[str]:
    return [diagnostic.code for diagnostic in scan_content(content).diagnostics]


def test_finds_write_ups_and_pages_by_slug(tmp_path: Path) -> None:
    for slug in ("still", "low-tide", "2-steps"):
        make_article(tmp_path, slug)
    (tmp_path / "pages").mkdir()
    (tmp_path / "pages" / "about.md").touch()
    (tmp_path / "pages" / "portrait.jpg").touch()

    content = scan_content(tmp_path)

    assert [file.slug for file in content.articles] == ["2-steps", "low-tide", "still"]
    assert [file.slug for file in content.pages] == ["about"]
    assert content.diagnostics == ()


def test_an_empty_folder_is_no_fault(tmp_path: Path) -> None:
    content = scan_content(tmp_path)

    assert (content.articles, content.pages, content.diagnostics) == ((), (), ())


@pytest.mark.parametrize("slug", ["low tide", "low--tide", "-low", "low.tide", "a?b", "tide-"])
def test_a_name_that_cannot_be_an_address_is_a_fault(tmp_path: Path, slug: str) -> None:
    make_article(tmp_path, slug)

    assert codes(tmp_path) == ["address-unusable"]
    assert scan_content(tmp_path).articles == ()


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("Low-Tide", "low-tide"),
        (unicodedata.normalize("NFD", "für"), "für"),
        ("straße", "strasse"),
    ],
)
def test_addresses_must_differ_in_more_than_form(tmp_path: Path, first: str, second: str) -> None:
    make_article(tmp_path, first)
    make_article(tmp_path, second)

    assert codes(tmp_path) == ["address-double"]
    assert len(scan_content(tmp_path).articles) == 1


def test_a_page_must_not_take_an_address_of_the_site(tmp_path: Path) -> None:
    (tmp_path / "pages").mkdir()
    (tmp_path / "pages" / "Styles.md").touch()

    assert codes(tmp_path) == ["address-reserved"]
    assert scan_content(tmp_path).pages == ()


def test_what_is_no_write_up_is_told_and_what_is_hidden_is_not(tmp_path: Path) -> None:
    folder = tmp_path / "breakdowns"
    (folder / "empty").mkdir(parents=True)
    (folder / "low-tide.md").touch()
    (folder / ".trash").mkdir()

    assert codes(tmp_path) == ["content-stray", "content-stray"]


def test_a_link_out_of_the_folder_is_refused(tmp_path: Path) -> None:
    outside = make_article(tmp_path / "elsewhere", "secret")
    content = tmp_path / "content"
    make_article(content, "low-tide")
    (content / "breakdowns" / "secret").symlink_to(outside.parent)

    assert codes(content) == ["content-link"]
    assert [file.slug for file in scan_content(content).articles] == ["low-tide"]


def test_a_link_inside_the_folder_is_followed(tmp_path: Path) -> None:
    path = make_article(tmp_path, "low-tide")
    (tmp_path / "pages").mkdir()
    (tmp_path / "pages" / "copy.md").symlink_to(path)

    assert codes(tmp_path) == []


def test_finds_the_nearest_settings_above(tmp_path: Path) -> None:
    (tmp_path / "site.toml").touch()
    path = make_article(tmp_path, "low-tide")

    assert find_content(path) == tmp_path
    assert find_content(tmp_path.parent) is None


def test_the_default_is_the_folder_named_content_then_the_current_one(tmp_path: Path) -> None:
    assert default_content(tmp_path) is None
    (tmp_path / "site.toml").touch()
    assert default_content(tmp_path) == tmp_path
    (tmp_path / "content").mkdir()
    (tmp_path / "content" / "site.toml").touch()
    assert default_content(tmp_path) == tmp_path / "content"


def test_names_are_shown_from_where_people_work(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)

    assert shown(tmp_path / "content" / "site.toml") == "content/site.toml"
    assert shown(tmp_path.parent / "other") == (tmp_path.parent / "other").as_posix()


def test_links_that_lead_nowhere_are_told(tmp_path: Path) -> None:
    (tmp_path / "breakdowns").mkdir()
    (tmp_path / "pages").mkdir()
    (tmp_path / "breakdowns" / "circle").symlink_to("circle")
    (tmp_path / "breakdowns" / "lost").symlink_to("nowhere")
    (tmp_path / "pages" / "circle.md").symlink_to("circle.md")

    assert codes(tmp_path) == ["content-stray", "content-stray"]
    with pytest.raises(OSError, match="symbolic links"):
        scan_content(tmp_path).pages[0].read()


def test_a_folder_that_is_none_is_not_known(tmp_path: Path) -> None:
    (tmp_path / "breakdowns").touch()

    assert codes(tmp_path) == ["content-unreadable"]
    assert not scan_content(tmp_path).is_known
