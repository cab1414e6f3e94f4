"""Findings point at their bars: by pointer, by keyboard, by a press; in staff and in changes."""

from collections.abc import Iterator

import pytest
from browser.opening import open_page
from playwright.sync_api import Browser, Locator, Page, expect

pytestmark = pytest.mark.browser

COAT = "breakdowns/borrowed-coat/"
MELODY, CHANGES, CAPO = "#chart-verse-melody", "#chart-verse-changes", "#chart-capo-figure"


@pytest.fixture
def page(browser: Browser, site: tuple[str, list[str]]) -> Iterator[Page]:
    page = open_page(browser, site[0] + COAT, 1280)
    expect(page.locator("button.finding").first).to_be_visible()
    yield page
    page.context.close()


def finding(page: Page, chart: str, text: str) -> Locator:
    return page.locator(chart).get_by_role("button", name=text)


def covered(page: Page, chart: str, mark: str, target: str) -> bool:
    """Tell whether a mark lies around the middle of what it is to mark."""
    return bool(
        page.evaluate(
            """([mark, target]) => {
              const box = document.querySelector(mark).getBoundingClientRect();
              const aim = document.querySelector(target).getBoundingClientRect();
              const [x, y] = [(aim.left + aim.right) / 2, (aim.top + aim.bottom) / 2];
              return box.left < x && x < box.right && box.top < y && y < box.bottom;
            }""",
            [f"{chart} {mark}", target],
        )
    )


def marks(page: Page, chart: str) -> tuple[int, int]:
    """Return how many brackets and rings there are."""
    return (
        page.locator(f"{chart} .pointer path").count(),
        page.locator(f"{chart} .pointer ellipse").count(),
    )


def test_the_pointer_marks_bars_and_notes_as_long_as_it_stays(page: Page) -> None:
    finding(page, MELODY, "leaves E♭ major twice").hover()
    expect(page.locator(f"{MELODY} .pointer")).to_have_count(1)
    assert marks(page, MELODY) == (2, 2)
    head = "#chart-verse-melody-voice-4-1 use[href^='#g-E0']"
    assert covered(page, MELODY, ".pointer ellipse", head)
    assert covered(page, MELODY, ".pointer path", "#chart-verse-melody-bar-4 > path")
    page.mouse.move(0, 0)
    expect(page.locator(f"{MELODY} .pointer")).to_have_count(0)


def test_a_chart_that_is_out_of_view_is_marked_where_it_will_be_seen(page: Page) -> None:
    button = finding(page, MELODY, "leaves E♭ major twice")
    button.evaluate("(e) => e.focus({ preventScroll: true })")
    expect(page.locator(f"{MELODY} .pointer")).to_have_count(1)
    svg = page.locator(f"{MELODY} .drawing-wide > svg")
    assert not svg.evaluate("(e) => e.checkVisibility({ contentVisibilityAuto: true })")
    assert marks(page, MELODY) == (2, 2)
    svg.scroll_into_view_if_needed()
    assert covered(
        page, MELODY, ".pointer ellipse", "#chart-verse-melody-voice-4-1 use[href^='#g-E0']"
    )


def test_the_keyboard_marks_them_too_and_the_state_is_told(page: Page) -> None:
    button = finding(page, MELODY, "highest note")
    button.focus()
    expect(page.locator(f"{MELODY} .pointer ellipse")).to_have_count(1)
    page.keyboard.press("Enter")
    expect(button).to_have_attribute("aria-pressed", "true")
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    page.locator("h1").click()
    expect(page.locator(f"{MELODY} .pointer ellipse")).to_have_count(1)
    button.focus()
    page.keyboard.press("Space")
    expect(button).to_have_attribute("aria-pressed", "false")


def test_one_finding_of_a_chart_is_pressed_at_a_time(page: Page) -> None:
    first, second = (finding(page, MELODY, text) for text in ("leaves E♭", "highest note"))
    first.click()
    second.click()
    expect(first).to_have_attribute("aria-pressed", "false")
    expect(second).to_have_attribute("aria-pressed", "true")


def test_bars_side_by_side_have_one_bracket_a_line(page: Page) -> None:
    finding(page, MELODY, "Bars 3 to 8").hover()
    expect(page.locator(f"{MELODY} .pointer path")).to_have_count(2)


def test_one_note_of_a_chord_is_ringed_on_the_staff_and_in_the_tablature(page: Page) -> None:
    finding(page, CAPO, "stays on top").hover()
    expect(page.locator(f"{CAPO} .pointer ellipse")).to_have_count(8)


def test_the_bars_of_changes_are_marked_and_not_by_colour_alone(page: Page) -> None:
    finding(page, CHANGES, "Borrowed").hover()
    bars = page.locator(f"{CHANGES} [data-pointed]")
    expect(bars).to_have_count(1)
    expect(bars).to_contain_text("Bar 6")
    assert bars.evaluate("(bar) => getComputedStyle(bar).outlineStyle") == "solid"


def test_marks_stay_where_they_belong_when_the_page_gets_narrow_or_the_names_change(
    page: Page,
) -> None:
    finding(page, CAPO, "stays on top").click()
    page.set_viewport_size({"width": 360, "height": 800})
    expect(page.locator(f"{CAPO} .drawing-narrow .pointer ellipse")).to_have_count(8)
    page.locator(CAPO).get_by_role("radio", name="as fingered").check()
    expect(page.locator(f"{CAPO} .drawing-narrow .harm").first).to_have_text("C")
    expect(page.locator(f"{CAPO} .drawing-narrow .pointer ellipse")).to_have_count(8)


def test_every_finding_of_the_site_finds_all_that_it_names(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    """No bar and no note of a finding is missing in the drawing it stands under."""
    top, paths = site
    looked = 0
    for path in (path for path in paths if path.startswith("breakdowns/")):
        page = open_page(browser, top + path, 1280)
        lost = page.evaluate(
            """() => [...document.querySelectorAll(".findings li[data-bars]")].flatMap((item) => {
              const figure = item.closest("figure");
              const has = (id) => document.getElementById(`${figure.id}-${id}`);
              if (!figure.querySelector("svg.notation")) return [];
              const bars = item.dataset.bars.split(" ").filter((bar) => !has(`bar-${bar}`));
              const notes = (item.dataset.notes ?? "").split(" ").filter(Boolean);
              return [...bars, ...notes.filter((note) => !has(note))];
            })"""
        )
        assert lost == [], path
        looked += page.locator(".findings li[data-bars]").count()
        page.context.close()
    assert looked > 10


def test_nothing_moves_when_the_findings_become_buttons(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    """The lists are as tall without scripts as with them."""
    heights = "[...document.querySelectorAll('.findings')].map((list) => list.offsetHeight)"
    found = []
    for scripts in (True, False):
        page = open_page(browser, site[0] + COAT, 360)
        if not scripts:
            page.route("**/*.js", lambda route: route.abort())
            page.reload(wait_until="load")
        else:
            expect(page.locator("button.finding").first).to_be_visible()
        found.append(page.evaluate(heights))
        page.context.close()
    assert found[0] == found[1]
    assert len(found[0]) > 3


def test_figures_of_numerals_are_raised_with_scripts_and_without(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    for scripts in (True, False):
        context = browser.new_context(java_script_enabled=scripts)
        page = context.new_page()
        page.goto(site[0] + COAT)
        told = page.locator(f"{CHANGES} .finding", has_text="Applied dominants")
        if scripts:
            expect(page.locator(f"{CHANGES} button.finding").first).to_be_visible()
            expect(page.get_by_role("button", name="G7/D (V43/vi) to Cm").first).to_be_visible()
        assert told.locator("sup").all_text_contents() == ["7", "43", "7", "43", *"777"]
        context.close()


def test_without_scripts_findings_are_sentences(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(site[0] + COAT)
    expect(page.locator(f"{MELODY} .findings li").first).to_contain_text("in bar 4")
    expect(page.locator(".findings button")).to_have_count(0)
    context.close()
