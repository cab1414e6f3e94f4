"""On a full disk a build says what to do, and what is published stays whole."""

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple

import pytest
from unit.site.refusing import own_name_space

SCRIPT = Path(__file__).with_name("full_disk.py")
ROOT = Path(__file__).parents[3]
WORDS = "---\ntitle: Low Tide\nsummary: For a test.\nstatus: published\n---\n\nFirst.\n"


class Builds(NamedTuple):
    """A build with room, one without, what stood there then, and one with room again."""

    first: tuple[int, str]
    second: tuple[int, str]
    is_same: bool
    names: list[str]
    third: tuple[int, str]
    has_changed: bool


def run(tmp_path: Path, room: int, out: str, cache: str) -> Builds:
    article = tmp_path / "content" / "breakdowns" / "low-tide" / "article.md"
    article.parent.mkdir(parents=True)
    article.write_text(WORDS, encoding="utf-8")
    (tmp_path / "content" / "site.toml").write_text('title = "Side Two"\n', encoding="utf-8")
    disk = tmp_path / "disk"
    disk.mkdir()
    given = [disk, tmp_path / "content", room, tmp_path / out, tmp_path / cache]
    done = subprocess.run(
        [*own_name_space(disk), sys.executable, str(SCRIPT), *map(str, given)],
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        check=False,
        timeout=300,
    )
    assert done.returncode == 0, done.stderr
    return Builds(*json.loads(done.stdout))


@pytest.mark.parametrize("room", [0, 40_000, 80_000])
def test_a_build_without_room(tmp_path: Path, room: int) -> None:
    builds = run(tmp_path, room, "disk/published", "cache")

    assert builds.first[0] == 0
    assert builds.second[0] == 2
    assert "no space left on device: make room on the disk and build again" in builds.second[1]
    assert "Traceback" not in builds.second[1]
    assert builds.is_same
    assert builds.names == ["fill", "published"]
    assert builds.third[0] == 0
    assert builds.has_changed


def test_a_cache_without_room_is_told(tmp_path: Path) -> None:
    builds = run(tmp_path, 0, "published", "disk/cache")

    assert [status for status, _ in (builds.first, builds.second, builds.third)] == [0, 0, 0]
    assert "nothing is kept for the next build" in builds.second[1]
    assert "no space left on device" in builds.second[1]
    assert "nothing is kept" not in builds.first[1] + builds.third[1]
    assert not builds.is_same
