"""The built demo site on a local server, and a real Chromium to look at it with."""

import functools
import http.server
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright

from sitegen.cli import main

CONTENT = Path(__file__).parents[2] / "content"


@pytest.fixture(scope="session")
def published(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the demo site and return its folder."""
    out = tmp_path_factory.mktemp("site") / "published"
    assert main(["build", str(CONTENT), "--out", str(out)]) == 0
    return out


@pytest.fixture(scope="session")
def site(published: Path) -> Iterator[tuple[str, list[str]]]:
    """Serve the demo site and give its address with the pages' paths."""
    handler = functools.partial(_Quiet, directory=str(published))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    pages = sorted(str(page.relative_to(published)) for page in published.rglob("*.html"))
    assert pages
    yield f"http://127.0.0.1:{server.server_port}/", pages
    server.shutdown()
    server.server_close()
    thread.join()


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_: object) -> None:
        """Print nothing."""


@pytest.fixture(scope="session")
def browser(chromium: str) -> Iterator[Browser]:
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        yield browser
        browser.close()
