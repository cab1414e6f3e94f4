"""The built demo site in a real Chromium: nothing scrolls sideways, both schemes can be read."""

import pytest
from browser.opening import open_page
from playwright.sync_api import Browser, ConsoleMessage, Page, Request

pytestmark = pytest.mark.browser

WIDTHS = [320, 360, 768, 1280]
SCHEMES = ["light", "dark"]


@pytest.mark.parametrize("width", WIDTHS)
def test_no_page_scrolls_sideways(
    browser: Browser, site: tuple[str, list[str]], width: int
) -> None:
    top, paths = site
    for path in paths:
        page = open_page(browser, top + path, width)
        wide = page.evaluate("document.documentElement.scrollWidth")
        assert wide <= width, path
        page.context.close()


def test_no_page_asks_another_host_or_logs_an_error(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    top, paths = site
    for path in paths:
        context = browser.new_context()
        page = context.new_page()
        asked: list[str] = []
        errors: list[str] = []
        _listen(page, asked, errors)
        page.goto(top + path, wait_until="load")
        assert [url for url in asked if not url.startswith((top, "data:"))] == [], path
        assert errors == [], path
        context.close()


def _listen(page: Page, asked: list[str], errors: list[str]) -> None:
    def on_request(request: Request) -> None:
        asked.append(request.url)

    def on_failure(request: Request) -> None:
        errors.append(request.url)

    def on_console(message: ConsoleMessage) -> None:
        errors.append(message.text)

    page.on("request", on_request)
    page.on("requestfailed", on_failure)
    page.on("console", on_console)


# Contrast of what is drawn against the page, as WCAG 2.2 defines it (success criteria 1.4.3 and
# 1.4.11), over every text and shape of the charts. A colour that depends on the scheme by mistake
# would be found here: black notes on a dark page have 1.1.
CONTRAST = """
() => {
  const channel = (v) => (v /= 255) <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  const parse = (text) => (text.match(/[\\d.]+/g) || []).map(Number);
  const light = ([r, g, b]) => 0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b);
  const ratio = (a, b) => {
    const [x, y] = [light(a), light(b)].sort((p, q) => q - p);
    return (x + 0.05) / (y + 0.05);
  };
  const paper = parse(getComputedStyle(document.body).backgroundColor);
  const found = [];
  const drawn = "text, path, use, ellipse".split(", ").map((s) => `svg.notation ${s}`).join();
  for (const node of document.querySelectorAll(drawn)) {
    if (node.closest("defs") || !node.getClientRects().length) continue;
    const style = getComputedStyle(node);
    const colour = style.fill !== "none" ? style.fill : style.stroke;
    if (colour === "none" || parse(colour)[3] === 0) continue;
    found.push(ratio(parse(colour), paper));
  }
  return found;
}
"""


@pytest.mark.parametrize("scheme", SCHEMES)
def test_notation_stands_out_from_the_paper(
    browser: Browser, site: tuple[str, list[str]], scheme: str
) -> None:
    top, paths = site
    measured = 0
    for path in (path for path in paths if path.startswith("breakdowns/")):
        page = open_page(browser, top + path, 1280, scheme)
        ratios = page.evaluate(CONTRAST)
        measured += len(ratios)
        assert min(ratios, default=21) >= 4.5, path
        page.context.close()
    assert measured > 100


def test_the_contrast_check_sees_black_on_dark(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    top, paths = site
    path = next(path for path in paths if path.startswith("breakdowns/"))
    page = open_page(browser, top + path, 1280, "dark")
    page.add_style_tag(content="svg.notation, svg.notation * { fill: #000 !important; }")
    assert min(page.evaluate(CONTRAST)) < 3
    page.context.close()


def test_every_link_can_be_reached_by_keyboard_and_shows_focus(
    browser: Browser, site: tuple[str, list[str]]
) -> None:
    top, paths = site
    path = next(path for path in paths if path.startswith("breakdowns/"))
    page = open_page(browser, top + path, 1280)
    stops = page.evaluate(
        "document.querySelectorAll('a[href], summary, button, input, select, [tabindex]').length"
    )
    seen = set()
    for _ in range(stops + 5):
        page.keyboard.press("Tab")
        seen.add(
            page.evaluate(
                "[...document.querySelectorAll('a[href], summary')]"
                ".indexOf(document.activeElement)"
            )
        )
        outline = page.evaluate(
            "document.activeElement === document.body ? 'solid' :"
            " getComputedStyle(document.activeElement).outlineStyle"
        )
        assert outline != "none"
    visible = page.evaluate(
        "[...document.querySelectorAll('a[href], summary')]"
        ".map((e, n) => e.checkVisibility() && e.getClientRects().length ? n : -1)"
        ".filter((n) => n >= 0)"
    )
    assert set(visible) <= seen
    page.context.close()
