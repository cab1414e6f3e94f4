"""The published folder is the old site or the new one, and nothing of others is touched."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from sitegen.site import publishing
from sitegen.site.publishing import MARKER, fresh_folder
from sitegen.site.refusal import RefusedError


def publish(target: Path, text: str) -> None:
    with fresh_folder(target) as fresh:
        (fresh / MARKER).touch()
        (fresh / "index.html").write_text(text, encoding="utf-8")


def publish_half(target: Path) -> None:
    with fresh_folder(target) as fresh:
        (fresh / "index.html").write_text("half", encoding="utf-8")
        raise ZeroDivisionError


def index(target: Path) -> str:
    return (target / "index.html").read_text(encoding="utf-8")


def test_makes_the_folder_and_those_above_it(tmp_path: Path) -> None:
    publish(tmp_path / "a" / "b", "first")

    assert index(tmp_path / "a" / "b") == "first"


def test_replaces_its_own_folder_and_leaves_nothing_beside_it(tmp_path: Path) -> None:
    target = tmp_path / "published"
    publish(target, "first")
    (target / "gone.html").touch()

    publish(target, "second")

    assert index(target) == "second"
    assert not (target / "gone.html").exists()
    assert [path.name for path in tmp_path.iterdir()] == ["published"]


def test_replaces_it_where_folders_cannot_be_exchanged(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(publishing, "_exchange", lambda _first, _second: False)
    target = tmp_path / "published"
    publish(target, "first")

    publish(target, "second")

    assert index(target) == "second"
    assert [path.name for path in tmp_path.iterdir()] == ["published"]


def test_takes_an_empty_folder(tmp_path: Path) -> None:
    publish(tmp_path, "first")

    assert index(tmp_path) == "first"


def test_refuses_a_folder_of_somebody_else(tmp_path: Path) -> None:
    (tmp_path / "thesis.txt").write_text("years of work", encoding="utf-8")

    with pytest.raises(RefusedError, match="was not made by sitegen"):
        publish(tmp_path, "first")

    assert [path.name for path in tmp_path.iterdir()] == ["thesis.txt"]


def test_refuses_a_file(tmp_path: Path) -> None:
    (tmp_path / "published").touch()

    with pytest.raises(RefusedError, match="is not a folder"):
        publish(tmp_path / "published", "first")


def test_refuses_a_place_below_a_file(tmp_path: Path) -> None:
    (tmp_path / "file").touch()

    with pytest.raises(RefusedError, match="cannot be written"):
        publish(tmp_path / "file" / "published", "first")


def test_a_failure_keeps_the_old_site(tmp_path: Path) -> None:
    target = tmp_path / "published"
    publish(target, "first")

    with pytest.raises(ZeroDivisionError):
        publish_half(target)

    assert index(target) == "first"
    assert [path.name for path in tmp_path.iterdir()] == ["published"]


def test_a_link_to_a_folder_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "www").mkdir()
    (tmp_path / "published").symlink_to("www")

    publish(tmp_path / "published", "first")

    assert (tmp_path / "published").is_symlink()
    assert index(tmp_path / "www") == "first"


def test_what_a_killed_build_left_is_swept_away_by_the_next(tmp_path: Path) -> None:
    ended = subprocess.Popen([sys.executable, "-c", ""])
    ended.wait()
    (tmp_path / f".published.fresh-{ended.pid}").mkdir()
    (tmp_path / f".published.fresh-{os.getppid()}").mkdir()

    publish(tmp_path / "published", "first")

    left = sorted(path.name for path in tmp_path.iterdir())
    assert left == [f".published.fresh-{os.getppid()}", "published"]


KILLED = """
import sys
from pathlib import Path
from sitegen.site.publishing import MARKER, fresh_folder
number = 0
while True:
    number += 1
    with fresh_folder(Path(sys.argv[1])) as fresh:
        (fresh / MARKER).touch()
        for name in "abcdefgh":
            (fresh / name).write_text(str(number))
    print(number, flush=True)
"""


@pytest.mark.skipif(sys.platform not in {"linux", "darwin"}, reason="no exchange of folders")
def test_killed_at_any_moment_the_site_is_whole(tmp_path: Path) -> None:
    target = tmp_path / "published"
    for round_number in range(8):
        with subprocess.Popen(
            [sys.executable, "-c", KILLED, str(target)], stdout=subprocess.PIPE
        ) as process:
            assert process.stdout is not None
            process.stdout.readline()
            time.sleep(0.003 * round_number)
            process.send_signal(signal.SIGKILL)
        names = {path.name: path.read_text(encoding="utf-8") for path in target.iterdir()}
        numbers = {text for name, text in names.items() if name != MARKER}
        assert sorted(names) == [MARKER, *"abcdefgh"]
        assert len(numbers) == 1


def test_a_pipe_in_the_place_of_the_sign_is_none(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / MARKER)

    with pytest.raises(RefusedError, match="was not made by sitegen"):
        publish(tmp_path, "first")
