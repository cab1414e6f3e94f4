"""Files are read with care: no pipe is waited for, no device drained, no link followed away."""

import os
from pathlib import Path

import pytest

from sitegen.kinds.kind import ChartKind
from sitegen.site.content import scan_content
from sitegen.site.file_reading import (
    LARGEST_TEXT,
    UnfitFileError,
    find_unfit,
    holds_file,
    open_file,
    read_own,
    read_text_file,
)
from sitegen.site.inspection import inspect
from sitegen.site.refusal import RefusedError
from sitegen.site.selection import select_article


def test_a_file_is_read_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "article.md"
    path.write_bytes(b"words\r\n")

    assert read_text_file(path, tmp_path) == b"words\r\n"
    assert find_unfit(path) == ""


@pytest.mark.parametrize(("size", "fits"), [(LARGEST_TEXT, True), (LARGEST_TEXT + 1, False)])
def test_a_file_has_a_largest_size(tmp_path: Path, size: int, *, fits: bool) -> None:
    path = tmp_path / "article.md"
    path.touch()
    os.truncate(path, size)

    assert (find_unfit(path) == "") is fits
    if fits:
        assert len(read_text_file(path)) == size
    else:
        with pytest.raises(UnfitFileError, match="more than 500 kB"):
            read_text_file(path)


def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    path = tmp_path / "article.md"
    os.mkfifo(path)

    assert "pipe" in find_unfit(path)
    with pytest.raises(UnfitFileError, match="pipe"):
        read_text_file(path)
    with pytest.raises(RefusedError, match="pipe"):
        select_article(path)


def test_a_device_is_not_drained(tmp_path: Path) -> None:
    path = tmp_path / "article.md"
    path.symlink_to("/dev/zero")

    assert "device" in find_unfit(path)
    with pytest.raises(UnfitFileError, match="device"):
        read_text_file(path)


def test_a_link_out_of_the_folder_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "secret").touch()
    (tmp_path / "content").mkdir()
    path = tmp_path / "content" / "article.md"
    path.symlink_to("../secret")

    with pytest.raises(UnfitFileError, match="outside"):
        read_text_file(path, tmp_path / "content")


@pytest.mark.parametrize("what", ["file", "folder"])
def test_a_link_that_is_put_in_the_way_later_is_not_followed(tmp_path: Path, what: str) -> None:
    folder = tmp_path / "content"
    folder.mkdir()
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "elsewhere" / "a.png").write_bytes(b"secret")
    checked = folder / "a.png"
    if what == "file":
        checked.symlink_to(tmp_path / "elsewhere" / "a.png")
    else:
        folder.rmdir()
        folder.symlink_to(tmp_path / "elsewhere")

    with pytest.raises(OSError):  # noqa: PT011 - the system's own or ours, as the case may be
        open_file(checked)


def test_a_write_up_that_is_a_pipe_or_too_large_is_a_fault(
    content: Path, claps: ChartKind
) -> None:
    folder = content / "breakdowns"
    for name in ("pipe", "large"):
        (folder / name).mkdir(parents=True)
    os.mkfifo(folder / "pipe" / "article.md")
    (folder / "large" / "article.md").touch()
    os.truncate(folder / "large" / "article.md", 20_000_000_000)

    found = inspect([content], (claps,))

    assert [one.code for one in found.diagnostics] == ["content-unreadable"] * 2


@pytest.mark.parametrize("make", ["link", "large", "pipe", "folder", "lost"])
def test_settings_that_are_no_file_of_ours_are_a_fault(
    content: Path, claps: ChartKind, make: str
) -> None:
    settings = content / "site.toml"
    settings.unlink()
    if make == "link":
        (content.parent / "secret.toml").write_text("password = 1\n", encoding="utf-8")
        settings.symlink_to("../secret.toml")
    elif make == "lost":
        settings.symlink_to("nowhere.toml")
    elif make == "pipe":
        os.mkfifo(settings)
    elif make == "folder":
        settings.mkdir()
    else:
        settings.touch()
        os.truncate(settings, 20_000_000_000)

    (found,) = inspect([content], (claps,)).diagnostics

    assert found.code == "content-unreadable"
    assert "password" not in found.source.text


def test_a_write_up_exchanged_for_a_link_after_the_scan_is_not_read(tmp_path: Path) -> None:
    path = tmp_path / "content" / "breakdowns" / "low-tide" / "article.md"
    path.parent.mkdir(parents=True)
    path.write_text("words", encoding="utf-8")
    (file,) = scan_content(tmp_path / "content").articles
    assert file.read() == b"words"

    (tmp_path / "secret").touch()
    path.unlink()
    path.symlink_to(tmp_path / "secret")

    with pytest.raises(UnfitFileError, match="outside"):
        file.read()


def test_a_file_of_our_own_folders_may_be_reached_by_a_link(tmp_path: Path) -> None:
    (tmp_path / "there").mkdir()
    (tmp_path / "there" / "entry").write_bytes(b"kept")
    (tmp_path / "here").symlink_to("there")

    assert read_own(tmp_path / "here" / "entry") == b"kept"
    assert holds_file(tmp_path / "here" / "entry")


def test_no_pipe_of_our_own_folders_is_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "entry")

    with pytest.raises(UnfitFileError, match="pipe"):
        read_own(tmp_path / "entry")
    with pytest.raises(IsADirectoryError):
        read_own(tmp_path)
    assert not holds_file(tmp_path / "entry")


def test_a_link_to_itself_is_a_fault(tmp_path: Path) -> None:
    (tmp_path / "article.md").symlink_to("article.md")

    with pytest.raises(OSError, match="symbolic links"):
        read_text_file(tmp_path / "article.md", tmp_path)
