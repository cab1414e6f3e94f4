"""The controls that play a chart, and what lights up while it sounds."""

import json
from collections.abc import Iterator
from typing import Any

import pytest
from browser.opening import open_page
from browser.rendering import choices
from playwright.sync_api import Browser, Locator, Page, expect

pytestmark = pytest.mark.browser

Site = tuple[str, list[str]]

# Counts the audio contexts of a page, and keeps the last one for the tests to look at.
COUNT_CONTEXTS = """
window.contexts = [];
const Own = window.AudioContext;
window.AudioContext = class extends Own {
  constructor(...given) { super(...given); window.contexts.push(this); }
};
"""

# Lights a chart by a clock of the test's own: what is lit at each of `times`, by id.
LIGHT = """
async ([id, choices, times]) => {
  const folder = document.querySelector("script[type=module]").src.replace(/[^/]*$/, "");
  const { makeLights, barName } = await import(folder + "lights.js");
  const { findCues, findSpan } = await import(folder + "passage.js");
  const { makeTransport } = await import(folder + "transport.js");
  const figure = document.getElementById(id);
  const sound = JSON.parse(figure.querySelector(".chart-sound").textContent);
  const span = findSpan(sound, choices.first, choices.last);
  const lights = makeLights(figure, sound, () => {});
  const transport = makeTransport([], findCues(sound, span), span, (cue, when, quarter) => {
    const until = when + cue.length * quarter;
    if (cue.bar !== undefined) lights.plan(barName(cue.bar), when, until);
    if (cue.stroke) lights.plan(cue.stroke[4], when, until);
  });
  transport.begin(0);
  const marked = [];
  for (const time of times) {
    transport.advance(time + 0.12);
    lights.follow(time);
    const bars = [...figure.querySelectorAll(".changes-bar")];
    marked.push([
      [...figure.querySelectorAll(".lit")].map((node) => node.id),
      bars.flatMap((bar, n) => (bar.ariaCurrent === "true" ? [n] : [])),
      figure.querySelectorAll(".underlay").length,
    ]);
  }
  lights.clear();
  return [marked, figure.querySelectorAll(".lit, .underlay, [aria-current]").length];
}
"""


def article(site: Site, slug: str) -> str:
    top, paths = site
    return top + next(path for path in paths if slug in path)


READY = "!document.querySelector('.hearing[hidden]')"


def open_article(
    browser: Browser, site: Site, slug: str = "rust-calendar", width: int = 1280
) -> Page:
    context = browser.new_context(
        viewport={"width": width, "height": 900}, reduced_motion="reduce"
    )
    page = context.new_page()
    page.add_init_script(COUNT_CONTEXTS)
    page.goto(article(site, slug))
    page.wait_for_function(READY)
    return page


@pytest.fixture
def page(browser: Browser, site: Site) -> Iterator[Page]:
    page = open_article(browser, site)
    yield page
    page.context.close()


def controls(page: Page, chart: str = "chart-opening") -> Locator:
    return page.locator(f"#{chart} .hearing")


def play_button(page: Page, chart: str = "chart-opening") -> Locator:
    return controls(page, chart).locator("[name=play]")


def sound_of(page: Page, chart: str) -> dict[str, Any]:
    text = page.locator(f"#{chart} .chart-sound").text_content()
    found: dict[str, Any] = json.loads(text or "")
    return found


def test_every_chart_that_sounds_has_controls_named_after_it(page: Page) -> None:
    charts = page.locator("figure.chart-notation, figure.chart-changes")
    assert charts.count() > 4
    for number in range(charts.count()):
        chart = charts.nth(number)
        name = chart.locator(".chart-number").text_content()
        box = chart.get_by_role("group", name=f"Hear {name}", exact=True)
        expect(box).to_be_visible()
        expect(box.get_by_role("button", name=f"Play {name}", exact=True)).to_be_visible()
        for wanted in ("Tempo", "Volume"):
            expect(box.get_by_role("slider", name=f"{wanted} of {name}")).to_be_visible()
        expect(box.get_by_role("checkbox", name=f"Loop these bars of {name}")).to_be_visible()
        for wanted in (f"Bars of {name}, from", f"to bar of {name}"):
            expect(box.get_by_role("combobox", name=wanted)).to_be_visible()


def test_a_form_plan_has_no_controls(page: Page) -> None:
    assert page.locator("figure.chart-form").count() > 0
    assert page.locator("figure.chart-form .hearing").count() == 0


def test_without_scripts_nothing_of_it_is_shown(browser: Browser, site: Site) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(article(site, "rust-calendar"))
    boxes = page.locator(".hearing")
    assert boxes.count() > 4
    for number in range(boxes.count()):
        expect(boxes.nth(number)).to_be_hidden()
        assert boxes.nth(number).bounding_box() is None
    context.close()


@pytest.mark.parametrize("width", [1280, 768, 320])
def test_nothing_shifts_when_the_script_comes(browser: Browser, site: Site, width: int) -> None:
    page = open_article(browser, site, "one-stair-short", width)
    after = places(page)
    page.context.close()
    context = browser.new_context(viewport={"width": width, "height": 900})
    page = context.new_page()
    page.route("**/hearing*.js", lambda route: route.abort())
    page.goto(article(site, "one-stair-short"))
    expect(controls(page)).to_be_hidden()
    assert places(page) == after
    assert len(after) > 6
    context.close()


def places(page: Page) -> list[dict[str, float]]:
    """Return where the charts of a page stand."""
    found: list[dict[str, float]] = page.evaluate(
        "document.fonts.ready.then(() => [...document.querySelectorAll('figure.chart')]"
        ".map((figure) => figure.getBoundingClientRect().toJSON()))"
    )
    return found


def test_one_line_at_1280_and_nothing_beside_the_page_at_320(browser: Browser, site: Site) -> None:
    page = open_article(browser, site, "one-stair-short")
    row = page.locator("#chart-groove .hearing-row").first
    tops = row.evaluate(
        "row => [...row.querySelectorAll('[name=play], label, summary')]"
        ".filter(e => !e.matches('details :not(summary)'))"
        ".map(e => { const box = e.getBoundingClientRect(); return box.top + box.height / 2; })"
    )
    assert len(tops) == 7
    assert max(tops) - min(tops) < 3
    page.set_viewport_size({"width": 320, "height": 800})
    page.locator("#chart-groove .hearing-more summary").click()
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    page.context.close()


def test_the_caution_stands_with_the_first_controls_only(page: Page) -> None:
    cautions = page.locator(".hearing-caution")
    shown = [n for n in range(cautions.count()) if cautions.nth(n).is_visible()]
    assert cautions.count() > 4
    assert shown == [0]
    expect(cautions.first).to_contain_text("Set the volume low before you start")


def test_nothing_is_made_or_fetched_before_a_click(browser: Browser, site: Site) -> None:
    context = browser.new_context()
    page = context.new_page()
    page.add_init_script(COUNT_CONTEXTS)
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(article(site, "rust-calendar"))
    page.wait_for_function(READY)
    assert page.evaluate("contexts.length") == 0
    assert not [url for url in asked if "rehearsal" in url]
    play_button(page).click()
    expect(controls(page).locator(".hearing-place")).to_have_text("bar 1")
    assert page.evaluate("contexts.length") == 1
    assert [url for url in asked if "rehearsal" in url]
    assert [url for url in asked if not url.startswith((site[0], "data:"))] == []
    play_button(page, "chart-chorus").click()
    assert page.evaluate("contexts.length") == 1
    context.close()


def test_play_lights_notes_and_stop_clears_them(page: Page) -> None:
    button = play_button(page)
    button.click()
    expect(button).to_have_accessible_name("Stop Example 1")
    page.wait_for_function("document.querySelectorAll('#chart-opening .lit').length > 1")
    button.click()
    expect(button).to_have_accessible_name("Play Example 1")
    assert page.locator(".lit, .underlay").count() == 0
    expect(controls(page).locator(".hearing-place")).to_have_text("")
    page.wait_for_function("contexts[0].state === 'suspended'")


def test_it_ends_by_itself(page: Page) -> None:
    box = controls(page, "chart-bridge-lead")
    box.locator("[name=tempo]").fill("120")
    box.locator("[name=from]").select_option("2")
    play_button(page, "chart-bridge-lead").click()
    expect(play_button(page, "chart-bridge-lead")).to_have_accessible_name("Stop Example 6")
    expect(play_button(page, "chart-bridge-lead")).to_have_accessible_name(
        "Play Example 6", timeout=10000
    )
    assert page.locator(".lit, .underlay").count() == 0


def test_only_one_chart_plays(page: Page) -> None:
    play_button(page).click()
    expect(controls(page).locator(".hearing-place")).to_have_text("bar 1")
    play_button(page, "chart-chorus").click()
    expect(play_button(page)).to_have_accessible_name("Play Example 1")
    expect(controls(page, "chart-chorus").locator(".hearing-place")).to_have_text("bar 1")
    assert page.locator("#chart-opening .lit").count() == 0


def test_a_change_of_range_plays_from_there(page: Page) -> None:
    box = controls(page, "chart-chorus")
    play_button(page, "chart-chorus").click()
    expect(box.locator(".hearing-place")).to_have_text("bar 1")
    box.locator("[name=from]").select_option("3")
    expect(box.locator(".hearing-place")).to_have_text("bar 3")


def lit_in(page: Page, chart: str, times: list[float], **changed: object) -> list[Any]:
    chosen = choices(sound_of(page, chart), **changed)
    marked, left = page.evaluate(LIGHT, [chart, chosen, times])
    assert left == 0
    found: list[Any] = marked
    return found


def events_at(sound: dict[str, Any], time: float) -> set[str]:
    """Return the events of a record that sound at a time, in quarters."""
    notes = [note for player in sound["players"] for note in player["notes"]]
    ids = [note[4] for note in notes if note[0] <= time < note[0] + note[1]]
    return {id_.rpartition("-n")[0] or id_ for id_ in ids if id_}


@pytest.mark.parametrize("chart", ["chart-opening", "chart-groove", "chart-chorus"])
def test_what_sounds_is_lit_in_notes_tablature_and_drums(
    browser: Browser, site: Site, chart: str
) -> None:
    page = open_article(browser, site, "one-stair-short")
    sound = sound_of(page, chart)
    # A sixteenth apart, just after each: nothing begins or ends there.
    times = [n / 4 + 0.01 for n in range(28)]
    seen: set[str] = set()
    for time, (ids, _, underlays) in zip(times, lit_in(page, chart, times), strict=True):
        events = events_at(sound, time)
        lit = {id_.removeprefix(f"{chart}-") for id_ in ids}
        wide = {id_ for id_ in lit if not id_.startswith("narrow-")}
        assert {f"narrow-{id_}" for id_ in wide} == lit - wide
        # A tied note has a name of its own; every event is lit, and only what stands for one.
        assert events <= wide, time
        assert len({id_.removesuffix("-tab") for id_ in wide}) <= 2 * len(events)
        assert underlays == len(wide)
        seen |= wide
    assert len(seen) > 8
    if chart != "chart-chorus":
        assert any(id_.endswith("-tab") for id_ in seen)
    page.context.close()


def test_tied_notes_are_lit_with_the_note_that_they_prolong(page: Page) -> None:
    # The chord on the & of 2 is tied over to 3: a second chord, without a stroke of its own.
    ((ids, _, _),) = lit_in(page, "chart-opening", [1.6])
    assert "chart-opening-guitar-1-2_1_2" in ids
    assert "chart-opening-guitar-1-3" in ids


def test_a_drawing_that_is_exchanged_goes_on_being_lit(page: Page) -> None:
    controls(page).locator("[name=loop]").check()
    play_button(page).click()
    page.wait_for_function("document.querySelector('#chart-opening .lit')")
    figure = page.locator("#chart-opening")
    drawing = figure.locator(".drawing-wide svg").element_handle()
    figure.get_by_role("radio", name="as fingered").check()
    page.wait_for_function("drawing => !drawing.isConnected", arg=drawing)
    page.wait_for_function("document.querySelector('#chart-opening .lit')")
    assert page.evaluate("drawing => drawing.querySelector('.lit, .underlay')", drawing) is None
    figure.get_by_role("radio", name="as it sounds").check()
    play_button(page).click()
    assert figure.locator(".lit, .underlay").count() == 0


def test_scripts_that_do_not_come_leave_the_button_as_it_was(page: Page) -> None:
    page.route("**/rehearsal.js", lambda route: route.abort())
    play_button(page).click()
    expect(play_button(page)).to_have_accessible_name("Play Example 1")
    page.wait_for_function("contexts[0].state === 'suspended'")


def test_on_paper_there_are_no_controls(page: Page) -> None:
    page.emulate_media(media="print")
    expect(controls(page)).to_be_hidden()


def test_repeats_and_endings_are_followed(page: Page) -> None:
    times = [0.1, 4.1, 8.1, 12.1]
    marked = lit_in(page, "chart-opening", times)
    bars = [{id_.split("-")[3] for id_ in ids if "narrow" not in id_} for ids, _, _ in marked]
    assert bars == [{"1"}, {"2"}, {"1"}, {"3"}]


def test_the_bar_that_sounds_is_marked_in_changes(page: Page) -> None:
    sound = sound_of(page, "chart-verse-changes")
    starts = [bar[1] + 0.1 for bar in sound["bars"]]
    marked = lit_in(page, "chart-verse-changes", starts)
    first = min(bar[0] for bar in sound["bars"])
    assert [current for _, current, _ in marked] == [[bar[0] - first] for bar in sound["bars"]]


def test_a_muted_part_is_not_lit(page: Page) -> None:
    box = controls(page, "chart-chorus")
    box.locator(".hearing-more summary").click()
    box.get_by_role("button", name="Solo bass of Example 4").click()
    box.locator("[name=loop]").check()
    play_button(page, "chart-chorus").click()
    page.wait_for_function("document.querySelector('#chart-chorus .lit')")
    for _ in range(10):
        page.wait_for_timeout(100)
        ids = page.evaluate("[...document.querySelectorAll('.lit')].map(node => node.id)")
        assert all("bass" in id_ for id_ in ids)


def test_it_can_be_worked_by_keyboard_alone(page: Page) -> None:
    button = play_button(page)
    button.focus()
    page.keyboard.press("Enter")
    expect(button).to_have_accessible_name("Stop Example 1")
    expect(button).to_be_focused()
    page.keyboard.press("Space")
    expect(button).to_have_accessible_name("Play Example 1")
    page.keyboard.press("Tab")
    page.keyboard.press("ArrowLeft")
    expect(controls(page).locator(".hearing-tempo")).to_have_text("95 %")
    expect(page.locator(":focus")).to_have_attribute("aria-valuetext", "95 %")
    page.keyboard.press("Tab")
    page.keyboard.press("ArrowDown")
    expect(controls(page).locator("[name=from]")).to_have_value("2")
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    page.keyboard.press("Space")
    expect(controls(page).locator("[name=loop]")).to_be_checked()
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    expect(page.locator(":focus")).to_have_attribute("name", "count")
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    expect(page.locator(":focus")).to_have_accessible_name("Mute guitar of Example 1")
    page.keyboard.press("Space")
    expect(page.locator(":focus")).to_have_attribute("aria-pressed", "true")


def test_each_stop_of_the_keyboard_shows_its_focus(page: Page) -> None:
    controls(page).locator(".hearing-more summary").click()
    play_button(page).focus()
    for _ in range(11):
        page.keyboard.press("Tab")
        assert page.evaluate("document.activeElement.closest('.hearing') !== null")
        outline = page.evaluate("getComputedStyle(document.activeElement).outlineStyle")
        assert outline != "none"


def test_a_part_that_is_silent_at_first_says_so(page: Page) -> None:
    box = controls(page)
    box.locator(".hearing-more summary").click()
    silent = [
        player["name"] for player in sound_of(page, "chart-opening")["players"] if not player["on"]
    ]
    assert silent == ["chords"]
    mute = box.get_by_role("button", name="Mute chords of Example 1")
    expect(mute).to_have_attribute("aria-pressed", "true")


def test_one_volume_for_all_charts_is_kept_on_the_device(page: Page) -> None:
    controls(page).locator("[name=volume]").fill("25")
    expect(controls(page, "chart-chorus").locator("[name=volume]")).to_have_value("25")
    page.reload()
    page.wait_for_function(READY)
    expect(controls(page).locator("[name=volume]")).to_have_value("25")


def test_it_works_where_nothing_may_be_kept(browser: Browser, site: Site) -> None:
    context = browser.new_context()
    page = context.new_page()
    page.add_init_script(
        "Object.defineProperty(window, 'localStorage', { get() { throw new Error('refused'); } });"
    )
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(str(error)))
    page.goto(article(site, "rust-calendar"))
    page.wait_for_function(READY)
    controls(page).locator("[name=volume]").fill("25")
    play_button(page).click()
    expect(controls(page).locator(".hearing-place")).to_have_text("bar 1")
    assert not [error for error in errors if "hearing" in error]
    context.close()


def test_nothing_speaks_up_while_it_plays(page: Page) -> None:
    live = "[aria-live], [role=status], [role=alert], [role=log], output"
    assert page.locator(f".hearing :is({live})").count() == 0


def test_enhancing_can_be_undone(page: Page) -> None:
    play_button(page).click()
    page.evaluate(
        """async () => {
          const folder = document.querySelector("script[type=module]").src.replace(/[^/]*$/, "");
          (await import(folder + "hearing.js")).enhance(document)();
        }"""
    )
    expect(controls(page)).to_be_hidden()
    assert page.locator(".lit").count() == 0


CONTRASTS = """
() => {
  const figure = document.querySelector("#chart-opening");
  const measure = figure.querySelector(".measure");
  const rect = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  rect.setAttribute("class", "underlay");
  measure.prepend(rect);
  const channel = (v) => (v /= 255) <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  const light = (text) => {
    const [r, g, b] = text.match(/[\\d.]+/g).map(Number);
    return 0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b);
  };
  const ratio = (...colours) => {
    const [x, y] = colours.map(light).sort((p, q) => q - p);
    return (x + 0.05) / (y + 0.05);
  };
  const body = getComputedStyle(document.body);
  const marker = getComputedStyle(rect).fill;
  return [ratio(marker, body.backgroundColor), ratio(marker, body.color)];
}
"""


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_light_stands_out_and_leaves_notes_readable(
    browser: Browser, site: Site, scheme: str
) -> None:
    # WCAG 2.2, 1.4.11 and 1.4.3: the marker against the page, ink and numbers against the marker.
    page = open_page(browser, article(site, "rust-calendar"), 1280, scheme)
    against_paper, against_ink = page.evaluate(CONTRASTS)
    assert against_paper >= 3
    assert against_ink >= 4.5
    page.context.close()


def test_neither_page_nor_lights_move(page: Page) -> None:
    button = play_button(page)
    button.scroll_into_view_if_needed()
    place = page.evaluate("scrollY")
    button.click()
    page.wait_for_function("document.querySelector('.lit')")
    assert page.evaluate("document.getAnimations().length") == 0
    assert page.evaluate("scrollY") == place
