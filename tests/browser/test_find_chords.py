"""The page for chords: what it says, where results lead, what the address keeps."""

from collections.abc import Iterator
from urllib.parse import urljoin

import pytest
from browser.opening import open_page
from playwright.sync_api import Browser, Page, expect

Site = tuple[str, list[str]]
FOUND = "#chords_found > li"


@pytest.fixture
def find(browser: Browser, site: Site) -> Iterator[Page]:
    page = open_page(browser, f"{site[0]}find/index.html", 1280)
    page.wait_for_selector("html[data-finding]", state="attached")
    yield page
    page.context.close()


def ask(page: Page, chords: str) -> str:
    """Return what is said of some chords; they are asked for with the keyboard only."""
    said = page.locator("section:has(#chords_form) .finder-said")
    said.evaluate("node => (node.textContent = '')")
    page.get_by_label("Chords", exact=True).fill(chords)
    page.keyboard.press("Enter")
    expect(said).not_to_be_empty()
    return said.inner_text()


def test_results_lead_to_their_bars_lit_up(find: Page) -> None:
    said = ask(find, "Em C")
    assert "One chart has them" in said
    first = find.locator(FOUND).first
    assert first.locator(".found-chords li").count() >= 2
    link = first.get_by_role("link")
    assert "bar" in link.inner_text()
    target = urljoin(find.url, link.get_attribute("href") or "")
    link.click()
    find.wait_for_url(target)
    find.wait_for_selector(".pointer, [data-pointed]", state="attached")


def test_other_keys_are_told_and_may_be_left_out(find: Page) -> None:
    ask(find, "C#m A")
    everywhere = find.locator(FOUND).count()
    assert "higher" in find.locator("#chords_found").inner_text()
    find.get_by_label("in this key only").check()
    find.get_by_role("button", name="Find chords").click()
    find.wait_for_function(
        "() => !/higher|lower/.test(document.querySelector('#chords_found').textContent)"
    )
    assert find.locator(FOUND).count() <= everywhere


def test_what_is_nearest_shows_what_differs(find: Page) -> None:
    said = ask(find, "Em C F#dim7")
    assert "nearest" in said
    assert find.locator("#chords_found ins, #chords_found del").count() > 0


def test_what_cannot_be_read_is_named(find: Page) -> None:
    assert "“Hx” cannot be read as a chord" in ask(find, "Em Hx G")
    assert "“Q” cannot be read as a numeral" in ask(find, "vi Q")


def test_the_address_keeps_the_question(find: Page) -> None:
    ask(find, "vi IV")
    asked = find.url
    assert "chords=vi" in asked
    ask(find, "ii V")
    find.go_back()
    expect(find.get_by_label("Chords", exact=True)).to_have_value("vi IV")
    assert find.url == asked
    find.reload()
    find.wait_for_selector(FOUND)
    expect(find.get_by_label("Chords", exact=True)).to_have_value("vi IV")
    kept = find.locator("#chords_recent option").evaluate_all("all => all.map(one => one.value)")
    assert sorted(kept) == ["ii V", "vi IV"]
