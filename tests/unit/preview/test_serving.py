"""The command from its start to its end, as a process of its own."""

import errno
import os
import signal
from contextlib import closing
from pathlib import Path

import pytest
from unit.preview.conftest import PATIENCE, Write
from unit.preview.process import running

from sitegen.cli import main
from sitegen.preview.serving import listen
from sitegen.site.refusal import RefusedError

MANY_BARS = "| C | F | G7 | C |\n" * 200
"""A chart that takes long to engrave."""


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_a_signal_ends_it_with_a_stream_open_and_a_page_being_made(
    number: signal.Signals, content: Path, write: Write
) -> None:
    write("low-tide", f"```changes\nkey: C\nmeter: 4/4\n\n{MANY_BARS}```\n")
    with (
        running(content, content.parent / "cache") as (process, site),
        site.follow("/breakdowns/low-tide/") as page,
    ):
        page.next()
        process.send_signal(number)
        out, errors = process.communicate(timeout=PATIENCE)

    assert process.returncode == 0
    assert errors == ""
    assert out == ""


def test_pages_are_made_in_processes_that_may_be_killed(content: Path, write: Write) -> None:
    write("low-tide", "Words.\n\n```changes\nkey: C\nmeter: 4/4\n\n| C | F |\n```\n")
    tide = "/breakdowns/low-tide/"
    with running(content, content.parent / "cache") as (process, site), site.follow(tide) as page:
        first = page.until(lambda state: state["page"] != "never made")
        for worker in children(process.pid):
            os.kill(worker, signal.SIGKILL)
        write("low-tide", "Other words.")
        page.until(lambda state: bool(state["page"] != first["page"]))
        text = site.get(tide)[1]
        archive = site.get("/")[1]

    assert first["faults"] == []
    assert "Other words." in text
    assert 'href="breakdowns/low-tide/index.html"' in archive


def children(parent: int) -> list[int]:
    """Return the processes that make pages for a preview (Linux tells them in /proc)."""
    found = []
    for folder in Path("/proc").glob("[0-9]*"):
        try:
            state = (folder / "stat").read_text(encoding="utf-8").rpartition(")")[2].split()
            is_worker = b"spawn_main" in (folder / "cmdline").read_bytes()
        except OSError:
            continue
        if int(state[1]) == parent and is_worker:
            found.append(int(folder.name))
    assert found
    return found


def test_a_busy_port_is_told(content: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with closing(listen(0)) as own:
        port = own.getsockname()[1]

        assert main(["preview", str(content), "--port", str(port)]) == 2

    told = capsys.readouterr().err
    assert f"port {port} is in use" in told
    assert "--port" in told


def test_a_port_that_is_refused_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise PermissionError(errno.EACCES, "Permission denied")

    monkeypatch.setattr("socket.socket.bind", refuse)

    with pytest.raises(
        RefusedError, match=r"port 80 is not to be had: permission denied; .*--port"
    ):
        listen(80)


def test_an_unknown_theme_is_told(content: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["preview", str(content), "--theme", "lingr", "--port", "0"]) == 2
    assert 'no theme is called "lingr"' in capsys.readouterr().err
