"""A page of the preview in a real browser: it follows each save, keeps its place, tells faults."""

import os
import re
import shutil
import subprocess
import sys
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest
from browser.checkers import checker
from browser.opening import open_page
from browser.test_axe import LOOKED_AT, findings, told
from playwright.sync_api import Browser, Page, expect

from sitegen.diagnostics import draw_frame
from sitegen.kinds import KINDS
from sitegen.site.content import scan_content
from sitegen.site.study import study_file

pytestmark = pytest.mark.browser

CHECKOUT = Path(__file__).parents[2]
SLUG = "one-stair-short"
PATIENCE = 120_000
"""Milliseconds after which a test gives up waiting for something that should come at once."""


@pytest.fixture(scope="module")
def content(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("preview") / "content"
    shutil.copytree(CHECKOUT / "content", folder)
    return folder


@pytest.fixture(scope="module")
def address(content: Path) -> Iterator[str]:
    """Run the preview of a copy of the demo site, and give its address."""
    line = [sys.executable, "-m", "sitegen", "preview", str(content), "--port", "0"]
    cache = {"PYTHONUNBUFFERED": "1", "XDG_CACHE_HOME": str(content.parent / "cache")}
    with subprocess.Popen(
        line, cwd=CHECKOUT, env=os.environ | cache, stdout=subprocess.PIPE, text=True
    ) as process:
        assert process.stdout is not None
        found = re.search(r"http://\S+", process.stdout.readline())
        assert found is not None
        # The first page waits for its process to start; no test is about that.
        with urllib.request.urlopen(  # noqa: S310 - our own server
            f"{found[0]}breakdowns/{SLUG}/", timeout=PATIENCE / 1000
        ) as page:
            assert page.status == 200
        yield found[0]
        process.terminate()


@pytest.fixture
def article(content: Path) -> Iterator[Path]:
    """Return the file of a write-up, which is as it was after the test."""
    path = content / "breakdowns" / SLUG / "article.md"
    text = path.read_text(encoding="utf-8")
    yield path
    path.write_text(text, encoding="utf-8")


@pytest.fixture(params=["light", "dark"])
def scheme(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture
def page(browser: Browser, address: str, article: Path) -> Iterator[Page]:
    page = opened(browser, address, 1280)
    assert article.is_file()
    yield page
    page.context.close()


def opened(browser: Browser, address: str, width: int, scheme: str = "light") -> Page:
    page = open_page(browser, f"{address}breakdowns/{SLUG}/", width, scheme)
    page.set_default_timeout(PATIENCE)
    page.wait_for_selector("html[data-previewed]", state="attached")
    return page


def spoil(article: Path) -> list[str]:
    """Put a fault into a write-up, and return the frames that the command line has for it."""
    text = article.read_text(encoding="utf-8")
    article.write_text(text.replace("```form", "```frm", 1), encoding="utf-8")
    file = next(f for f in scan_content(article.parents[2]).articles if f.slug == SLUG)
    found = study_file(file, KINDS).diagnostics
    return [draw_frame(one) for one in found if one.is_error]


def test_a_save_refreshes_the_page_at_its_place(page: Page, article: Path) -> None:
    chart = page.locator("figure[id]").nth(3)
    mark = chart.get_attribute("id")
    page.locator(f"#{mark}").evaluate("(node) => node.scrollIntoView({behavior: 'instant'})")
    page.locator(f"#{mark} details").first.evaluate("(node) => { node.open = true; }")
    before = page.locator(f"#{mark}").evaluate("(node) => node.getBoundingClientRect().top")
    height = page.evaluate("scrollY")
    text = article.read_text(encoding="utf-8")
    new = "A sentence that was not here.\n\nAnother one.\n\n"
    article.write_text(text.replace("```form", f"{new}```form", 1), encoding="utf-8")
    page.get_by_text("A sentence that was not here.").wait_for(state="attached")
    page.wait_for_selector("html[data-previewed]", state="attached")
    page.wait_for_load_state("load")
    page.wait_for_selector("html[data-enhanced]", state="attached")
    page.evaluate("document.fonts.ready")

    after = page.locator(f"#{mark}").evaluate("(node) => node.getBoundingClientRect().top")
    assert height > 500
    assert abs(after - before) < 2
    assert page.evaluate("scrollY") > height
    assert page.locator(f"#{mark} details").first.evaluate("(node) => node.open")


def test_a_fault_stands_over_the_page_until_it_is_mended(page: Page, article: Path) -> None:
    good = article.read_text(encoding="utf-8")
    heading = page.locator("h1").inner_text()
    region = page.get_by_role("region", name="Faults in this page")
    expect(region).to_have_count(0)
    frames = spoil(article)
    expect(region).to_be_visible(timeout=PATIENCE)
    shown = [text.removesuffix("\n") for text in region.locator(".frame").all_text_contents()]

    assert frames
    assert shown == frames
    assert f"{SLUG}/article.md:" in shown[0]
    assert page.locator("h1").inner_text() == heading
    article.write_text(good, encoding="utf-8")
    expect(region).to_have_count(0, timeout=PATIENCE)


def test_the_keyboard_puts_faults_away_and_brings_them_back(page: Page, article: Path) -> None:
    spoil(article)
    region = page.get_by_role("region", name="Faults in this page")
    frames = region.get_by_role("group", name="What is wrong, and where")
    expect(frames).to_be_visible(timeout=PATIENCE)
    assert region.get_by_role("alert").inner_text() == "1 fault"
    region.get_by_role("button", name="Hide").focus()
    page.keyboard.press("Enter")
    expect(frames).to_be_hidden()
    show = region.get_by_role("button", name="Show")
    expect(show).to_be_focused()
    expect(show).to_have_attribute("aria-expanded", "false")
    page.keyboard.press("Space")
    expect(frames).to_be_visible()
    page.keyboard.press("Escape")
    expect(frames).to_be_hidden()


def test_warnings_are_a_strip_that_opens(page: Page, article: Path) -> None:
    text = article.read_text(encoding="utf-8")
    article.write_text(f"{text}\n# As large as the title\n", encoding="utf-8")
    region = page.get_by_role("region", name="Warnings and notes")
    expect(region).to_be_visible(timeout=PATIENCE)
    frame = region.locator(".frame").filter(has_text="heading-level")
    expect(frame).to_be_hidden()
    region.locator("summary").press("Enter")
    expect(frame).to_be_visible()
    expect(page.get_by_role("region", name="Faults in this page")).to_have_count(0)


@pytest.mark.parametrize("width", [320, 1280])
def test_faults_can_be_read_and_axe_finds_nothing(
    browser: Browser, address: str, article: Path, width: int, scheme: str
) -> None:
    checker("axe-core", "axe.min.js")
    page = opened(browser, address, width, scheme)
    text = article.read_text(encoding="utf-8")
    article.write_text(f"{text}\n# As large as the title\n", encoding="utf-8")
    spoil(article)
    region = page.get_by_role("region", name="Faults in this page")
    expect(region).to_be_visible(timeout=PATIENCE)
    expect(page.get_by_role("region", name="Warnings and notes")).to_be_visible()
    found = findings(page)

    assert told(found["violations"]) == []
    left = [result for result in found["incomplete"] if result["id"] not in LOOKED_AT]
    assert told(left) == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    for line in region.locator(".said").all():
        assert line.evaluate("(node) => node.scrollWidth <= node.clientWidth")
    assert region.bounding_box()["width"] <= width  # type: ignore[index]
    page.context.close()


def test_what_was_never_good_is_a_bare_page_with_its_faults(
    browser: Browser, address: str, content: Path
) -> None:
    folder = content / "breakdowns" / "half-written"
    folder.mkdir()
    path = folder / "article.md"
    path.write_text("---\ntitle: [\n---\n", encoding="utf-8")
    page = browser.new_page()
    page.set_default_timeout(PATIENCE)
    page.goto(f"{address}breakdowns/half-written/")
    expect(page.locator("h1")).to_have_text("This page could not be made yet")
    expect(page.get_by_role("region", name="Faults in this page")).to_be_visible(timeout=PATIENCE)
    path.write_text("---\ntitle: Half written\nstatus: draft\n---\n\nAt last.\n", encoding="utf-8")
    expect(page.locator("h1")).to_contain_text("Half written", timeout=PATIENCE)
    shutil.rmtree(folder)
    expect(page.locator("h1")).not_to_contain_text("Half written", timeout=PATIENCE)
    page.close()
