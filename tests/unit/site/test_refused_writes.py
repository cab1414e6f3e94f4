"""Where the system refuses to write, the message says what to do and the old site stands."""

import os
import resource
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[3]
WORDS = "---\ntitle: Low Tide\nsummary: For a test.\nstatus: published\n---\n\n"


@pytest.fixture
def content(tmp_path: Path) -> Path:
    folder = tmp_path / "content"
    article = folder / "breakdowns" / "low-tide" / "article.md"
    article.parent.mkdir(parents=True)
    article.write_text(f"{WORDS}First.\n", encoding="utf-8")
    (folder / "site.toml").write_text('title = "Side Two"\n', encoding="utf-8")
    return folder


def build(
    content: Path, limits: Callable[[], None] | None = None, jobs: int = 1
) -> "subprocess.CompletedProcess[str]":
    command = [sys.executable, "-m", "sitegen", "build", str(content), "--jobs", str(jobs)]
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    return subprocess.run(
        command,
        cwd=content.parent,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
        preexec_fn=limits,
        timeout=120,
    )


def _small_files_only() -> None:
    resource.setrlimit(resource.RLIMIT_FSIZE, (1500, 1500))


def published(content: Path) -> dict[str, bytes]:
    top = content.parent / "published"
    found = (path for path in top.rglob("*") if path.is_file())
    return {path.relative_to(top).as_posix(): path.read_bytes() for path in found}


def edit(content: Path) -> None:
    path = content / "breakdowns" / "low-tide" / "article.md"
    path.write_text(f"{WORDS}Second.\n", encoding="utf-8")


@pytest.mark.parametrize("jobs", [1, 2])
def test_a_file_that_cannot_be_written_whole(content: Path, jobs: int) -> None:
    assert build(content).returncode == 0
    before = published(content)
    edit(content)

    done = build(content, _small_files_only, jobs)

    assert done.returncode == 2
    assert "cannot be written" in done.stderr
    assert "the system allows no file so large" in done.stderr
    assert "Traceback" not in done.stderr
    assert published(content) == before
    assert sorted(path.name for path in content.parent.iterdir()) == ["content", "published"]
    assert build(content).returncode == 0
    assert published(content) != before


def test_a_place_that_is_no_folder(content: Path) -> None:
    (content.parent / "published").write_text("a letter", encoding="utf-8")

    done = build(content)

    assert done.returncode == 2
    assert "is not a folder" in done.stderr
    assert (content.parent / "published").read_text(encoding="utf-8") == "a letter"
