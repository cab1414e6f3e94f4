"""What people type: exit status, output for people and programs, and never a traceback."""

import json
import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path
from typing import NoReturn

import pytest

import sitegen.kinds
from sitegen import __version__, cli
from sitegen.cli import main
from sitegen.diagnostics import CATALOGUE, explain_code

CHECKOUT = Path(__file__).parents[2]
FAULTY = "---\ntitle: Low Tide\nsummary: One.\nstatus: draft\n---\n\nAs {see nothing} shows.\n"


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.fixture
def article(here: Path) -> Path:
    assert main(["start", "low-tide"]) == 0
    return here / "content" / "breakdowns" / "low-tide" / "article.md"


def test_tells_its_version(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--version"]) == 0
    assert __version__ in capsys.readouterr().out


@pytest.mark.parametrize("flag", ["-h", "--help"])
def test_tells_its_commands(flag: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main([flag]) == 0
    printed = capsys.readouterr().out
    assert all(name in printed for name in ("build", "check", "explain", "start"))


@pytest.mark.parametrize(
    "arguments",
    [
        ["bild"],
        ["build", "--nope"],
        ["build", "missing"],
        ["build"],
        ["build", "."],
        ["check"],
        ["check", "missing.md"],
        ["check", "--format", "xml"],
        ["explain"],
        ["explain", "missing.md"],
        ["explain", "."],
        ["explain", "notes.txt"],
        ["start"],
        ["start", "low tide"],
        ["build", "--jobs", "0"],
    ],
    ids=" ".join,
)
def test_wrong_usage_is_told_and_ends_with_2(
    here: Path, arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    (here / "notes.txt").touch()

    assert main(arguments) == 2

    printed = capsys.readouterr()
    assert "Error: " in printed.err
    assert "Traceback" not in printed.err


def test_a_new_write_up_has_no_fault_and_builds(
    article: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", "--strict"]) == 0
    assert main(["check", "--strict", "--format", "json", str(article)]) == 0
    assert json.loads(capsys.readouterr().out.splitlines()[-1]) == []
    assert main(["build", "--drafts", "--strict"]) == 0
    printed = capsys.readouterr()
    assert printed.err == ""
    assert "2 pages, 3 charts in published: no faults" in printed.out


def test_a_write_up_is_not_started_twice(
    article: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = article.read_bytes()

    assert main(["start", "low-tide"]) == 2
    assert "is there already" in capsys.readouterr().err
    assert article.read_bytes() == before


def test_a_fault_ends_with_1_and_is_shown_at_its_place(
    article: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    article.write_text(FAULTY, encoding="utf-8")

    assert main(["check"]) == 1
    assert main(["build", "--drafts"]) == 1

    printed = capsys.readouterr()
    place = "content/breakdowns/low-tide/article.md:7:9: error[chart-unknown]"
    assert place in printed.out
    assert place in printed.err
    assert "1 error" in printed.out


def test_json_holds_the_public_form_of_a_fault(
    article: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    article.write_text(FAULTY, encoding="utf-8")
    capsys.readouterr()

    assert main(["check", "--format", "json"]) == 1

    (record,) = json.loads(capsys.readouterr().out)
    assert (record["code"], record["severity"]) == ("chart-unknown", "error")
    assert (record["file"], record["line"]) == ("content/breakdowns/low-tide/article.md", 7)


def test_strict_makes_a_warning_end_with_1(article: Path) -> None:
    (article.parent.parent / "stray.md").touch()

    assert main(["check"]) == 0
    assert main(["check", "--strict"]) == 1


def test_explain_prints_tables_or_json(article: Path, capsys: pytest.CaptureFixture[str]) -> None:
    capsys.readouterr()

    assert main(["explain", str(article), "--json"]) == 0
    record = json.loads(capsys.readouterr().out)
    assert record["version"] == 1
    assert [chart["id"] for chart in record["charts"]] == ["verse", "opening", "plan"]
    assert record["diagnostics"] == []

    assert main(["explain", str(article.parent)]) == 0
    printed = capsys.readouterr().out
    assert 'Example 1: Verse (changes "verse")' in printed
    assert "voice.highest" in printed


def test_an_output_folder_of_somebody_else_is_refused(
    article: Path, here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert article.is_file()
    (here / "published").mkdir()
    (here / "published" / "thesis.txt").touch()

    assert main(["build", "--drafts"]) == 2
    assert "was not made by sitegen" in capsys.readouterr().err
    assert [path.name for path in (here / "published").iterdir()] == ["thesis.txt"]


def test_a_bug_is_told_plainly_and_ends_with_3(
    article: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    broken = [replace(kind, read=_fail) for kind in sitegen.kinds.KINDS[:1]]
    monkeypatch.setattr(sitegen.kinds, "KINDS", (*broken, *sitegen.kinds.KINDS[1:]))

    assert main(["check"]) == 3

    told = capsys.readouterr().err
    assert "notation chart at content/breakdowns/low-tide/article.md:" in told
    assert "report" in told
    assert "Traceback" not in told
    monkeypatch.setenv("SITEGEN_TRACE", "1")
    assert main(["explain", str(article)]) == 3
    assert "Traceback" in capsys.readouterr().err


def test_a_bug_of_the_command_itself_is_told_too(
    here: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert here.is_dir()
    monkeypatch.setattr(cli, "_content", _fail)

    assert main(["check"]) == 3
    assert "running: sitegen check" in capsys.readouterr().err


def test_a_reader_who_leaves_early_is_no_bug(article: Path) -> None:
    article.write_text(FAULTY * 2000, encoding="utf-8")
    command = f'"{sys.executable}" -m sitegen check | head -1; echo "${{PIPESTATUS[0]}}"'
    environment = {**os.environ, "PYTHONPATH": str(CHECKOUT)}

    done = subprocess.run(
        ["/bin/bash", "-c", command], capture_output=True, text=True, check=True, env=environment
    )

    assert done.stderr == ""
    assert done.stdout.splitlines()[-1] in {"0", "1"}


def test_no_progress_is_drawn_where_nobody_watches(
    article: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert article.is_file()
    monkeypatch.setattr(cli, "LONG", 0)

    assert main(["build", "--drafts"]) == 0
    assert capsys.readouterr().err == ""


def test_long_work_shows_its_progress_on_a_terminal(
    article: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert article.is_file()
    monkeypatch.setattr(cli, "LONG", 0)
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True)
    monkeypatch.setenv("FORCE_COLOR", "1")
    monkeypatch.setenv("TERM", "xterm")

    assert main(["build", "--drafts"]) == 0
    assert "drawing" in capsys.readouterr().err


def _fail(*_: object) -> NoReturn:
    raise ZeroDivisionError


def test_a_code_is_told_with_its_examples(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", "--about", "off-count"]) == 0
    told = capsys.readouterr().out
    assert told.startswith("error[off-count] Something starts between two columns")
    assert "with the fault:" in told
    assert "without it:" in told


def test_an_unknown_code_is_wrong_usage(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", "--about", "of-count"]) == 2
    assert 'did you mean "off-count"?' in capsys.readouterr().err


@pytest.mark.parametrize("name", CATALOGUE)
def test_every_code_can_be_told(name: str) -> None:
    explain_code(CATALOGUE[name]).encode("utf-8")


@pytest.mark.skipif(
    not Path("/dev/full").exists(), reason="there is no device that is always full"
)
def test_where_nothing_can_be_printed_the_user_is_told(article: Path) -> None:
    with Path("/dev/full").open("w", encoding="utf-8") as full:
        done = subprocess.run(
            [sys.executable, "-m", "sitegen", "check", str(article)],
            env={**os.environ, "PYTHONPATH": str(CHECKOUT)},
            stdout=full,
            stderr=subprocess.PIPE,
            text=True,
            check=False,
        )

    assert done.returncode == 2
    assert "no room on the disk" in done.stderr
