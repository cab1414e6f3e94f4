"""Words are found however their accidentals are written, and each result leads to its place."""

from collections.abc import Iterator
from urllib.parse import urljoin

import pytest
from browser.opening import open_page
from playwright.sync_api import Browser, Page

Site = tuple[str, list[str]]


@pytest.fixture
def find(browser: Browser, site: Site) -> Iterator[Page]:
    page = open_page(browser, f"{site[0]}find/index.html", 1280)
    page.wait_for_selector("html[data-finding]", state="attached")
    yield page
    page.context.close()


def ask(page: Page, words: str) -> list[str]:
    """Return the addresses that some words lead to."""
    before = page.locator("#words_found").inner_html()
    page.get_by_label("Words", exact=True).fill(words)
    page.get_by_role("button", name="Find words").click()
    page.wait_for_function(
        "(before) => document.querySelector('#words_found').innerHTML !== before", arg=before
    )
    page.wait_for_function(
        "() => /these words/.test(document.querySelector('.finder-said').textContent)"
    )
    links = page.locator("#words_found a").all()
    return [link.get_attribute("href") or "" for link in links]


@pytest.mark.parametrize(("signed", "plain"), [("C♭5", "Cb5"), ("F♯sus2", "F#sus2")])
def test_both_ways_of_writing_find_the_same(find: Page, signed: str, plain: str) -> None:
    found = ask(find, signed)
    assert found
    assert find.locator(".found-words").first.inner_text().count(signed)
    ask(find, "bass")
    assert ask(find, plain) == found


def test_results_lead_to_sections_that_are_there(find: Page) -> None:
    start = find.url
    found = ask(find, "appoggiatura")
    assert any("#chart-" in href for href in found)
    for href in found:
        page, _, anchor = urljoin(start, href).partition("#")
        find.goto(page)
        assert not anchor or find.locator(f"#{anchor}").count() == 1


def test_words_of_an_opening_lead_to_it(find: Page) -> None:
    assert any(href.endswith("#article_text") for href in ask(find, "plaster"))
    assert "The opening" in find.locator("#words_found").inner_text()


def test_words_that_stand_everywhere_are_looked_up_in_quotation_marks_only(find: Page) -> None:
    ask(find, "of the appoggiatura")
    marked = set(find.locator("#words_found mark").all_inner_texts())
    assert {word.lower()[:6] for word in marked} == {"appogg"}
    ask(find, '"of the"')
    assert {"of", "the"} <= set(find.locator("#words_found mark").all_inner_texts())


def test_the_question_stands_in_the_address(find: Page) -> None:
    found = ask(find, "capo")
    ask(find, "riff")
    find.go_back()
    find.wait_for_function("() => document.querySelector('#words_asked').value === 'capo'")
    find.wait_for_function(
        "(href) => document.querySelector('#words_found a')?.getAttribute('href') === href",
        arg=found[0],
    )
    assert "words=capo" in find.url


def test_nothing_found_is_said_once(find: Page) -> None:
    ask(find, "riff")
    find.get_by_label("Words", exact=True).fill("zzyzx")
    find.keyboard.press("Enter")
    find.get_by_text("Nothing has these words.").wait_for()
    assert find.locator("#words_found li").count() == 0


def test_without_scripts_the_lists_are_named(browser: Browser, site: Site) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{site[0]}find/index.html")
    assert page.get_by_role("button", name="Find words").count() == 0
    page.get_by_role("link", name="list of all write-ups").click()
    assert page.locator("h1").inner_text() == "All write-ups"
    context.close()
