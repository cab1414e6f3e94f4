"""axe-core finds no fault in any page, in two widths and both schemes; what it leaves is known."""

from typing import Any

import pytest
from browser.checkers import checker
from browser.opening import open_page
from playwright.sync_api import Browser, Page

pytestmark = pytest.mark.browser

# What axe cannot decide by itself, and what decides it instead. Each was looked at.
LOOKED_AT = {
    "color-contrast": "text in drawings and over the disc: test_pages computes what is painted",
}
BROKEN = """<!DOCTYPE html><html><head><title></title></head><body>
<img src="data:,"><a href="#x"></a><p style="color:#999;background:#aaa">faint</p>
</body></html>"""


def findings(page: Page) -> dict[str, Any]:
    """Return what axe says of a page: `violations` and `incomplete`."""
    page.add_script_tag(path=str(checker("axe-core", "axe.min.js")))
    found = page.evaluate("axe.run(document, {resultTypes: ['violations', 'incomplete']})")
    assert isinstance(found, dict)
    return found


def told(results: list[dict[str, Any]]) -> list[str]:
    return [f"{found['id']}: {node['target']}" for found in results for node in found["nodes"]]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 1280])
def test_no_page_violates_a_rule(
    browser: Browser, site: tuple[str, list[str]], width: int, scheme: str
) -> None:
    checker("axe-core", "axe.min.js")
    top, paths = site
    for path in paths:
        page = open_page(browser, top + path, width, scheme)
        found = findings(page)
        assert told(found["violations"]) == [], path
        open_rules = [result for result in found["incomplete"] if result["id"] not in LOOKED_AT]
        assert told(open_rules) == [], path
        page.context.close()


def test_a_broken_page_is_seen(browser: Browser) -> None:
    checker("axe-core", "axe.min.js")
    page = browser.new_page()
    page.set_content(BROKEN)
    rules = {result["id"] for result in findings(page)["violations"]}
    assert {"image-alt", "link-name", "color-contrast", "html-has-lang"} <= rules
    page.close()
