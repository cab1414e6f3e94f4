"""The theme's modules run by themselves in a page, to hold what they find against Python."""

import json
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from browser.serving import served
from playwright.sync_api import Browser, Page

SCRIPTS = Path(__file__).parents[2] / "themes/liner/scripts"


@contextmanager
def served_scripts() -> Iterator[str]:
    """Serve the theme's scripts as they stand in the repository and give the folder's address."""
    with served(SCRIPTS) as address:
        yield address


def module_page(browser: Browser, address: str) -> Page:
    """Return a page of the site that loads nothing by itself; modules can be imported there."""
    page = browser.new_page()
    page.goto(f"{address}robots.txt")
    return page


def scripts_of(published: Path) -> str:
    """Return the address of the folder of scripts, from the top of the site."""
    (found,) = published.glob("scripts/*")
    return f"/{found.relative_to(published).as_posix()}"


def run(page: Page, code: str, *given: object) -> Any:  # noqa: ANN401 - what the code returns
    """Return what an async function of the `given` values returns; values travel as JSON."""
    return page.evaluate(f"async (given) => ({code})(...JSON.parse(given))", json.dumps(given))
