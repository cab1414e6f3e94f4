"""A theme is found by its name or by its folder."""

import os
from pathlib import Path

import pytest

from sitegen.site.refusal import RefusedError
from sitegen.site.theme_folder import check_theme, find_theme, theme_names


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


def test_a_theme_that_can_be_read_is_let_through(tmp_path: Path) -> None:
    theme = find_theme("liner", tmp_path)
    assert theme is not None

    check_theme(theme)
    check_theme(tmp_path)  # a theme may lack any room


@pytest.mark.parametrize("name", ["styles/10-text.css", "fonts/text.woff2", "pieces/deep/a.html"])
def test_a_pipe_in_a_theme_is_told(tmp_path: Path, name: str) -> None:
    (tmp_path / name).parent.mkdir(parents=True)
    os.mkfifo(tmp_path / name)

    with pytest.raises(RefusedError, match=f"{name} cannot be read: it is a pipe or a device"):
        check_theme(tmp_path)


def test_a_text_of_a_theme_that_is_none_is_told(tmp_path: Path) -> None:
    for name in ("styles/10-text.css", "fonts/text.woff2"):
        (tmp_path / name).parent.mkdir()
        (tmp_path / name).write_bytes(b"\xff\xfe")

    with pytest.raises(RefusedError, match=r"10-text\.css cannot be read: it is not UTF-8"):
        check_theme(tmp_path)
