"""A theme is found by its name or by its folder."""

from pathlib import Path

import pytest

from sitegen.site.theme_folder import find_theme, theme_names


def test_the_theme_that_comes_with_sitegen_is_found_by_name(tmp_path: Path) -> None:
    theme = find_theme("liner", tmp_path)

    assert theme is not None
    assert (theme / "pages" / "article.html").is_file()
    assert "liner" in theme_names()


def test_a_folder_is_found_from_where_it_is_named(tmp_path: Path) -> None:
    (tmp_path / "mine" / "pages").mkdir(parents=True)
    (tmp_path / "mine" / "pages" / "article.html").touch()

    assert find_theme("mine", tmp_path) == tmp_path / "mine"
    assert find_theme(str(tmp_path / "mine"), Path("/")) == tmp_path / "mine"


@pytest.mark.parametrize("name", ["lyner", "", ".", "..", "missing/liner"])
def test_what_is_no_theme_is_not_found(tmp_path: Path, name: str) -> None:
    (tmp_path / "pages").mkdir()

    assert find_theme(name, tmp_path) is None
