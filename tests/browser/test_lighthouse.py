"""Lighthouse gives full marks to the heaviest pages, served with compression as a host would.

Its mark for performance hangs on the machine that it runs on and is printed by
`tests/bench/lighthouse.py`; here stand the marks that do not.
"""

import functools
import gzip
import http.server
import json
import subprocess
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

import pytest
from browser.checkers import checker, program
from browser.serving import listening

pytestmark = pytest.mark.browser

CATEGORIES = ("accessibility", "best-practices", "seo")
HEAVIEST = 3
BROKEN = "<html><body><img src='none.png'><p style='color:#ddd'>faint</p></body></html>"


class _Compressed(http.server.SimpleHTTPRequestHandler):
    """Serves files compressed, many over one connection; text is what a site has in bulk."""

    protocol_version = "HTTP/1.1"

    def log_message(self, *_: object) -> None:
        """Print nothing."""

    def do_GET(self) -> None:
        path = Path(self.translate_path(self.path))
        path = path / "index.html" if path.is_dir() else path
        if not path.is_file():
            self.send_error(404)
            return
        data = _compressed(path)
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(len(data)))
        self.send_header("Cache-Control", "max-age=31536000")
        self.end_headers()
        self.wfile.write(data)


@functools.cache
def _compressed(path: Path) -> bytes:
    return gzip.compress(path.read_bytes())


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """Serve a folder whose pages lie ready compressed, and give its address."""
    for page in folder.rglob("*.html"):
        _compressed(page)
    with listening(functools.partial(_Compressed, directory=str(folder))) as top:
        yield top


def marks(
    address: str, chromium: str, folder: Path, categories: Sequence[str] = CATEGORIES
) -> tuple[dict[str, float], list[str]]:
    """Return the mark of each category, and the audits that took something off."""
    report = folder / "report.json"
    command = [
        program("node"),
        str(checker("lighthouse", "cli", "index.js")),
        address,
        "--quiet",
        "--output=json",
        f"--output-path={report}",
        f"--only-categories={','.join(categories)}",
        "--chrome-flags=--headless=new --no-sandbox --disable-gpu --no-first-run",
    ]
    environment = {"CHROME_PATH": chromium, "PATH": str(Path(program("node")).parent)}
    subprocess.run(command, check=True, capture_output=True, env=environment, timeout=300)
    found = json.loads(report.read_text(encoding="utf-8"))
    given = {name: found["categories"][name]["score"] for name in categories}
    weighed = {
        audit["id"]
        for category in found["categories"].values()
        for audit in category["auditRefs"]
        if audit["weight"]
    }
    lost = [name for name in weighed if (found["audits"][name]["score"] or 0) < 1]
    failed = [n for n in lost if found["audits"][n]["scoreDisplayMode"] != "notApplicable"]
    return given, sorted(failed)


def test_the_heaviest_pages_get_full_marks(published: Path, chromium: str, tmp_path: Path) -> None:
    checker("lighthouse", "cli", "index.js")
    pages = sorted(published.glob("*/*/index.html"), key=lambda page: -page.stat().st_size)
    with served(published) as top:
        for page in pages[:HEAVIEST]:
            address = top + page.parent.relative_to(published).as_posix() + "/"
            given, failed = marks(address, chromium, tmp_path)
            assert given == dict.fromkeys(CATEGORIES, 1), failed


def test_a_broken_page_is_seen(chromium: str, tmp_path: Path) -> None:
    checker("lighthouse", "cli", "index.js")
    (tmp_path / "index.html").write_text(BROKEN, encoding="utf-8")
    with served(tmp_path) as top:
        given, _ = marks(top, chromium, tmp_path)
    assert given["accessibility"] < 1
    assert given["seo"] < 1
