"""Switching rows off and seeing a chart two ways: at once, by keyboard, kept, and in a link."""

from collections.abc import Iterator

import pytest
from browser.opening import open_page
from playwright.sync_api import Browser, Page, Route, expect

pytestmark = pytest.mark.browser

COAT = "breakdowns/borrowed-coat/"
CAPO = "#chart-capo-figure"


@pytest.fixture
def page(browser: Browser, site: tuple[str, list[str]]) -> Iterator[Page]:
    page = open_page(browser, site[0] + COAT, 1280)
    yield page
    page.context.close()


def shows(page: Page, names: str) -> set[str]:
    """Return the visibilities of all elements of that name."""
    return set(
        page.evaluate(
            "(names) => [...document.querySelectorAll(names)]"
            ".map((node) => getComputedStyle(node).visibility)",
            names,
        )
    )


def asked(page: Page) -> str:
    return str(page.evaluate("new URLSearchParams(location.search).get('show') ?? ''"))


def chords(page: Page) -> list[str]:
    """Return the chord names over the wide drawing of the capo figure."""
    drawing = page.locator(f"{CAPO} .drawing-wide .harm:not(.degree)")
    return [text.replace("\uea64", "♭") for text in drawing.all_text_contents()]


def way(page: Page, text: str) -> None:
    page.locator(CAPO).get_by_role("radio", name=text).check()


@pytest.mark.parametrize(
    ("name", "row"),
    [
        ("degrees", ".notation .degree"),
        ("roles of notes", ".notation .bracket"),
        ("numerals", ".changes-roman"),
    ],
)
def test_each_row_goes_and_comes_back_and_nothing_moves(page: Page, name: str, row: str) -> None:
    height = page.evaluate("document.documentElement.scrollHeight")
    box = page.get_by_role("checkbox", name=name)
    assert shows(page, row) == {"visible"}
    box.uncheck()
    assert shows(page, row) == {"hidden"}
    assert page.evaluate("document.documentElement.scrollHeight") == height
    box.check()
    assert shows(page, row) == {"visible"}


def test_without_roles_all_degrees_are_lettered_alike(page: Page) -> None:
    looks = """() => new Set([...document.querySelectorAll(".notation .degree text")]
      .map((node) => getComputedStyle(node).fontStyle + getComputedStyle(node).fill)).size"""
    assert page.evaluate(looks) > 1
    page.get_by_role("checkbox", name="roles of notes").uncheck()
    assert page.evaluate(looks) == 1


def test_without_degrees_there_are_no_roles_to_switch(page: Page) -> None:
    page.get_by_role("checkbox", name="degrees").uncheck()
    expect(page.get_by_role("checkbox", name="roles of notes")).to_be_disabled()
    page.get_by_role("checkbox", name="degrees").check()
    expect(page.get_by_role("checkbox", name="roles of notes")).to_be_enabled()


def test_the_switches_work_without_scripts(browser: Browser, site: tuple[str, list[str]]) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(site[0] + COAT)
    page.get_by_role("checkbox", name="degrees").uncheck()
    expect(page.locator(f"{CAPO} .drawing-wide .degree").first).to_be_hidden()
    context.close()


def test_a_choice_is_in_the_address_and_a_link_keeps_it(browser: Browser, page: Page) -> None:
    assert asked(page) == ""
    page.get_by_role("checkbox", name="degrees").uncheck()
    assert asked(page) == "roles numerals"
    other = open_page(browser, page.url, 1280)
    expect(other.get_by_role("checkbox", name="degrees")).not_to_be_checked()
    assert shows(other, ".notation .degree") == {"hidden"}
    other.context.close()


def test_a_choice_is_remembered_on_the_device(page: Page, site: tuple[str, list[str]]) -> None:
    for name in ("numerals", "roles of notes", "degrees"):
        page.get_by_role("checkbox", name=name).uncheck()
    assert asked(page) == "plain"
    page.goto(f"{site[0]}breakdowns/one-stair-short/")
    expect(page.get_by_role("checkbox", name="numerals")).not_to_be_checked()
    assert asked(page) == "plain"


@pytest.mark.parametrize(
    ("kept", "asked_for", "hidden"),
    [
        ("plain", "", {".notation .degree", ".notation .bracket", ".changes-roman"}),
        ("degrees roles", "", {".changes-roman"}),
        ("plain", "?show=degrees+roles+numerals", set()),
        ("", "?show=degrees+numerals+fingered", {".notation .bracket"}),
        ("", "", set()),
    ],
)
def test_what_is_off_is_never_painted(
    browser: Browser, site: tuple[str, list[str]], kept: str, asked_for: str, hidden: set[str]
) -> None:
    """The modules that set the switches never come: what is seen is the first paint."""
    page = browser.new_context().new_page()
    if kept:
        page.add_init_script(f"localStorage.setItem('liner.show', '{kept}')")
    page.route("**/page.js", lambda route: route.abort())
    page.goto(site[0] + COAT + asked_for, wait_until="load")
    for row in (".notation .degree", ".notation .bracket", ".changes-roman"):
        assert shows(page, row) == {"hidden" if row in hidden else "visible"}, row
    page.context.close()


def test_an_address_goes_before_what_is_remembered(
    page: Page, site: tuple[str, list[str]]
) -> None:
    page.get_by_role("checkbox", name="numerals").uncheck()
    page.goto(f"{site[0]}{COAT}?show=degrees+roles+numerals#chart-chorus")
    expect(page.get_by_role("checkbox", name="numerals")).to_be_checked()
    assert page.url.endswith("#chart-chorus")


def test_the_shapes_under_the_capo_are_shown_with_names_key_and_staff(page: Page) -> None:
    # What the write-up's own table says of the shapes under the fingers.
    assert chords(page) == ["E♭", "G7/D", "Cm", "E♭7/B♭"]
    heights = """() => [...document.querySelectorAll("#chart-capo-figure .drawing-wide .note use")]
      .map((head) => head.getAttribute("y"))"""
    sounding = page.evaluate(heights)
    way(page, "as fingered")
    expect(page.locator(f"{CAPO} .ways p")).to_contain_text("guitar in C major")
    assert chords(page) == ["C", "E7/B", "Am", "C7/G"]
    assert page.evaluate(heights) != sounding
    assert asked(page) == "degrees roles numerals fingered"
    way(page, "as it sounds")
    assert chords(page) == ["E♭", "G7/D", "Cm", "E♭7/B♭"]
    assert page.evaluate(heights) == sounding


def test_the_room_of_a_drawing_out_of_view_goes_with_the_way(page: Page) -> None:
    way(page, "as fingered")
    expect(page.locator(f"{CAPO} .ways p")).to_contain_text("fingered")
    page.evaluate("scrollTo({ top: 0, behavior: 'instant' })")
    page.wait_for_function(
        f"!document.querySelector('{CAPO} .drawing-wide > svg')"
        ".checkVisibility({ contentVisibilityAuto: true })"
    )
    drawing = page.locator(f"{CAPO} .drawing-wide")
    kept, drawn = drawing.evaluate(
        """(drawing) => {
          const height = () => drawing.getBoundingClientRect().height;
          const kept = height();
          drawing.style.contentVisibility = "visible";
          return [kept, height()];
        }"""
    )
    assert kept == pytest.approx(drawn, abs=0.1)


def test_the_second_drawing_finds_all_its_glyphs_and_doubles_no_id(page: Page) -> None:
    way(page, "as fingered")
    expect(page.locator(f"{CAPO} .ways p")).to_contain_text("fingered")
    lost = page.evaluate(
        "[...document.querySelectorAll('#chart-capo-figure use')]"
        ".filter((use) => !document.querySelector(use.getAttribute('href'))).length"
    )
    doubled = page.evaluate(
        "(() => { const ids = [...document.querySelectorAll('[id]')].map((node) => node.id);"
        " return ids.length - new Set(ids).size; })()"
    )
    assert (lost, doubled) == (0, 0)


def test_a_link_opens_the_chart_as_fingered_wide_and_narrow(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    page = open_page(browser, f"{site[0]}{COAT}?show=degrees+fingered", 360)
    expect(page.locator(CAPO).get_by_role("radio", name="as fingered")).to_be_checked()
    narrow = page.locator(f"{CAPO} .drawing-narrow .harm:not(.degree)")
    expect(narrow.first).to_have_text("C")
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    page.context.close()


def test_the_way_is_chosen_by_keyboard(page: Page) -> None:
    page.locator(CAPO).get_by_role("radio", name="as it sounds").focus()
    page.keyboard.press("ArrowRight")
    expect(page.locator(CAPO).get_by_role("radio", name="as fingered")).to_be_checked()
    expect(page.locator(f"{CAPO} .drawing-wide .harm").first).to_have_text("C")


def test_all_charts_of_the_page_go_the_same_way_and_only_one_speaks(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    page = open_page(browser, f"{site[0]}breakdowns/rust-calendar/", 1280)
    page.locator("#chart-opening").get_by_role("radio", name="as fingered").check()
    told = page.locator(".ways p")
    expect(told.filter(has_text="Shown as fingered")).to_have_count(3)
    expect(page.locator(".ways p[role=status]")).to_have_count(1)
    page.context.close()


def test_nothing_is_fetched_before_the_reader_asks(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    context = browser.new_context()
    page = context.new_page()
    addresses: list[str] = []
    page.on("request", lambda request: addresses.append(request.url))
    page.goto(site[0] + COAT, wait_until="networkidle")
    assert [url for url in addresses if "fingered" in url] == []
    way(page, "as fingered")
    expect(page.locator(f"{CAPO} .ways p")).to_contain_text("fingered")
    assert sorted(url.rpartition("/")[2] for url in addresses if "fingered" in url) == [
        "chart-capo-figure-fingered-narrow.svg",
        "chart-capo-figure-fingered.svg",
    ]
    context.close()


def test_a_drawing_that_cannot_be_fetched_is_told_kindly_and_can_be_tried_again(
    page: Page,
) -> None:
    def refuse(route: Route) -> None:
        route.fulfill(status=503, body="busy")

    page.route("**/*fingered*.svg", refuse)
    page.locator(CAPO).get_by_role("radio", name="as fingered").click()
    status = page.locator(f"{CAPO} .ways p")
    expect(status).to_contain_text("could not be fetched")
    expect(status.get_by_role("link")).to_be_visible()
    expect(page.locator(CAPO).get_by_role("radio", name="as it sounds")).to_be_checked()
    assert chords(page)[0] == "E♭"
    page.unroute("**/*fingered*.svg")
    page.locator(CAPO).get_by_role("radio", name="as fingered").click()
    expect(page.locator(f"{CAPO} .drawing-wide .harm").first).to_have_text("C")


def test_without_scripts_a_link_leads_to_the_drawing(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(site[0] + COAT)
    page.locator(f"{CAPO} .ways a").click()
    assert page.url.endswith("chart-capo-figure-fingered.svg")
    expect(page.locator("svg.notation .harm").first).to_have_text("C")
    context.close()
