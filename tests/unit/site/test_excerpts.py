"""Bars of a score file in a write-up: built, built again, told, previewed, not led astray."""

import json
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from sitegen.charts.beside import BesideError
from sitegen.charts.defaults import SongDefaults
from sitegen.kinds.excerpt import EXCERPT, LANTERN
from sitegen.preview.memory import Remembered
from sitegen.scores import read_score
from sitegen.site.beside import FolderBeside
from sitegen.site.build import Report, build_site
from sitegen.site.explanation import explain_article
from sitegen.site.order import Order
from sitegen.site.standing import find_standing
from sitegen.source import Passage

WriteArticle = Callable[..., Path]
WORDS = (
    "Listen.\n\n```excerpt\nid: lantern\ntitle: The refrain\nfile: lantern.abc\nbars: 1-2\n```\n"
)


@pytest.fixture
def article(write_article: WriteArticle) -> Path:
    path = write_article("one", WORDS)
    (path.parent / "lantern.abc").write_text(LANTERN, encoding="utf-8")
    return path


@pytest.fixture
def order(content: Path, tmp_path: Path) -> Order:
    cache = tmp_path / "cache"
    return Order(content, Path("published"), (EXCERPT,), drafts=True, cache=cache)


def build(order: Order) -> Report:
    return build_site(order, lambda _doing, _done, _total: None)


def files(folder: Path | str = "published") -> dict[str, bytes]:
    found = (path for path in Path(folder).rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in found}


@pytest.mark.usefixtures("article")
def test_the_bars_are_published_and_the_file_is_not(order: Order) -> None:
    assert build(order).diagnostics == ()
    made = files()
    page = made["breakdowns/one/index.html"].decode()
    assert 'id="chart-lantern"' in page
    assert "<svg" in page
    assert any(name.endswith(".musicxml") for name in made)
    assert any(name.endswith(".mid") for name in made)
    assert not [name for name in made if name.endswith(".abc")]
    assert not [name for name, data in made.items() if LANTERN.encode() in data]


def test_another_score_is_another_page_and_what_a_first_build_makes(
    article: Path, order: Order
) -> None:
    build(order)
    before = files()
    score = article.parent / "lantern.abc"
    # As many bytes as before, so that only what they are tells.
    score.write_text(LANTERN.replace('"Gm"g4 f2', '"Gm"f4 g2'), encoding="utf-8")

    assert find_standing(order) is None
    build(order)

    made = files()
    assert made["breakdowns/one/index.html"] != before["breakdowns/one/index.html"]
    shutil.rmtree("published")
    build(replace(order, cache=None))
    assert files() == made


def test_a_score_that_is_gone_is_told_at_its_line(article: Path, order: Order) -> None:
    build(order)
    (article.parent / "lantern.abc").unlink()
    (found,) = build(order).diagnostics
    assert (found.code, found.span.line) == ("excerpt-file", 12)


def test_what_is_found_is_told_as_of_any_chart(article: Path) -> None:
    explanation = explain_article(article, (EXCERPT,))
    (chart,) = json.loads(explanation.as_json())["charts"]
    assert (chart["id"], chart["kind"], chart["key"]) == ("lantern", "excerpt", "D minor")
    assert [note["bar"] for note in chart["notes"]] == [1, 1, 1, 2, 2]


def test_the_preview_reads_a_score_again_when_it_changes(article: Path) -> None:
    kind = Remembered(EXCERPT).kind
    passage = Passage.of("file: lantern.abc\nbars: 1\n")
    defaults = SongDefaults(beside=FolderBeside(article.parent))
    first = kind.read(passage, defaults)
    score = article.parent / "lantern.abc"
    score.write_text(LANTERN.replace('"Dm"d3', '"Dm"a3'), encoding="utf-8")
    second = kind.read(passage, defaults)
    pitches = [one.chart.parts[0].events[0].notes[0].pitch for one in (first, second) if one.chart]
    assert [str(pitch) for pitch in pitches] == ["D5", "A5"]


def _outside(folder: Path) -> str:
    (folder.parent / "other.abc").write_text(LANTERN, encoding="utf-8")
    return "../other.abc"


def _absolute(folder: Path) -> str:
    return str(folder / "lantern.abc")


def _link_out(folder: Path) -> str:
    _outside(folder)
    (folder / "link.abc").symlink_to(folder.parent / "other.abc")
    return "link.abc"


def _folder_out(folder: Path) -> str:
    _outside(folder)
    (folder / "up").symlink_to(folder.parent)
    return "up/other.abc"


def _pipe(folder: Path) -> str:
    os.mkfifo(folder / "pipe.abc")
    return "pipe.abc"


def _device(folder: Path) -> str:
    (folder / "device.abc").symlink_to("/dev/zero")
    return "device.abc"


def _a_folder(folder: Path) -> str:
    (folder / "folder.abc").mkdir()
    return "folder.abc"


def _nul(_folder: Path) -> str:
    return "a\0.abc"


ASTRAY = [_outside, _absolute, _link_out, _folder_out, _pipe, _device, _a_folder, _nul]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes in folders")
@pytest.mark.parametrize("lead", ASTRAY)
def test_no_name_leads_out_of_the_folder_or_to_what_is_no_file(
    article: Path, lead: Callable[[Path], str]
) -> None:
    beside = FolderBeside(article.parent)
    with pytest.raises(BesideError):
        beside.read(lead(article.parent), 4_000_000)
    assert beside.read("lantern.abc", 4_000_000) == LANTERN.encode()


def test_a_program_among_the_write_ups_is_not_run(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # A process started by a module's name looks for it in the current folder first.
    trap = 'open("sprung", "w").close()\nraise ImportError\n'
    for name in ("msgspec.py", "music21.py", "sitegen.py"):
        (tmp_path / name).write_text(trap, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    assert read_score(LANTERN.replace("Lantern", "Trapped").encode(), ".abc").bars
    assert not (tmp_path / "sprung").exists()


def test_nothing_imports_the_reader_of_scores_before_a_score_is_read() -> None:
    code = "import sys, sitegen.kinds, sitegen.site.study; print('music21' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"
