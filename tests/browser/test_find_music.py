"""Chords, tunes and beats are asked for by hand, by keyboard and by address, and lead to bars."""

from collections.abc import Iterator

import pytest
from browser.opening import open_page
from browser.test_axe import LOOKED_AT, findings, told
from playwright.sync_api import Browser, Page, expect

Site = tuple[str, list[str]]


@pytest.fixture
def find(browser: Browser, site: Site) -> Iterator[Page]:
    page = open_page(browser, f"{site[0]}find/index.html", 1280)
    page.wait_for_selector("html[data-finding]", state="attached")
    yield page
    page.context.close()


def said(page: Page, form: str) -> str:
    line = page.locator(f"#{form}_form ~ .finder-said")
    expect(line).not_to_be_empty()
    return line.inner_text()


def test_chords_in_any_key_lead_to_their_bars_lit_up(find: Page) -> None:
    find.get_by_label("Chords", exact=True).fill("D#m F G A D#m")
    find.get_by_label("Chords", exact=True).fill("Dm Bb F C")
    find.get_by_role("button", name="Find chords").click()
    assert "chart" in said(find, "chords")
    link = find.locator("#chords_found a").first
    assert "?bars=" in (link.get_attribute("href") or "")
    link.click()
    find.wait_for_selector("html[data-enhanced]", state="attached")
    assert find.locator("figure:target :is(.pointer, [data-pointed])").count() > 0


def test_a_question_in_numerals_stands_in_the_address(find: Page) -> None:
    find.get_by_label("Chords", exact=True).fill("bVI bVII i")
    find.keyboard.press("Enter")
    said(find, "chords")
    first = find.locator("#chords_found li").first.inner_text()
    find.reload()
    find.wait_for_selector("#chords_found li")
    assert find.locator("#chords_found li").first.inner_text() == first
    assert find.get_by_label("Chords", exact=True).input_value() == "bVI bVII i"


def test_the_last_questions_are_kept_on_the_device(find: Page) -> None:
    find.get_by_label("Chords", exact=True).fill("Em A")
    find.keyboard.press("Enter")
    said(find, "chords")
    find.goto(find.url.partition("?")[0])
    option = find.locator("#chords_recent option")
    expect(option).to_have_count(1)
    assert option.get_attribute("value") == "Em A"


@pytest.mark.parametrize(
    ("form", "label", "text", "words"),
    [
        ("chords", "Chords", "Em Hx", "“Hx” cannot be read as a chord"),
        ("chords", "Chords", "Em", "two chords or more"),
        ("tune", "Tune", "C D 9", "“9” is no note"),
        ("tune", "Tune", "C D", "three notes or more"),
        ("beat", "The same typed", "XX x.", "“XX x.” is no drum"),
        ("beat", "The same typed", "BD x..", "“BD x..” is no drum, or not a bar of 4/4"),
    ],
)
def test_what_cannot_be_read_is_said(
    find: Page, form: str, label: str, text: str, words: str
) -> None:
    find.get_by_label(label, exact=True).fill(text)
    find.keyboard.press("Enter")
    assert words in said(find, form)


def test_a_tune_is_played_by_pointer_and_by_letters(find: Page) -> None:
    find.locator(".keyboard > summary").click()
    find.get_by_role("button", name="E4", exact=True).click()
    find.keyboard.press("d")
    find.keyboard.press("s")
    field = find.get_by_label("Tune", exact=True)
    assert field.input_value() == "E4 E4 D4"
    find.get_by_role("button", name="C5", exact=True).focus()
    find.keyboard.press("Enter")
    assert field.input_value() == "E4 E4 D4 C5"
    find.get_by_role("button", name="Start again").click()
    assert field.input_value() == ""


def test_a_rhythm_that_was_played_may_count(find: Page) -> None:
    find.locator(".keyboard > summary").click()
    find.get_by_label("the rhythm counts").check()
    for name in ("E4", "D4", "C4"):
        find.get_by_role("button", name=name, exact=True).click()
    gaps = find.locator("input[name=rhythm]").input_value().split()
    assert len(gaps) == 2
    assert all(gap.isdecimal() for gap in gaps)
    find.get_by_label("Tune", exact=True).fill("E D C")
    assert find.locator("input[name=rhythm]").input_value() == ""


def test_a_beat_is_set_with_the_keyboard_alone(find: Page) -> None:
    find.get_by_label("hi-hat, step 1", exact=True).focus()
    for key in ("ArrowDown", "Space", "ArrowRight", "ArrowRight", "ArrowDown", "Space"):
        find.keyboard.press(key)
    typed = find.get_by_label("The same typed")
    assert typed.input_value() == "SD x............... BD ..x............."
    typed.fill("BD x...")
    find.keyboard.press("Tab")
    boxes = find.locator("[data-drum=BD] input:checked")
    assert boxes.count() == 4
    find.get_by_label("Meter").select_option("7/8")
    assert find.locator("[data-drum=BD] input").count() == 14


def test_beats_are_found_and_tempo_and_feel_are_a_question_too(find: Page) -> None:
    find.get_by_label("Meter").select_option("7/8")
    find.get_by_label("The same typed").fill("SD ....x.......x.")
    find.keyboard.press("Enter")
    assert "charts have it" in said(find, "beat")
    assert "?bars=" in (find.locator("#beat_found a").first.get_attribute("href") or "")
    find.get_by_label("The same typed").fill("")
    find.get_by_label("Slowest").fill("100")
    find.get_by_label("fastest").fill("110")
    find.get_by_role("button", name="Find beat").click()
    expect(find.locator("#beat_form ~ .finder-said")).to_contain_text("fit")
    found = find.locator("#beat_found .found-place").all_inner_texts()
    assert found
    assert all("Rust Calendar" in text for text in found)


@pytest.mark.parametrize(
    "asked",
    [
        "words=chorus",
        "chords=Em+C+F#dim7",
        "tune=C+D+E+F+G&lines=any",
        "beat=SD+....x.......x.&meter=7/8",
    ],
)
@pytest.mark.parametrize(("width", "scheme"), [(1280, "light"), (360, "dark")])
def test_answers_can_be_used_by_everybody(
    browser: Browser, site: Site, asked: str, width: int, scheme: str
) -> None:
    page = open_page(browser, f"{site[0]}find/index.html?{asked}", width, scheme)
    expect(page.locator(".found > li").first).to_be_visible()
    found = findings(page)
    assert told(found["violations"]) == []
    assert told([one for one in found["incomplete"] if one["id"] not in LOOKED_AT]) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    page.context.close()
