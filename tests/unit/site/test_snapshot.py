"""A snapshot tells what files hold, and reads no more of them than it must."""

import hashlib
import os
from pathlib import Path

import pytest

from sitegen.site.snapshot import hashes_below, is_same, take_snapshot

LONG_AGO = 1_000_000_000 * 10**9


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "one").mkdir()
    write(tmp_path / "one" / "article.md", "words")
    write(tmp_path / "two.md", "more words")
    return tmp_path


def write(path: Path, text: str, time: int = LONG_AGO) -> None:
    path.write_text(text, encoding="utf-8")
    os.utime(path, ns=(time, time))


def test_the_same_files_are_the_same(folder: Path) -> None:
    assert is_same(take_snapshot([folder], {}), take_snapshot([folder], {}))


@pytest.mark.parametrize("changed", ["other", "longer words", ""])
def test_a_changed_file_is_noticed(folder: Path, changed: str) -> None:
    before = take_snapshot([folder], {})
    write(folder / "one" / "article.md", changed, LONG_AGO + 1)

    assert not is_same(take_snapshot([folder], before), before)


def test_new_and_lost_files_are_noticed(folder: Path) -> None:
    before = take_snapshot([folder], {})
    (folder / "one" / "new.png").touch()
    more = take_snapshot([folder], before)
    (folder / "two.md").unlink()

    assert not is_same(more, before)
    assert not is_same(take_snapshot([folder], more), more)


def test_a_file_that_was_only_touched_is_the_same(folder: Path) -> None:
    before = take_snapshot([folder], {})
    os.utime(folder / "two.md", ns=(LONG_AGO + 5, LONG_AGO + 5))

    assert is_same(take_snapshot([folder], before), before)


def test_what_is_known_by_its_time_is_not_read(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = take_snapshot([folder], {})
    monkeypatch.setattr(hashlib, "file_digest", None)

    assert take_snapshot([folder], before) == before


def test_a_young_file_is_read_again(folder: Path) -> None:
    path = folder / "two.md"
    path.write_text("first", encoding="utf-8")
    time = path.stat().st_mtime_ns
    before = take_snapshot([folder], {})
    write(path, "later", time)  # as on a file system whose clock ticks once in two seconds

    assert not is_same(take_snapshot([folder], before), before)


def test_what_is_no_file_does_no_harm(folder: Path) -> None:
    os.mkfifo(folder / "pipe")
    (folder / "lost").symlink_to(folder / "nowhere")
    (folder / "round").symlink_to(folder)

    found = take_snapshot([folder, folder / "missing"], {})

    assert found[str(folder / "pipe")].hash == ""
    assert found[str(folder / "lost")].hash == ""
    assert str(folder / "two.md") in found


def test_every_entry_of_a_folder_has_a_hash_of_its_own(folder: Path) -> None:
    before = hashes_below(folder, take_snapshot([folder], {}))
    write(folder / "one" / "article.md", "other words")
    after = hashes_below(folder, take_snapshot([folder], {}))

    assert before.keys() == after.keys() == {"one", "two.md"}
    assert before["one"] != after["one"]
    assert before["two.md"] == after["two.md"]


def test_a_renamed_file_changes_the_hash(folder: Path) -> None:
    before = hashes_below(folder, take_snapshot([folder], {}))
    (folder / "one" / "article.md").rename(folder / "one" / "other.md")

    assert hashes_below(folder, take_snapshot([folder], {}))["one"] != before["one"]


def test_links_that_run_in_circles_are_left(tmp_path: Path) -> None:
    write(tmp_path / "article.md", "words")
    for name in ("again", "once-more", "and-again"):
        (tmp_path / name).symlink_to(".")

    assert len(take_snapshot([tmp_path], {})) < 100


def test_a_linked_folder_is_looked_into(tmp_path: Path) -> None:
    (tmp_path / "store").mkdir()
    (tmp_path / "content").mkdir()
    (tmp_path / "content" / "low-tide").symlink_to("../store")
    write(tmp_path / "store" / "article.md", "words")
    before = take_snapshot([tmp_path / "content"], {})
    write(tmp_path / "store" / "article.md", "sword")

    assert not is_same(take_snapshot([tmp_path / "content"], {}), before)


def test_a_huge_file_is_told_by_size_and_time(tmp_path: Path) -> None:
    path = tmp_path / "film.mp4"
    path.touch()
    os.truncate(path, 2_000_000_000_000)
    os.utime(path, ns=(LONG_AGO, LONG_AGO))
    before = take_snapshot([tmp_path], {})
    assert is_same(take_snapshot([tmp_path], {}), before)
    os.utime(path, ns=(LONG_AGO + 1, LONG_AGO + 1))

    assert not is_same(take_snapshot([tmp_path], {}), before)
