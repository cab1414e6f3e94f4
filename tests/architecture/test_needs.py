"""Where everything is needed, a skipped test is a failed one."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

CONFTEST = Path(__file__).parents[1] / "conftest.py"
SKIPPED = {
    "test": "import pytest\n\ndef test_it() -> None:\n    pytest.skip('no browser')\n",
    "fixture": "def test_it(mei_schema) -> None:\n    pass\n",
    "module": "import pytest\npytest.skip('no browser', allow_module_level=True)\n",
}


def outcome(folder: Path, program: str, *, need_all: bool) -> int:
    (folder / "conftest.py").write_text(CONFTEST.read_text(encoding="utf-8"), encoding="utf-8")
    (folder / "pytest.ini").write_text("[pytest]\n", encoding="utf-8")
    (folder / "test_planted.py").write_text(program, encoding="utf-8")
    left_out = {"SITEGEN_NEED_ALL", "SITEGEN_MEI_SCHEMA"}
    environment = {name: value for name, value in os.environ.items() if name not in left_out}
    if need_all:
        environment["SITEGEN_NEED_ALL"] = "1"
    command = [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", str(folder)]
    return subprocess.run(
        command, cwd=folder, env=environment, check=False, capture_output=True
    ).returncode


@pytest.mark.parametrize("where", SKIPPED)
def test_a_skip_fails_only_where_all_is_needed(tmp_path: Path, where: str) -> None:
    left_out = (pytest.ExitCode.OK, pytest.ExitCode.NO_TESTS_COLLECTED)

    assert outcome(tmp_path, SKIPPED[where], need_all=False) in left_out
    assert outcome(tmp_path, SKIPPED[where], need_all=True) not in left_out


def test_what_passes_and_what_is_expected_to_fail_stays_so(tmp_path: Path) -> None:
    program = (
        "import pytest\n\ndef test_it() -> None:\n    pass\n\n"
        "@pytest.mark.xfail\ndef test_other() -> None:\n    raise ValueError\n"
    )

    assert outcome(tmp_path, program, need_all=True) == pytest.ExitCode.OK
