"""Where the independent checkers of pages are found: axe-core, the Nu HTML checker, Lighthouse.

`SITEGEN_CHECKERS` names the folder `node_modules` that holds them; `.ci/run` installs them by
`.ci/checkers/package.json`. Without it the tests that need them are skipped, with this reason.
"""

import os
import shutil
from pathlib import Path

import pytest


def checker(*path: str) -> Path:
    """Return a checker's file; the running test is skipped where it is not there."""
    folder = os.environ.get("SITEGEN_CHECKERS")
    found = Path(folder, *path) if folder else None
    if found is None or not found.exists():
        pytest.skip("SITEGEN_CHECKERS names no folder with the checkers of .ci/checkers")
    return found


def program(name: str) -> str:
    """Return the path of a program; the running test is skipped where there is none."""
    found = shutil.which(name)
    if found is None:
        pytest.skip(f"no {name} is installed")
    return found
