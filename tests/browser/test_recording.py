"""The recording in a real Chromium: times lead into it, what is heard is marked, nobody is asked.

All content is made here; the recording is a minute of a soft tone. No request leaves the machine:
other hosts are answered by the tests.
"""

import functools
import http.server
import math
import re
import threading
import wave
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, Route, expect

from sitegen.cli import main

pytestmark = pytest.mark.browser

LENGTH, RATE = 60, 3000
HOST = "https://host.example/frame/low-tide?start="
ELSEWHERE = re.compile(r"^https://")
SETTINGS = (
    'title = "Side Two"\n[recording]\nembed = "https://host.example/frame/{id}?start={seconds}"\n'
)
ARTICLE = """\
---
title: Low Tide
song:
  title: Low Tide
  length: "1:00"
%s
moments:
  - 0:05 The voice enters
  - 0:40 The last verse
---

The verse comes at {at 0:20}.

```form
id: plan
length: 1:00

Intro | 8 | 0:00
Verse | 8 | 0:20 | notation: line
Coda | 8 | 0:40
```

## Verse

```notation
id: line
title: The line
meter: 4/4
at: 0:20

count | 1  2  3  4  |
voice | C5 D  E  D  |
```

""" + "\n\n".join(["The words go on, so that the page is long."] * 40)
VIDEOS = {
    "file": "video:\n  file: clip one.wav\n  holder: The Gantry",
    "film": "video:\n  file: clip.webm\n  holder: The Gantry",
    "frame": "video:\n  embed: low-tide\n  page: https://watch.example/7\n  holder: The Gantry",
    "far": "video:\n  file: https://files.example/clip.wav\n  holder: The Gantry",
    "page": "video:\n  page: https://watch.example/7",
    "none": "topics: [silence]",
}


class _Ranges(http.server.SimpleHTTPRequestHandler):
    """Answers for parts of a file, as servers of recordings do: without them nobody can jump."""

    def do_GET(self) -> None:
        path = Path(self.translate_path(self.path))
        asked = re.fullmatch(r"bytes=(\d+)-(\d*)", self.headers.get("Range", ""))
        if asked is None or not path.is_file():
            super().do_GET()
            return
        data = path.read_bytes()
        first, last = int(asked[1]), int(asked[2] or len(data) - 1)
        self.send_response(206)
        self.send_header("Content-Type", self.guess_type(path))
        self.send_header("Content-Range", f"bytes {first}-{last}/{len(data)}")
        self.send_header("Content-Length", str(last - first + 1))
        self.end_headers()
        self.wfile.write(data[first : last + 1])

    def log_message(self, *_: object) -> None:
        """Print nothing."""


@pytest.fixture(scope="module")
def top(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Build a site with a write-up for every way to name a recording, and serve it."""
    folder = tmp_path_factory.mktemp("recorded")
    for slug, video in VIDEOS.items():
        path = folder / "content" / "breakdowns" / slug / "article.md"
        path.parent.mkdir(parents=True)
        path.write_text(ARTICLE % video, encoding="utf-8")
    (folder / "content" / "site.toml").write_text(SETTINGS, encoding="utf-8")
    write_tone(folder / "content" / "breakdowns" / "file" / "clip one.wav")
    write_tone(folder / "content" / "breakdowns" / "film" / "clip.webm")
    out = folder / "published"
    assert main(["build", str(folder / "content"), "--out", str(out)]) == 0
    handler = functools.partial(_Ranges, directory=str(out))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}/breakdowns/"
    server.shutdown()
    server.server_close()
    thread.join()


def write_tone(path: Path) -> None:
    """Write a minute of a soft tone as 8-bit WAV; browsers look at the bytes, not at the name."""
    with wave.open(str(path), "wb") as tone:
        tone.setnchannels(1)
        tone.setsampwidth(1)
        tone.setframerate(RATE)
        tone.writeframes(bytes(128 + round(9 * math.sin(n / 2)) for n in range(RATE * LENGTH)))


# The script has run when the button is there, or when the file is set to start softly.
READY = """() => {
  const [load, media] = ['.recording-load', '.recording :is(audio, video)']
    .map((selector) => document.querySelector(selector));
  return load ? !load.hidden : !media || media.volume < 1;
}"""


class Visit:
    """A page with what it asked other hosts for; they answer with a plain page."""

    def __init__(self, browser: Browser, address: str, *, width: int = 1280, **how: bool) -> None:
        self.context = browser.new_context(
            viewport={"width": width, "height": 700}, java_script_enabled=how.get("script", True)
        )
        self.asked: list[tuple[str, str]] = []
        self.errors: list[str] = []
        self.context.route(ELSEWHERE, self._answer)
        self.page = self.context.new_page()
        self.page.on("pageerror", lambda wrong: self.errors.append(str(wrong)))
        self.page.goto(address, wait_until="load")
        if how.get("script", True):
            self.page.wait_for_function(READY)

    def _answer(self, route: Route) -> None:
        self.asked.append((route.request.url, route.request.headers.get("referer", "")))
        route.fulfill(body="<title>Player</title><button>Play</button>", content_type="text/html")


@pytest.fixture
def visit(browser: Browser, top: str) -> Iterator["VisitTo"]:
    visits = VisitTo(browser, top)
    yield visits
    for one in visits.made:
        assert one.errors == []
        one.context.close()


class VisitTo:
    """Opens pages and closes them after the test."""

    def __init__(self, browser: Browser, top: str) -> None:
        self.browser, self.top = browser, top
        self.made: list[Visit] = []

    def __call__(self, slug: str, *, width: int = 1280, **how: bool) -> Visit:
        """Open the page of a write-up; `script=False` does it without scripts."""
        address = f"{self.top}{slug}/index.html"
        self.made.append(Visit(self.browser, address, width=width, **how))
        return self.made[-1]


def heard_at(page: Page, seconds: float) -> None:
    """Wait until the player plays at a second or a little later."""
    page.wait_for_function(
        "(s) => { const m = document.querySelector('.recording :is(audio, video)');"
        " return m && !m.paused && m.currentTime >= s && m.currentTime < s + 3 }",
        arg=seconds,
    )


ROLE = ".article-text p a.moment"
MOMENT = ".tracks a[data-seconds='40']"
CHART = ".chart-moment"
START = ".plan-rows tr:nth-child(3) a.moment"


@pytest.mark.parametrize(("link", "seconds"), [(ROLE, 20), (MOMENT, 40), (CHART, 20), (START, 40)])
def test_a_time_plays_the_file_from_its_moment(visit: VisitTo, link: str, seconds: int) -> None:
    page = visit("file").page

    page.locator(link).first.click()

    heard_at(page, seconds)
    assert page.url.endswith("/file/index.html")


def test_a_time_works_with_the_keyboard_and_keeps_the_focus(visit: VisitTo) -> None:
    page = visit("file").page
    page.locator(ROLE).first.focus()

    page.keyboard.press("Enter")

    heard_at(page, 20)
    assert page.evaluate("document.activeElement.matches('.article-text a.moment')")


def test_a_time_opened_elsewhere_is_left_to_the_browser(visit: VisitTo) -> None:
    seen = visit("file")

    with seen.context.expect_page() as opened:
        seen.page.locator(ROLE).first.click(modifiers=["ControlOrMeta"])

    assert opened.value.url.endswith("/file/clip%20one.wav#t=20")
    assert seen.page.evaluate("document.querySelector('audio').paused")


def test_a_file_is_not_asked_for_before_it_is_played_and_starts_softly(visit: VisitTo) -> None:
    seen = visit("file")
    page = seen.page
    assert page.locator("audio").get_attribute("preload") == "none"
    assert page.evaluate("performance.getEntriesByType('resource').map((r) => r.name)"
                         ".filter((name) => name.includes('clip'))") == []  # fmt: skip

    page.locator(ROLE).first.click()
    heard_at(page, 20)

    assert page.evaluate("document.querySelector('audio').volume") == 0.5
    assert seen.asked == []


MARKED = """() => ({
  rows: [...document.querySelectorAll('.plan-rows tr[aria-current="time"] th')]
    .map((th) => th.textContent),
  drawn: [...document.querySelectorAll('svg [data-heard] title')]
    .map((title) => title.textContent.split(':')[0]),
  moments: [...document.querySelectorAll('.tracks li[aria-current="time"] a')]
    .map((a) => a.textContent),
})"""


def test_what_is_heard_is_marked_in_drawing_table_and_moments(visit: VisitTo) -> None:
    page = visit("file").page
    assert page.evaluate(MARKED) == {"rows": [], "drawn": [], "moments": []}

    page.locator(ROLE).first.click()
    heard_at(page, 20)
    page.wait_for_selector("tr[aria-current=time]", state="attached")
    verse = page.evaluate(MARKED)
    page.evaluate("document.querySelector('audio').currentTime = 39.2")
    page.wait_for_function("document.querySelector('audio').currentTime > 40.3")
    page.wait_for_function(
        "document.querySelector('tr[aria-current=time] th').innerText == 'Coda'"
    )
    coda = page.evaluate(MARKED)

    assert verse["rows"] == ["Verse"]
    assert set(verse["drawn"]) == {"Verse"}
    assert len(verse["drawn"]) >= 2  # wide and narrow
    assert verse["moments"] == ["The voice enters"]
    assert coda["rows"] == ["Coda"]
    assert set(coda["drawn"]) == {"Coda"}
    assert coda["moments"] == ["The last verse"]


def test_the_mark_goes_when_the_recording_is_over(visit: VisitTo) -> None:
    page = visit("file").page
    page.locator(ROLE).first.click()
    heard_at(page, 20)
    page.wait_for_selector("tr[aria-current=time]", state="attached")

    page.evaluate("document.querySelector('audio').currentTime = 59.5")
    page.wait_for_function("document.querySelector('audio').ended")

    page.wait_for_selector("[aria-current=time], [data-heard]", state="detached")
    assert page.locator(".recording-now").text_content() == ""


# WCAG 2.2, 1.4.1 and 1.4.3: a mark that is not by hue alone, and letters that can be read on it.
LIGHTS = """() => {
  const channel = (v) => (v /= 255) <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  const light = (colour) => { const [r, g, b] = colour.match(/[\\d.]+/g).map(Number).map(channel);
    return 0.2126 * r + 0.7152 * g + 0.0722 * b };
  const ratio = (one, other) => { const [a, b] = [light(one), light(other)].sort((x, y) => y - x);
    return (a + 0.05) / (b + 0.05) };
  const fill = (node) => getComputedStyle(node).fill;
  const box = (section) => section.querySelector('path[style*="--paper"]');
  const heard = [...document.querySelectorAll('svg [data-heard]')]
    .find((section) => section.getClientRects().length);
  const other = heard.parentNode.querySelector('[data-start]:not([data-heard])');
  return { mark: ratio(fill(box(heard)), fill(box(other))),
    letters: [...heard.querySelectorAll('text')].map((t) => ratio(fill(t), fill(box(heard)))) };
}"""


@pytest.mark.parametrize("width", [360, 1280])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_mark_in_the_drawing_is_seen_without_colour_and_can_be_read(
    visit: VisitTo, width: int, scheme: str
) -> None:
    page = visit("file", width=width).page
    page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
    page.locator(ROLE).first.click()
    page.wait_for_selector("svg [data-heard]", state="attached")

    lights = page.evaluate(LIGHTS)

    assert lights["mark"] >= 3
    assert lights["letters"]
    assert min(lights["letters"]) >= 4.5


def test_the_chart_that_was_reached_is_offered(visit: VisitTo) -> None:
    page = visit("file").page
    now = page.locator(".recording-now")
    page.locator(".plan-rows tr:nth-child(1) a.moment").click()
    expect(now).to_have_text("Intro")

    page.locator(START).first.click()

    expect(now).to_have_text("Coda, see Example 1")
    now.locator("a").click()
    expect(page.locator("figure:target .chart-number")).to_have_text("Example 1")
    assert now.get_attribute("aria-live") is None


def test_a_section_of_the_drawing_takes_the_recording_along(visit: VisitTo) -> None:
    page = visit("file").page
    verse = page.locator("svg.plan-wide a[data-start='20']").last
    coda = page.locator("svg.plan-wide g[data-start='40']").last
    place = "[document.querySelector('audio').currentTime, document.querySelector('audio').paused]"

    verse.click()
    assert page.evaluate(place) == [20, True]
    assert page.url.endswith("#verse")

    coda.click()
    heard_at(page, 40)
    verse.click()
    heard_at(page, 20)


def test_a_player_in_use_stays_in_view_until_it_is_put_away(visit: VisitTo) -> None:
    page = visit("file").page
    place = page.locator(".recording-place")
    height = place.bounding_box()["height"]  # type: ignore[index]
    page.evaluate("scrollTo({ top: 9e9, behavior: 'instant' })")
    assert page.locator("audio").evaluate("(m) => m.getBoundingClientRect().bottom") < 0

    page.locator(ROLE).first.focus()
    page.keyboard.press("Enter")
    heard_at(page, 20)
    page.evaluate("scrollTo({ top: 9e9, behavior: 'instant' })")
    away = page.get_by_role("button", name="Put the player away")
    expect(page.locator("audio")).to_be_in_viewport(ratio=1)
    expect(away).to_be_in_viewport(ratio=1)
    assert place.bounding_box()["height"] == pytest.approx(height)  # type: ignore[index]

    away.press("Enter")

    expect(away).to_be_hidden()
    assert page.evaluate("document.querySelector('audio').paused")
    assert page.evaluate("document.activeElement.matches('.article-text a.moment')")


def test_a_frame_is_asked_for_by_the_button_alone_and_once(visit: VisitTo) -> None:
    seen = visit("frame")
    button = seen.page.get_by_role("button", name="Load the recording from host.example")
    expect(button).to_be_visible()
    seen.page.evaluate("scrollTo({ top: 9e9, behavior: 'instant' })")
    seen.page.mouse.wheel(0, -9000)
    button.hover()
    button.focus()
    seen.page.wait_for_timeout(300)
    assert seen.asked == []

    button.dblclick()

    frame = seen.page.locator(".recording iframe")
    expect(frame).to_be_focused()
    seen.page.frame_locator(".recording iframe").get_by_role("button").wait_for()
    origin = re.match(r"http://[^/]+/", seen.page.url)
    assert origin is not None
    assert seen.asked == [(f"{HOST}0", origin[0])]


def test_a_frame_may_do_little_and_has_a_name(visit: VisitTo) -> None:
    page = visit("frame").page
    page.locator(".recording-load").click()

    found = page.locator(".recording iframe").evaluate(
        "(f) => [f.title, f.allow, f.referrerPolicy, f.loading, f.getAttribute('sandbox')]"
    )

    assert found == [
        "Recording: Low Tide",
        "autoplay; fullscreen",
        "strict-origin",
        "lazy",
        "allow-scripts allow-same-origin",
    ]


def test_a_time_leads_to_the_button_first_and_into_the_frame_then(visit: VisitTo) -> None:
    seen = visit("frame")
    page = seen.page

    page.locator(ROLE).first.focus()
    page.keyboard.press("Enter")
    button = page.get_by_role("button", name="Load the recording from host.example at 0:20")
    expect(button).to_be_focused()
    assert seen.asked == []
    page.keyboard.press("Enter")
    page.frame_locator(".recording iframe").get_by_role("button").wait_for()
    assert [url for url, _ in seen.asked] == [f"{HOST}20"]

    with page.expect_response(f"{HOST}40"):
        page.locator(START).first.click()
    assert [url for url, _ in seen.asked] == [f"{HOST}20", f"{HOST}40"]


def test_a_frame_that_is_put_away_leaves_its_host_alone(visit: VisitTo) -> None:
    page = visit("frame").page
    page.locator(".recording-load").click()
    page.locator(".recording iframe").wait_for()
    page.evaluate("scrollTo({ top: 9e9, behavior: 'instant' })")
    page.get_by_role("button", name="Put the player away").click()

    assert page.locator("iframe").count() == 0
    expect(
        page.get_by_role("button", name="Load the recording from host.example")
    ).to_be_attached()


def test_a_file_elsewhere_waits_for_the_button_too(visit: VisitTo) -> None:
    seen = visit("far")
    seen.page.locator(ROLE).first.click()
    button = seen.page.get_by_role("button", name="Load the recording from files.example at 0:20")
    expect(button).to_be_focused()
    assert seen.asked == []

    with seen.page.expect_response("https://files.example/clip.wav"):
        button.click()

    assert seen.page.locator(".recording audio").get_attribute("aria-label") == (
        "Recording: Low Tide"
    )


# W3C, Layout Instability: how far things move without the reader's doing. The browser's controls
# arrange themselves when the page is there; their parts have no node that a page could name.
SHIFTS = """() => new Promise((done) => {
  const isOurs = (entry) => entry.sources.some(({ node }) => node);
  new PerformanceObserver((list) => done(list.getEntries().filter(isOurs).length))
    .observe({ type: 'layout-shift', buffered: true });
  setTimeout(() => done(0), 600);
})"""


@pytest.mark.parametrize("width", [320, 1280])
@pytest.mark.parametrize("slug", ["file", "film", "frame", "far"])
def test_nothing_moves_when_the_script_arrives_or_the_player_comes(
    visit: VisitTo, slug: str, width: int
) -> None:
    page = visit(slug, width=width).page
    assert page.evaluate(SHIFTS) == 0
    below = page.locator(".notes")
    before = below.bounding_box()

    if slug in {"frame", "far"}:
        page.locator(".recording-load").click()
        page.locator(".recording :is(iframe, audio)").wait_for()

    assert below.bounding_box() == before
    assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_the_page_says_whose_recording_it_is_and_warns_of_its_level(visit: VisitTo) -> None:
    for slug in ("file", "frame"):
        words = visit(slug).page.locator(".recording-words").inner_text()
        assert "The recording belongs to The Gantry." in words
        assert "loud sound harms hearing" in words


@pytest.mark.parametrize(
    ("slug", "href"),
    [
        ("file", "clip%20one.wav#t=20"),
        ("frame", "https://watch.example/7#t=20"),
        ("far", "https://files.example/clip.wav#t=20"),
        ("page", "https://watch.example/7#t=20"),
    ],
)
def test_without_scripts_times_are_links_with_a_media_fragment(
    visit: VisitTo, slug: str, href: str
) -> None:
    seen = visit(slug, script=False)
    for link in (ROLE, CHART, ".plan-rows tr:nth-child(2) a.moment"):
        assert seen.page.locator(link).first.get_attribute("href") == href
    expect(seen.page.get_by_role("button", name="Load")).to_have_count(0)
    expect(seen.page.get_by_role("button", name="Put")).to_have_count(0)
    assert seen.asked == []


def test_without_scripts_the_player_of_a_file_and_the_link_to_a_host_are_there(
    visit: VisitTo,
) -> None:
    expect(visit("file", script=False).page.locator("audio[controls]")).to_be_visible()
    link = visit("frame", script=False).page.get_by_role("link", name="Open the recording")
    expect(link).to_have_attribute("href", "https://watch.example/7")


@pytest.mark.parametrize("script", [True, False])
def test_where_no_recording_is_named_times_are_plain_text(visit: VisitTo, *, script: bool) -> None:
    page = visit("none", script=script).page

    assert page.locator(".recording, a.moment, [data-seconds]").count() == 0
    expect(page.locator("time.moment", has_text="0:20").first).to_be_visible()
    expect(page.locator("time.chart-moment")).to_have_text("0:20")


def test_a_page_that_only_links_keeps_its_links(visit: VisitTo) -> None:
    seen = visit("page")
    assert seen.page.locator(".recording").count() == 0

    seen.page.locator(ROLE).first.click()
    seen.page.wait_for_url("https://watch.example/7#t=20")


def test_a_chart_that_is_played_silences_the_recording(visit: VisitTo) -> None:
    page = visit("file").page
    page.locator(ROLE).first.click()
    heard_at(page, 20)

    page.locator(".hearing-play").first.click()

    page.wait_for_function("document.querySelector('audio').paused")
