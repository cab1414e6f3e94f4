"""The command `sitegen preview` as a process of its own."""

import os
import re
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from unit.preview.conftest import Served

CHECKOUT = Path(__file__).parents[3]


@contextmanager
def running(content: Path, cache: Path) -> Iterator[tuple["subprocess.Popen[str]", Served]]:
    """Run the preview of a content folder; give its process, and it as a browser sees it."""
    line = [sys.executable, "-m", "sitegen", "preview", str(content), "--port", "0"]
    process = subprocess.Popen(
        line,
        cwd=CHECKOUT,
        env={**os.environ, "PYTHONUNBUFFERED": "1", "XDG_CACHE_HOME": str(cache)},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    try:
        assert process.stdout is not None
        told = re.search(r"http://127\.0\.0\.1:(\d+)/", process.stdout.readline())
        assert told is not None
        yield process, Served(int(told[1]))
    finally:
        process.terminate()
        process.communicate()
