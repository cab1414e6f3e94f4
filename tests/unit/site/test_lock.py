"""Two builds never fill one folder at once, and a build that was killed holds nothing up."""

import signal
import subprocess
import sys
from pathlib import Path

import pytest

from sitegen.site.lock import only_build
from sitegen.site.refusal import RefusedError

HOLD = """
import sys
from pathlib import Path
from sitegen.site.lock import only_build
with only_build(Path(sys.argv[1]), Path("published")):
    print("held", flush=True)
    sys.stdin.read()
"""


def hold(path: Path) -> "subprocess.Popen[str]":
    process = subprocess.Popen(
        [sys.executable, "-c", HOLD, str(path)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    assert process.stdout is not None
    assert process.stdout.readline() == "held\n"
    return process


def test_a_second_build_is_refused_until_the_first_has_ended(tmp_path: Path) -> None:
    path = tmp_path / "lock"
    with hold(path) as process:
        with pytest.raises(RefusedError, match="another build is filling published"):
            enter(path)
        process.communicate("")

    enter(path)

    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(sys.platform == "win32", reason="no SIGKILL there")
def test_a_killed_build_holds_nothing(tmp_path: Path) -> None:
    with hold(tmp_path / "lock") as process:
        process.send_signal(signal.SIGKILL)
        process.wait()

    enter(tmp_path / "lock")


def enter(path: Path) -> None:
    with only_build(path, Path("published")):
        pass
