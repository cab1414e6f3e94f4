"""Lists that scripts write keep names apart from the words around them, as the pages do."""

from collections.abc import Iterator
from dataclasses import replace

import pytest
from browser.archive_site import drawn_archive, served_archive
from browser.opening import open_page
from msgspec import structs
from playwright.sync_api import Browser, Page, expect
from unit.finding.drawn import draw_entries
from unit.pages.loose_names import NAME, loose

from sitegen.finding import ChartEntry, Entry
from sitegen.site.listing import Listed

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def top(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Serve an archive in which everything that has a name has one from right to left."""
    entries = draw_entries(2, 12)
    articles = tuple(
        _renamed(one, entry) for one, entry in zip(drawn_archive(5, 12), entries, strict=True)
    )
    with served_archive(tmp_path_factory.mktemp("foreign"), articles) as address:
        yield address


def _renamed(one: Listed, entry: Entry) -> Listed:
    song = replace(one.front.song, title=NAME, artist=NAME, tuning=NAME)
    front = replace(one.front, title=NAME, song=song, topics=(NAME,))
    return replace(one, front=front, entry=Entry(tuple(map(_entitled, entry.charts))))


def _entitled(chart: ChartEntry) -> ChartEntry:
    lines = tuple(structs.replace(line, part=NAME) for line in chart.melodies)
    return structs.replace(chart, title=NAME, tunings=(NAME,), melodies=lines)


@pytest.mark.parametrize(
    ("form", "name", "asked"),
    [("chords", "chords", "C F"), ("tune", "tune", "up down up"), ("beat", "feel", "straight")],
)
def test_passages_keep_names_apart(
    browser: Browser, top: str, form: str, name: str, asked: str
) -> None:
    page = open_page(browser, f"{top}find/index.html", 1280)
    page.wait_for_selector("html[data-finding]", state="attached")
    page.evaluate(
        "([form, name, text]) => {"
        " const asked = document.getElementById(form);"
        " asked.elements.namedItem(name).value = text; asked.requestSubmit(); }",
        [f"{form}_form", name, asked],
    )
    found = page.locator(f"#{form}_found > li")
    expect(found.first).to_be_visible()
    assert NAME in found.first.inner_text()
    assert loose(page.content()) == []
    page.context.close()


def test_the_archive_keeps_names_apart(browser: Browser, top: str) -> None:
    page = open_page(browser, f"{top}index.html?words={NAME.split()[0]}", 1280)
    page.wait_for_selector("html[data-filing]", state="attached")
    expect(page.locator(".matches .record").first).to_be_visible()
    _open_all(page)
    page.locator(".facet button", has_text=NAME).first.click()
    expect(page.locator(".facet-chosen button", has_text=NAME).first).to_be_visible()
    assert page.locator(".matches .record", has_text=NAME).count() > 0
    assert loose(page.content()) == []
    page.context.close()


def _open_all(page: Page) -> None:
    page.eval_on_selector_all(".facets details", "all => all.forEach((one) => (one.open = true))")
