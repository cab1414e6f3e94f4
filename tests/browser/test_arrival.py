"""A link that names bars lights them up and brings them into view."""

import pytest
from playwright.sync_api import Browser

Site = tuple[str, list[str]]
IN_VIEW = """(mark) => {
  const { top, bottom } = mark.getBoundingClientRect();
  return top >= 0 && bottom <= innerHeight;
}"""
SONG = "breakdowns/borrowed-coat/index.html"


@pytest.mark.parametrize(
    ("query", "chart", "marks"),
    [
        ("?bars=5+6", "chart-inner-line", 1),
        ("?bars=2", "chart-verse-changes", 1),
        ("?bars=999", "chart-verse-changes", 0),
        ("?bars=x", "chart-verse-changes", 0),
        ("?bars=2", "no-such-chart", 0),
        ("", "chart-verse-changes", 0),
    ],
)
def test_named_bars_are_marked(
    browser: Browser, site: Site, query: str, chart: str, marks: int
) -> None:
    page = browser.new_page(viewport={"width": 1280, "height": 800})
    faults: list[str] = []
    page.on("pageerror", lambda fault: faults.append(str(fault)))
    page.goto(f"{site[0]}{SONG}{query}#{chart}")
    page.wait_for_selector("html[data-enhanced]", state="attached")
    found = page.locator(f'[id="{chart}"] .pointer, [id="{chart}"] [data-pointed]')
    assert found.count() == marks
    assert faults == []
    if marks:
        page.wait_for_function(IN_VIEW, arg=found.first.element_handle())
    page.close()
