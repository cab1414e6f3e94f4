"""The archive's facets combine in a browser as a plain search combines them, and can be used."""

import json
from collections.abc import Iterator
from pathlib import Path
from random import Random
from typing import Any
from urllib.parse import urlencode

import pytest
from browser.archive_site import drawn_archive, served_archive
from browser.modules import run, scripts_of
from browser.opening import open_page
from browser.test_axe import LOOKED_AT, findings, told
from playwright.sync_api import Browser, Page, expect
from unit.finding.drawn_archive import Asked, slow_search, tell

from sitegen.finding.facet_addresses import identity
from sitegen.finding.filing import FiledFacet, file_write_ups
from sitegen.site.listing import Listed

pytestmark = pytest.mark.browser

COUNT, COMBINATIONS = 240, 200
SIGN_SHIFT = 0.001
ARTICLES = drawn_archive(seed=21, count=COUNT)
_ROWS = [(one.front, one.entry) for one in ARTICLES]
ROWS, FILED = tell(_ROWS), file_write_ups(_ROWS)
FILTER = """async (folder, index, names, titles, searches) => {
  const { filter, folded, read, readFacet, withWords } = await import(folder + "/facet-filter.js");
  const facets = [...index.facets, ...names].map(readFacet);
  const archive = { ...index, facets: new Map(facets.map((facet) => [facet.id, facet])) };
  const plain = titles.map(folded);
  return searches.map((search) => {
    const asked = read(search, archive.facets.keys());
    const { found, counts } = filter(archive, asked, asked.words && withWords(plain, asked.words));
    return [found, Object.fromEntries(facets.map(({ id }) => [id, counts(id)]))];
  });
}"""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("archive")


@pytest.fixture(scope="module")
def top(folder: Path) -> Iterator[str]:
    with served_archive(folder, ARTICLES) as address:
        yield address


@pytest.fixture
def page(browser: Browser, top: str) -> Iterator[Page]:
    page = opened(browser, f"{top}index.html")
    yield page
    page.context.close()


def opened(browser: Browser, address: str, width: int = 1280, scheme: str = "light") -> Page:
    page = open_page(browser, address, width, scheme)
    page.wait_for_selector("html[data-filing]", state="attached")
    return page


def shown(page: Page) -> list[str]:
    """Return the titles of what is listed."""
    return page.locator(".record:visible h3").all_inner_texts()


def say(page: Page, text: str) -> None:
    """Wait until the page says how many write-ups were found."""
    expect(page.locator(".facet-chosen p")).to_have_text(text)


def counted(numbers: list[int]) -> str:
    all_ = "1 write-up" if len(numbers) == 1 else f"{len(numbers)} write-ups"
    pages = -(-len(numbers) // 24)
    if not numbers:
        return "No write-up has all of this."
    return all_ if pages == 1 else f"{all_}, page 1 of {pages}"


def titles(numbers: list[int]) -> list[str]:
    return [ARTICLES[number].front.title for number in numbers[:24]]


def facet(name: str) -> FiledFacet:
    return next(one for one in FILED if one.facet.id == name)


def draw(lot: Random) -> tuple[str, Asked]:
    """Return the query of an address, and what it asks for."""
    chosen: dict[str, frozenset[str]] = {}
    pairs: list[tuple[str, str]] = []
    fields = [one for one in FILED if one.facet.id != "tempo"]
    for filed in lot.sample(fields, lot.choice([0, 1, 1, 2, 2, 3])):
        values = lot.sample(filed.values, min(lot.choice([1, 2, 4]), len(filed.values)))
        chosen[filed.facet.id] = frozenset(identity(value.words) for value in values)
        pairs += [(filed.facet.id, value.address) for value in values]
    tempo: tuple[int | None, int | None] = (None, None)
    if lot.random() < 0.4:
        tempo = (lot.choice([None, 48, 60, 90]), lot.choice([None, 89, 90, 109, 180]))
        pairs.append(("tempo", "..".join(str(end or "") for end in tempo)))
    words = lot.choice(["", "", "ledger", "eclair", "ÉCLAIR 1", "Eb", "E♭", "c♯ hale", "2 zoe"])
    pairs += [("words", words)] if words else []
    return f"?{urlencode(pairs)}", Asked(chosen, tempo, words)


def without(asked: Asked, name: str) -> Asked:
    """Return what is asked for beside one facet."""
    chosen = {key: values for key, values in asked.chosen.items() if key != name}
    return Asked(chosen, (None, None) if name == "tempo" else asked.tempo, asked.words)


def slow_counts(asked: Asked) -> dict[str, list[int]]:
    counts = {}
    for filed in FILED:
        rest = set(slow_search(ROWS, without(asked, filed.facet.id)))
        counts[filed.facet.id] = [len(rest & set(value.numbers)) for value in filed.values]
    return counts


def test_facets_combine_as_a_plain_search_combines_them(
    page: Page, top: str, folder: Path
) -> None:
    lot = Random(77)  # noqa: S311 - no secret
    drawn = [draw(lot) for _ in range(COMBINATIONS)]
    index, names, told_titles = (
        json.loads((folder / "shelf" / name).read_text("utf-8"))
        for name in ("facets.json", "facets-names.json", "titles.json")
    )
    searches = [search for search, _ in drawn]
    found: list[Any] = run(page, FILTER, scripts_of(folder), index, names, told_titles, searches)
    some = 0
    for (search, asked), (numbers, counts) in zip(drawn, found, strict=True):
        expected = slow_search(ROWS, asked)
        assert numbers == expected, search
        assert counts == slow_counts(asked), search
        some += 0 < len(expected) < COUNT
    assert some > COMBINATIONS / 3
    assert top


@pytest.mark.parametrize("seed", range(6))
def test_an_address_shows_what_it_asks_for(browser: Browser, top: str, seed: int) -> None:
    search, asked = draw(Random(100 + seed))  # noqa: S311 - no secret
    numbers = slow_search(ROWS, asked)
    page = opened(browser, f"{top}index.html{search}")
    if asked == Asked():
        assert len(shown(page)) == 48
    else:
        say(page, counted(numbers))
        assert shown(page) == titles(numbers)
    page.context.close()


def test_pressed_values_combine_and_the_back_button_takes_them_back(page: Page) -> None:
    minor = slow_search(ROWS, Asked({"mode": frozenset({"minor"})}))
    both = slow_search(ROWS, Asked({"mode": frozenset({"minor"}), "meter": frozenset({"7/8"})}))
    newest = shown(page)
    page.get_by_role("button", name="minor", exact=True).click()
    say(page, counted(minor))
    page.get_by_role("button", name="7/8").click()
    say(page, counted(both))
    assert page.url.endswith("index.html?mode=minor&meter=7-8")
    assert shown(page) == titles(both)
    expect(page.get_by_role("button", name="7/8", exact=True)).to_have_attribute(
        "aria-pressed", "true"
    )
    page.go_back()
    say(page, counted(minor))
    assert page.url.endswith("index.html?mode=minor")
    page.go_back()
    say(page, "")
    assert shown(page) == newest
    page.go_forward()
    say(page, counted(minor))
    assert shown(page) == titles(minor)


def test_counts_beside_the_values_follow(page: Page) -> None:
    page.get_by_role("button", name="minor", exact=True).click()
    say(page, counted(slow_search(ROWS, Asked({"mode": frozenset({"minor"})}))))
    row = page.locator(".facet[data-facet=meter] li")
    seen = dict(text.rsplit(" ", 1) for text in row.all_inner_texts())
    expected = slow_counts(Asked({"mode": frozenset({"minor"})}))["meter"]
    words = [value.words for value in facet("meter").values]
    assert seen == {word: str(n) for word, n in zip(words, expected, strict=True) if n}


def test_the_tempo_is_asked_in_numbers_or_by_a_band(page: Page) -> None:
    page.get_by_label("to", exact=True).fill("89")
    numbers = slow_search(ROWS, Asked(tempo=(None, 89)))
    say(page, counted(numbers))
    assert page.url.endswith("?tempo=..89")
    page.get_by_role("button", name="90 to 109").click()
    say(page, counted(slow_search(ROWS, Asked(tempo=(90, 109)))))
    assert page.get_by_label("from", exact=True).input_value() == "90"
    page.get_by_role("button", name="90 to 109", exact=True).click()
    say(page, "")


def test_words_are_looked_up_while_they_are_typed_and_one_step_takes_them_back(page: Page) -> None:
    field = page.get_by_label("Title or artist")
    field.press_sequentially("lantern")
    say(page, counted(slow_search(ROWS, Asked(words="lantern"))))
    field.press("Enter")
    field.press_sequentially(" 1")
    say(page, counted(slow_search(ROWS, Asked(words="lantern 1"))))
    field.press("Enter")
    page.go_back()
    say(page, counted(slow_search(ROWS, Asked(words="lantern"))))
    assert field.input_value() == "lantern"
    page.go_back()
    assert page.url.endswith("index.html")
    say(page, "")


def test_pages_of_what_was_found_are_turned(page: Page, top: str) -> None:
    straight = slow_search(ROWS, Asked({"feel": frozenset({"straight"})}))
    page.goto(f"{top}index.html?feel=straight")
    say(page, counted(straight))
    page.get_by_role("link", name="Older").click()
    expect(page.locator(".facet-chosen p")).to_contain_text("page 2 of")
    assert shown(page)[0] == ARTICLES[straight[24]].front.title
    assert "page=2" in page.url
    assert (
        page.evaluate("document.activeElement.textContent") == ARTICLES[straight[24]].front.title
    )


def test_people_can_be_combined_though_they_are_many(page: Page) -> None:
    page.locator("summary", has_text="Who and when").click()
    artist = facet("artist").values[0]
    page.locator(".facet[data-facet=artist] button").first.click()
    say(page, counted(list(artist.numbers)))
    page.get_by_role("button", name="Leave out").click()
    say(page, "")


def test_the_keyboard_alone_will_do(page: Page) -> None:
    button = page.locator(".facet[data-facet=mode] button").first
    words = button.inner_text()
    button.focus()
    page.keyboard.press("Space")
    numbers = slow_search(ROWS, Asked({"mode": frozenset({words})}))
    say(page, counted(numbers))
    # The list was made anew: the same value has the focus, and is let go of again.
    assert page.evaluate("document.activeElement.dataset.value") == words
    page.keyboard.press("Enter")
    say(page, "")
    page.get_by_label("Title or artist").focus()
    stops = []
    for _ in range(400):
        page.keyboard.press("Tab")
        stop = page.evaluate(
            "document.activeElement.closest('.facet, .record, summary')?.className"
        )
        stops.append(stop)
        if stop == "record":
            break
    assert {"facet", "record"} <= set(stops)


def test_without_scripts_values_lead_to_their_pages(browser: Browser, top: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{top}index.html")
    assert page.locator(".facet-form:visible, .facet-chosen:visible").count() == 0
    page.get_by_role("link", name="7/8", exact=True).click()
    assert page.locator("h1").inner_text() == "7/8"
    meter = next(value for value in facet("meter").values if value.words == "7/8")
    assert page.locator(".lines li").count() == len(meter.numbers)
    page.get_by_role("link", name="Index").click()
    assert page.locator(".facet h3").count() == len(FILED)
    context.close()


PAGES = (
    "index.html",
    "index.html?mode=minor&words=e",
    "archive/index.html",
    "archive/topic/index.html",
    "archive/mode/minor/index.html",
)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [320, 1280])
def test_no_page_of_the_archive_violates_a_rule(
    browser: Browser, top: str, width: int, scheme: str
) -> None:
    for path in PAGES:
        page = open_page(browser, top + path, width, scheme)
        page.wait_for_load_state("networkidle")
        assert page.evaluate("document.documentElement.scrollWidth") <= width, path
        found = findings(page)
        assert told(found["violations"]) == [], path
        open_rules = [result for result in found["incomplete"] if result["id"] not in LOOKED_AT]
        assert told(open_rules) == [], path
        page.context.close()


@pytest.mark.parametrize("width", [320, 1280])
def test_nothing_shifts_while_the_archive_loads(browser: Browser, top: str, width: int) -> None:
    page = browser.new_page(viewport={"width": width, "height": 900})
    page.add_init_script(
        "window.moved = []; new PerformanceObserver((list) => {"
        "for (const { value, sources } of list.getEntries())"
        "moved.push([value, ...sources.map(({ node }) => node?.outerHTML?.slice(0, 80))]);"
        "}).observe({ type: 'layout-shift', buffered: true })"
    )
    page.goto(f"{top}index.html")
    page.wait_for_selector("html[data-filing]", state="attached")
    for place in range(0, 4000, 800):
        page.evaluate(f"scrollTo(0, {place})")
        page.wait_for_timeout(30)
    # The face of the signs ♭ and ♯ comes a moment after the text: a value beside them moves by a
    # pixel or two, and nothing else does.
    assert [one for one in page.evaluate("moved") if one[0] > SIGN_SHIFT] == []
    page.close()


@pytest.mark.parametrize(("scheme", "kept", "light"), [
    ("light", "", False), ("dark", "", True), ("dark", "light", False), ("light", "dark", True),
])  # fmt: skip
def test_pictures_are_light_on_a_dark_page(
    browser: Browser, top: str, scheme: str, kept: str, light: bool
) -> None:
    page = browser.new_page(color_scheme="dark" if scheme == "dark" else "light")
    page.add_init_script(f"localStorage.setItem('liner.scheme', '{kept}')")
    page.goto(f"{top}index.html")
    filtered = "getComputedStyle(document.querySelector('.record-incipit')).filter"
    assert (page.evaluate(filtered) != "none") == light
    page.emulate_media(media="print")
    assert page.evaluate(filtered) == "none"
    page.close()


def test_what_is_pressed_again_after_a_lost_request_is_found(browser: Browser, top: str) -> None:
    page = opened(browser, top)
    page.route("**/facets.json", lambda route: route.abort())
    page.get_by_role("button", name="minor", exact=True).click()
    say(page, "The index cannot be loaded here.")
    page.unroute("**/facets.json")
    page.get_by_role("button", name="7/8").click()
    asked = Asked({"mode": frozenset({"minor"}), "meter": frozenset({"7/8"})})
    say(page, counted(slow_search(ROWS, asked)))
    page.context.close()


def test_an_archive_of_nothing_says_so(browser: Browser, tmp_path: Path) -> None:
    nothing: tuple[Listed, ...] = ()
    with served_archive(tmp_path, nothing) as top:
        page = opened(browser, top)
        assert page.locator("main").inner_text().split("\n")[-1] == "Nothing is filed here yet."
        page.context.close()
