"""What can be taken away of a chart: files that are there, and a link that is copied."""

import re

import pytest
from browser.opening import open_page
from playwright.sync_api import Browser, Page

pytestmark = pytest.mark.browser

Site = tuple[str, list[str]]
SUFFIXES = {"SVG": "svg", "MEI": "mei", "MusicXML": "musicxml", "MIDI": "mid"}


def write_up(site: Site) -> str:
    top, paths = site
    return top + next(path for path in paths if path.startswith("breakdowns/"))


def confirmation(page: Page) -> str:
    return page.locator(".take-away-link [role=status]").first.inner_text().strip()


def test_every_chart_has_its_files_and_they_are_there(browser: Browser, site: Site) -> None:
    top, paths = site
    seen = 0
    for path in (path for path in paths if path.startswith("breakdowns/")):
        page = open_page(browser, top + path, 1280)
        assert (
            page.locator("figure.chart[id] .take-away").count()
            == page.locator("figure.chart[id]").count()
        )
        for link in page.locator(".take-away a[download]").all():
            answer = page.request.get(link.evaluate("a => a.href"))
            assert answer.ok
            assert answer.body()
            seen += 1
        page.context.close()
    assert seen > 20


def test_a_link_names_its_format_and_its_chart(browser: Browser, site: Site) -> None:
    page = open_page(browser, write_up(site), 1280)
    for figure in page.locator("figure.chart-notation").all():
        name, anchor = figure.locator(".chart-number").inner_text(), figure.get_attribute("id")
        for format_, suffix in SUFFIXES.items():
            link = page.get_by_role(
                "link", name=re.compile(rf"^{format_} of {re.escape(name)}$", re.IGNORECASE)
            )
            assert link.get_attribute("href") == f"{anchor}.{suffix}"
            assert link.get_attribute("download") == ""
    page.context.close()


def test_the_link_is_copied_and_said_once(browser: Browser, site: Site) -> None:
    page = open_page(browser, write_up(site), 1280)
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    page.evaluate(
        "() => { window.said = []; new MutationObserver((all) => all.forEach((one) =>"
        " one.target.textContent && window.said.push(one.target.textContent.trim())))"
        ".observe(document.querySelector('.take-away-link [role=status]'), {childList: true}) }"
    )
    link = page.locator(".take-away-link a").first
    link.focus()
    page.keyboard.press("Enter")
    page.wait_for_function("window.said.length > 0")
    assert page.evaluate("navigator.clipboard.readText()") == link.evaluate("a => a.href")
    assert page.evaluate("window.said") == ["copied"]
    assert page.evaluate("document.activeElement.closest('.take-away-link') !== null")
    assert page.evaluate("location.hash") == ""
    page.context.close()


def test_a_copied_link_keeps_what_the_address_says(browser: Browser, site: Site) -> None:
    page = open_page(browser, f"{write_up(site)}?show=numerals", 1280)
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    page.locator(".take-away-link a").first.click()
    page.wait_for_function("document.querySelector('.take-away-link [role=status]').textContent")
    assert "?show=numerals#chart-" in page.evaluate("navigator.clipboard.readText()")
    page.context.close()


def test_where_nothing_may_be_copied_the_link_leads_to_the_chart(
    browser: Browser, site: Site
) -> None:
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    context.add_init_script(
        "Object.defineProperty(navigator, 'clipboard', { value: {"
        " writeText: () => Promise.reject(new Error('not allowed')) } })"
    )
    page = context.new_page()
    page.goto(write_up(site), wait_until="load")
    page.wait_for_selector(".take-away-link [role=status]", state="attached")
    page.locator(".take-away-link a").first.click()
    page.wait_for_function("location.hash.startsWith('#chart-')")
    assert confirmation(page) == ""
    context.close()


def test_without_scripts_files_and_link_are_there(browser: Browser, site: Site) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(write_up(site), wait_until="load")
    assert page.locator(".take-away a[download]").count() > 4
    page.locator(".take-away-link a").first.click()
    assert "#chart-" in page.url
    context.close()


def test_nothing_moves_when_the_script_comes(browser: Browser, site: Site) -> None:
    page = open_page(browser, write_up(site), 360)
    page.wait_for_selector(".take-away-link [role=status]", state="attached")
    line = page.locator(".take-away").first
    before = line.evaluate("p => p.getBoundingClientRect().height")
    line.locator("[role=status]").evaluate("span => span.remove()")
    assert line.evaluate("p => p.getBoundingClientRect().height") == before
    page.context.close()


def test_on_paper_the_line_is_left_out(browser: Browser, site: Site) -> None:
    page = open_page(browser, write_up(site), 1280)
    page.emulate_media(media="print")
    assert not page.locator(".take-away").first.is_visible()
    page.context.close()


def test_a_drawing_that_was_taken_away_shows_black_on_white(browser: Browser, site: Site) -> None:
    page = open_page(browser, write_up(site), 1280, "dark")
    address = page.locator(".chart-notation .take-away a").first.evaluate("a => a.href")
    page.goto(address)
    colours = page.evaluate(
        "() => [document.querySelector('rect.paper'), document.querySelector('use')]"
        ".map((e) => getComputedStyle(e).fill)"
    )
    assert colours == ["rgb(255, 255, 255)", "rgb(0, 0, 0)"]
    assert page.locator("text").count() > 0
    page.context.close()
