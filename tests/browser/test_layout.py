"""The page's layout in a real Chromium: column, index, notes, schemes, plan, print, stillness."""

from collections.abc import Iterator
from typing import Any

import pytest
from browser.opening import open_page
from playwright.sync_api import Browser, Page

pytestmark = pytest.mark.browser

WITH_NOTE = "breakdowns/rust-calendar/index.html"
WIDTHS = [320, 360, 768, 1280, 1920, 3840]

# Letters of every line of running text but the first two, which an initial may shorten, and the
# last of each paragraph.
LINES = """
() => [...document.querySelectorAll(".prose > p")].flatMap((paragraph) => {
  const texts = document.createTreeWalker(paragraph, NodeFilter.SHOW_TEXT);
  const lines = [];
  let bottom = -Infinity;
  while (texts.nextNode()) {
    const text = texts.currentNode;
    if (text.parentElement.closest("sup, .unseen")) continue;
    for (let at = 0; at < text.length; at++) {
      const range = document.createRange();
      range.setStart(text, at);
      range.setEnd(text, at + 1);
      const box = [...range.getClientRects()].at(-1);
      if (!box?.width) continue;
      if (box.bottom > bottom + 12) lines.push(0), (bottom = box.bottom);
      lines[lines.length - 1]++;
    }
  }
  return lines.slice(2, -1);
})
"""
BOX = "(e) => (({ left, right, top, bottom, width }) => [left, right, top, bottom, width])"
BOX += "(e.getBoundingClientRect())"
SHIFTS = """
window.shifts = [];
new PerformanceObserver((list) => {
  for (const { value, sources } of list.getEntries())
    shifts.push([value, ...sources.map(({ node }) => node?.outerHTML?.slice(0, 80))]);
}).observe({ type: "layout-shift", buffered: true });
"""


def box(page: Page, selector: str) -> tuple[float, float, float, float, float]:
    """Return left, right, top, bottom and width of the first element."""
    left, right, top, bottom, width = page.locator(selector).first.evaluate(BOX)
    return left, right, top, bottom, width


def articles(site: tuple[str, list[str]]) -> list[str]:
    top, paths = site
    found = [top + path for path in paths if path.startswith("breakdowns/")]
    assert len(found) >= 3
    return found


@pytest.fixture
def note_page(browser: Browser, site: tuple[str, list[str]]) -> Iterator[Page]:
    """Open a write-up with a note, on a desktop."""
    page = open_page(browser, site[0] + WITH_NOTE, 1280)
    yield page
    page.context.close()


# 60 to 75 letters a line: the measure that handbooks of typography ask for (Bringhurst, The
# Elements of Typographic Style, 2.1.2: 45 to 75 satisfactory, 66 ideal; from memory).
@pytest.mark.parametrize("width", [768, 1280, 1920, 3840])
def test_a_line_of_text_has_60_to_75_letters(
    browser: Browser, site: tuple[str, list[str]], width: int
) -> None:
    for address in articles(site):
        page = open_page(browser, address, width)
        lines = sorted(page.evaluate(LINES))
        assert len(lines) > 20
        assert lines[len(lines) // 10] >= 60, address
        assert lines[9 * len(lines) // 10] <= 75, address
        page.context.close()


def test_charts_are_wider_than_the_text_where_there_is_room(note_page: Page) -> None:
    *_, text = box(note_page, ".prose > p")
    *_, chart = box(note_page, ".prose > .chart")
    assert chart > 1.5 * text


def test_a_page_keeps_its_bounds_on_a_large_screen(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    page = open_page(browser, site[0] + WITH_NOTE, 3840)
    left, right, *_, width = box(page, "main")
    assert width < 1700
    assert left == pytest.approx(3840 - right, abs=10)
    page.context.close()


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("kept", [{}, {"scheme": "dark", "lengths": "time"}])
def test_nothing_shifts_while_a_page_loads_and_is_read(
    browser: Browser, site: tuple[str, list[str]], width: int, kept: dict[str, str]
) -> None:
    page = still_page(browser, width, kept)
    page.goto(site[0] + WITH_NOTE, wait_until="load")
    page.wait_for_function("document.querySelector('.scheme:not([hidden])')")
    for place in range(0, 6000, 800):
        page.evaluate(f"scrollTo({{ top: {place}, behavior: 'instant' }})")
        page.wait_for_timeout(30)
    assert page.evaluate("shifts") == []
    page.context.close()


def test_a_shift_would_be_seen(browser: Browser, site: tuple[str, list[str]]) -> None:
    page = still_page(browser, 1280, {})
    page.goto(site[0] + WITH_NOTE, wait_until="load")
    page.evaluate("document.querySelector('main').style.paddingTop = '5rem'")
    page.wait_for_function("shifts.length > 0")
    page.context.close()


def still_page(browser: Browser, width: int, kept: dict[str, str]) -> Page:
    page = browser.new_context(viewport={"width": width, "height": 900}).new_page()
    for name, value in kept.items():
        page.add_init_script(f"localStorage.setItem('liner.{name}', '{value}')")
    page.add_init_script(SHIFTS)
    return page


# Each drawing's height as long as it is not laid out, and once it is; and how many were not.
ROOM = """
() => {
  const drawings = [...document.querySelectorAll(".drawing-wide, .drawing-narrow")];
  const seen = ([svg]) => svg.checkVisibility({ contentVisibilityAuto: true });
  const skipped = drawings.filter((each) => each.checkVisibility() && !seen(each.children)).length;
  const heights = () => drawings.map((each) => each.getBoundingClientRect().height);
  const before = heights();
  for (const each of drawings) each.style.contentVisibility = "visible";
  return [skipped, before, heights()];
}
"""


@pytest.mark.parametrize("width", [320, 768, 1280, 3840])
def test_a_drawing_that_is_out_of_view_keeps_its_room(
    browser: Browser, site: tuple[str, list[str]], width: int
) -> None:
    for address in articles(site):
        page = open_page(browser, address, width)
        skipped, before, after = page.evaluate(ROOM)
        assert skipped >= 3, address
        assert before == pytest.approx(after, abs=0.1), address
        page.context.close()


def test_the_index_stands_beside_the_text_and_stays_in_view(note_page: Page) -> None:
    _, right, *_ = box(note_page, ".index")
    left, *_ = box(note_page, ".article-text > p")
    assert right < left
    go_to(note_page, ".prose > h2 >> nth=3")
    _, _, top, bottom, _ = box(note_page, ".index")
    assert top >= 0
    assert bottom <= 900


def test_the_index_follows_the_reading(note_page: Page) -> None:
    links = note_page.locator(".tracks-numbered a")
    for number in (3, 1):
        go_to(note_page, f".prose > h2 >> nth={number}")
        note_page.wait_for_selector(".tracks-numbered a[aria-current]")
        note_page.wait_for_function(
            "(n) => [...document.querySelectorAll('.tracks-numbered a')]"
            ".findIndex((link) => link.ariaCurrent === 'location') === n",
            arg=number,
        )
    assert links.count() > 3
    note_page.evaluate("scrollTo({ top: 0, behavior: 'instant' })")
    note_page.wait_for_function("!document.querySelector('.tracks-numbered [aria-current]')")


def test_the_plan_marks_the_sections_that_are_read(note_page: Page) -> None:
    chart = note_page.locator(".map a").nth(1).get_attribute("href")
    go_to(note_page, f"[id='{(chart or '')[1:]}']")
    marked = f"a[href='{chart}'][aria-current='location']"
    note_page.wait_for_selector(f".map {marked}")
    assert note_page.locator(f".drawing {marked}").count() > 0
    go_to(note_page, ".prose > h2 >> nth=-1")
    note_page.wait_for_function("!document.querySelector('.map [aria-current]')")


def go_to(page: Page, selector: str) -> None:
    page.locator(selector).first.evaluate("(e) => e.scrollIntoView({ behavior: 'instant' })")


def test_on_a_phone_the_index_is_a_list_above_the_text(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    page = open_page(browser, site[0] + WITH_NOTE, 360)
    *_, bottom, _ = box(page, ".index")
    _, _, top, *_ = box(page, ".article-text")
    assert bottom <= top
    assert not page.locator(".map").is_visible()
    page.context.close()


TABLES = ".table-scroll, .plan-rows"


def test_a_table_is_a_stop_for_the_keyboard_only_where_it_scrolls(note_page: Page) -> None:
    stops = "(all) => all.map((e) => [e.tabIndex === 0, e.scrollWidth > e.clientWidth])"
    tables = note_page.locator(TABLES)
    assert tables.evaluate_all(stops) == [[False, False]] * tables.count()
    note_page.locator(".table-scroll table").evaluate("(e) => (e.style.minWidth = '200rem')")
    note_page.set_viewport_size({"width": 320, "height": 900})
    note_page.wait_for_function("document.querySelector('.table-scroll').tabIndex === 0")
    found = tables.evaluate_all(stops)
    assert [True, True] in found
    assert all(stop == wide for stop, wide in found)


def test_without_scripts_every_table_is_a_stop_for_the_keyboard(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    page = browser.new_context(java_script_enabled=False).new_page()
    page.goto(site[0] + WITH_NOTE)
    stops = [table.get_attribute("tabindex") for table in page.locator(TABLES).all()]
    assert stops == ["0"] * len(stops)
    assert len(stops) >= 2
    page.context.close()


def test_a_note_stands_in_the_margin_beside_its_paragraph(note_page: Page) -> None:
    left, right, top, bottom, _ = box(note_page, ".footnotes")
    _, text_right, text_top, *_ = note_page.locator(".footnotes").evaluate(
        "(e) => { const { left, right, top } = e.previousElementSibling.getBoundingClientRect();"
        " return [left, right, top]; }"
    )
    assert left > text_right
    assert top == pytest.approx(text_top, abs=12)
    assert right <= 1280
    for chart in note_page.locator(".prose > .chart, .prose > h2").all():
        _, _, chart_top, chart_bottom, _ = chart.evaluate(BOX)
        assert chart_bottom <= top or bottom <= chart_top


def test_on_a_phone_a_note_stands_behind_its_paragraph(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    page = open_page(browser, site[0] + WITH_NOTE, 360)
    left, _, top, *_ = box(page, ".footnotes")
    before = page.locator(".footnotes").evaluate(
        "(e) => e.previousElementSibling.getBoundingClientRect().bottom"
    )
    assert before <= top
    assert left < 60
    page.context.close()


def paper(page: Page) -> str:
    return str(page.evaluate("getComputedStyle(document.body).backgroundColor"))


def test_the_switch_changes_the_scheme_and_the_device_keeps_it(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    page = open_page(browser, site[0] + WITH_NOTE, 1280, "light")
    switch = page.get_by_label("Paper")
    light = paper(page)
    switch.select_option("dark")
    dark = paper(page)
    assert dark != light
    page.goto(site[0] + "index.html")
    assert paper(page) == dark
    page.get_by_label("Paper").select_option("light")
    page.emulate_media(color_scheme="dark")
    assert paper(page) == light
    page.get_by_label("Paper").select_option("")
    assert paper(page) == dark
    assert page.evaluate("localStorage.getItem('liner.scheme')") is None
    page.context.close()


def test_no_page_flashes_up_in_the_other_scheme(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    page = browser.new_context(color_scheme="light").new_page()
    page.add_init_script("localStorage.setItem('liner.scheme', 'dark')")
    # What is set when the first part of the body is read, before anything can be painted.
    page.add_init_script(
        "new MutationObserver((_, watch) => { if (document.body) {"
        " window.atFirst = document.documentElement.dataset.scheme; watch.disconnect(); } })"
        ".observe(document, { childList: true, subtree: true })"
    )
    page.goto(site[0] + WITH_NOTE)
    assert page.evaluate("atFirst") == "dark"
    page.context.close()


def test_lengths_are_told_in_bars_in_time_or_in_both(note_page: Page) -> None:
    plan = note_page.locator(".chart-form")
    parts: dict[str, Any] = {
        name: plan.locator(f".drawing-wide {name}").first
        for name in (".plan-bars", ".plan-length", ".plan-tick", ".plan-bar-tick")
    }
    parts |= {name: plan.locator(name).last for name in (".in-bars", ".in-time")}

    def shown() -> set[str]:
        return {name for name, part in parts.items() if part.is_visible()}

    assert shown() == {".plan-bars", ".plan-tick", ".in-bars", ".in-time"}
    note_page.get_by_label("Lengths").select_option("time")
    assert shown() == {".plan-length", ".plan-tick", ".in-time"}
    note_page.get_by_label("Lengths").select_option("bars")
    assert shown() == {".plan-bars", ".plan-bar-tick", ".in-bars"}
    note_page.reload()
    assert shown() == {".plan-bars", ".plan-bar-tick", ".in-bars"}


def test_sections_of_the_plan_tell_when_they_sound(note_page: Page) -> None:
    times = "(all) => all.map((e) => [e.dataset.start, e.dataset.end].map(Number))"
    for selector in (".chart-form tr[data-start]", ".drawing-wide [data-start]", ".map li"):
        sections = note_page.locator(selector).evaluate_all(times)
        assert len(sections) > 5
        assert all(start < end for start, end in sections)
        assert sections == sorted(sections)


def test_without_scripts_the_index_is_there_and_no_switch(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    context = browser.new_context(
        java_script_enabled=False, viewport={"width": 1280, "height": 900}
    )
    page = context.new_page()
    page.goto(site[0] + WITH_NOTE)
    assert page.locator(".tracks-numbered a").first.is_visible()
    assert page.locator(".plan-rows").first.is_visible()
    assert not page.get_by_label("Paper").is_visible()
    assert not page.get_by_label("Lengths").is_visible()
    context.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_print_is_black_on_white_without_controls(
    browser: Browser, site: tuple[str, list[str]], scheme: str
) -> None:
    page = open_page(browser, site[0] + WITH_NOTE, 700, scheme)
    page.get_by_label("Paper").select_option(scheme)
    page.emulate_media(media="print")
    assert paper(page) == "rgb(255, 255, 255)"
    assert page.evaluate("getComputedStyle(document.body).color") == "rgb(0, 0, 0)"
    ink = page.locator(".notation text:visible").first.evaluate("(e) => getComputedStyle(e).fill")
    assert ink == "rgb(0, 0, 0)"
    # What is found in a chart is told by buttons, which stay as its text.
    buttons = "button:not(.findings *)"
    for gone in (".control", buttons, "select", "input", ".menu", ".index", ".account", "video"):
        assert [e for e in page.locator(gone).all() if e.is_visible()] == [], gone
    assert page.locator(".drawing-wide").first.is_visible()
    page.context.close()


def test_a_print_has_every_drawing(note_page: Page) -> None:
    drawn = (
        "[...document.querySelectorAll('.drawing > svg')].filter((e) => e.checkVisibility())"
        ".map((e) => e.checkVisibility({ contentVisibilityAuto: true }))"
    )
    assert not all(note_page.evaluate(drawn))
    note_page.emulate_media(media="print")
    assert all(note_page.evaluate(drawn))


def test_forced_colours_are_kept_to(browser: Browser, site: tuple[str, list[str]]) -> None:
    context = browser.new_context(forced_colors="active", viewport={"width": 1280, "height": 900})
    page = context.new_page()
    page.goto(site[0] + WITH_NOTE)
    ink = page.evaluate("getComputedStyle(document.body).color")
    for drawn in (".plan-letter", ".notation text"):
        fill = page.locator(drawn).first.evaluate("(e) => getComputedStyle(e).fill")
        assert fill == ink, drawn
    context.close()


@pytest.mark.parametrize("width", [320, 640])
def test_all_can_be_read_on_a_small_screen_and_enlarged_twice(
    browser: Browser, site: tuple[str, list[str]], width: int
) -> None:
    # 200 % of a screen 1280 wide leaves 640 pixels of the page's own.
    context = browser.new_context(
        viewport={"width": width, "height": 450}, device_scale_factor=1280 / width
    )
    page = context.new_page()
    for address in articles(site):
        page.goto(address)
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        cut = page.evaluate(
            "[...document.querySelectorAll('h1, h2, p, dd, a')].filter((e) => e.checkVisibility()"
            " && !e.closest('.unseen, .skip, .disc, [hidden], .table-scroll, .plan-rows')"
            " && e.getBoundingClientRect().right > innerWidth + 1).map((e) => e.textContent)"
        )
        assert cut == [], address
    context.close()


def test_an_index_links_focus_is_seen_whole(note_page: Page) -> None:
    link = note_page.locator(".tracks-numbered a").first
    link.focus()
    note_page.keyboard.press("Shift+Tab")
    note_page.keyboard.press("Tab")
    left, _, top, *_ = box(note_page, ".tracks-numbered a")
    index_left, _, index_top, *_ = box(note_page, ".index")
    assert link.evaluate("(e) => getComputedStyle(e).outlineStyle") == "solid"
    assert left - 6 >= index_left
    assert top - 6 >= index_top
