"""The built demo site on a local server, and a real Chromium to look at it with."""

from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest
from browser.serving import served
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
    """Serve the demo site and give its address with the paths of its pages, one of each kind."""
    pages = one_of_each(sorted(page.relative_to(published) for page in published.rglob("*.html")))
    assert pages
    with served(published) as address:
        yield address, pages


def one_of_each(pages: Sequence[Path]) -> list[str]:
    """Return pages by path, and of the many that are made alike one: those of the index's values.

    A value's page stands three folders deep, `archive/key/e-minor/index.html`; there is one for a
    key, for a technique and for a topic.
    """
    alike = [page for page in pages if page.parts[0] == "archive" and len(page.parts) > 2]
    kept: dict[tuple[str, int], Path] = {}
    for page in alike:
        if page.parts[1] in {"key", "technique", "topic"}:
            kept.setdefault((page.parts[1], len(page.parts)), page)
    left_out = set(alike) - set(kept.values())
    return [page.as_posix() for page in pages if page not in left_out]


@pytest.fixture(scope="session")
def browser(chromium: str) -> Iterator[Browser]:
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        yield browser
        browser.close()
