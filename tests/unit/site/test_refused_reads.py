"""What the system does not let us read is told, stops nothing else and costs no published page."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from unit.site.refusing import bound_by_rights, closed

import sitegen

ROOT = Path(__file__).parents[3]
THEME = Path(sitegen.__file__).parent.parent / "themes" / "liner"
WORDS = "---\ntitle: {0}\nsummary: For a test.\nstatus: published\n---\n\nWords.\n"


@pytest.fixture
def site(tmp_path: Path) -> Path:
    for slug in ("ebb", "flood"):
        article = tmp_path / "content" / "breakdowns" / slug / "article.md"
        article.parent.mkdir(parents=True)
        article.write_text(WORDS.format(slug), encoding="utf-8")
    (tmp_path / "content" / "site.toml").write_text('title = "Tides"\n', encoding="utf-8")
    return tmp_path


def sitegen_run(site: Path, *words: str, prefix: tuple[str, ...] = ()) -> tuple[int, str]:
    done = subprocess.run(
        [*prefix, sys.executable, "-m", "sitegen", *words],
        cwd=site,
        env={**os.environ, "PYTHONPATH": str(ROOT), "XDG_CACHE_HOME": str(site / "cache")},
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )
    said = done.stdout + done.stderr
    assert "Traceback" not in said
    assert "fault of sitegen" not in said
    return done.returncode, said


def pages(site: Path) -> set[str]:
    return {path.parent.name for path in site.glob("published/breakdowns/*/index.html")}


@pytest.mark.parametrize(
    ("place", "mode", "status"),
    [
        ("content/breakdowns/ebb", 0o000, 1),
        ("content/breakdowns", 0o000, 1),
        ("content/breakdowns", 0o400, 1),
        ("content/site.toml", 0o000, 1),
        ("content", 0o600, 2),
    ],
)
def test_what_cannot_be_read_keeps_its_pages(
    site: Path, place: str, mode: int, status: int
) -> None:
    prefix = bound_by_rights(site)
    assert sitegen_run(site, "build", prefix=prefix)[0] == 0
    with (site / "content/breakdowns/flood/article.md").open("a", encoding="utf-8") as article:
        article.write("\nMore.\n")

    with closed(site / place, mode):
        found, said = sitegen_run(site, "build", "--no-cache", prefix=prefix)

    assert found == status
    assert "permission denied" in said
    assert pages(site) == {"ebb", "flood"}


def test_a_folder_to_publish_in_that_is_closed(site: Path) -> None:
    prefix = bound_by_rights(site)
    (site / "host").mkdir()

    with closed(site / "host"):
        found, said = sitegen_run(site, "build", "--out", "host/tides", prefix=prefix)

    assert found == 2
    assert "choose another --out" in said


def test_a_theme_that_is_closed(site: Path) -> None:
    prefix = bound_by_rights(site)
    theme = site / "mine"
    shutil.copytree(THEME, theme)

    with closed(theme / "pieces"):
        found, said = sitegen_run(site, "build", "--theme", "mine", prefix=prefix)

    assert found == 2
    assert "pieces cannot be read: permission denied" in said


@pytest.mark.parametrize("mode", [0o000, 0o500])
def test_a_cache_that_is_closed_costs_time_and_is_told(site: Path, mode: int) -> None:
    prefix = bound_by_rights(site)
    (site / "cache").mkdir()

    with closed(site / "cache", mode):
        found, said = sitegen_run(site, "build", prefix=prefix)

    assert found == 0
    assert "nothing is kept for the next build" in said
    assert pages(site) == {"ebb", "flood"}
