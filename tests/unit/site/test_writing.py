"""What is as it was keeps its time; nothing that is published is written into."""

import errno
import os
from pathlib import Path

import pytest

from sitegen.site.refusal import RefusedError
from sitegen.site.writing import put_bytes, put_copy, refusal


@pytest.fixture
def old(tmp_path: Path) -> Path:
    path = tmp_path / "old.html"
    path.write_bytes(b"words")
    os.utime(path, ns=(10**18, 10**18))
    return path


@pytest.mark.parametrize("links", [True, False])
def test_the_same_bytes_keep_the_time(
    old: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, links: bool
) -> None:
    if not links:
        monkeypatch.setattr(os, "link", _no_links)
    put_bytes(tmp_path / "new" / "a.html", b"words", old)

    assert (tmp_path / "new" / "a.html").read_bytes() == b"words"
    assert (tmp_path / "new" / "a.html").stat().st_mtime_ns == 10**18


def test_other_bytes_leave_the_old_file_alone(old: Path, tmp_path: Path) -> None:
    new = tmp_path / "new.html"
    put_bytes(new, b"words", old)

    put_bytes(new, b"other", old)

    assert (new.read_bytes(), old.read_bytes()) == (b"other", b"words")
    assert new.stat().st_mtime_ns != 10**18


def test_a_copied_file_keeps_its_time_as_long_as_it_is_the_same(old: Path, tmp_path: Path) -> None:
    source = tmp_path / "source"
    source.write_bytes(b"words")
    put_copy(tmp_path / "new", source, old)
    assert (tmp_path / "new").stat().st_mtime_ns == 10**18
    source.write_bytes(b"other")

    put_copy(tmp_path / "new", source, old)

    assert ((tmp_path / "new").read_bytes(), old.read_bytes()) == (b"other", b"words")


def test_what_cannot_be_written_is_refused_with_what_to_do(old: Path, tmp_path: Path) -> None:
    with pytest.raises(RefusedError, match="cannot be written"):
        put_bytes(old / "below", b"", tmp_path / "nothing")
    with pytest.raises(RefusedError, match="cannot be written: no such file"):
        put_copy(tmp_path / "new", tmp_path / "nothing", tmp_path / "nothing")


@pytest.mark.parametrize(
    ("number", "todo"),
    [(errno.ENOSPC, "make room"), (errno.EACCES, "--out"), (errno.EROFS, "--out")],
)
def test_the_refusal_says_what_to_do(number: int, todo: str) -> None:
    told = str(refusal(Path("published"), OSError(number, os.strerror(number))))

    assert told.startswith("published cannot be written: ")
    assert todo in told


def _no_links(_old: Path, _new: Path) -> None:
    raise OSError(errno.EPERM, "Operation not permitted")


def test_a_link_put_in_the_place_of_a_picture_is_not_followed(tmp_path: Path, old: Path) -> None:
    (tmp_path / "secret").write_bytes(b"secret")
    picture = tmp_path / "picture.png"
    picture.symlink_to("secret")

    with pytest.raises(RefusedError):
        put_copy(tmp_path / "new" / "picture.png", picture, old)
    assert not (tmp_path / "new" / "picture.png").exists()
