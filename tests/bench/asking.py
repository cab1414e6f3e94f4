"""What asking an archive of thousands costs in a real browser: times, long tasks, weights.

Run it with `python tests/bench/asking.py [--write-ups 5000] [--questions 200] [--seed 1]`; most of
its minutes go into making the archive (`asked_archive.py`). Questions are drawn from what the
archive's own charts hold, moved by lot, and asked by the forms of the pages themselves, each of
them twice in a row: the second time all that it needs is loaded. A time runs from the pressed
button to the line that says what was found, the list being there. Beside the times stand the
longest task of the page's own thread, and what the first question of twelve fresh pages takes and
loads, compressed. The times are of this machine, with the target beside them; nothing is asserted.
"""

import argparse
import functools
import gzip
import shutil
import statistics
import sys
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from urllib.parse import unquote, urlsplit

ROOT = Path(__file__).parents[2]
if __name__ == "__main__":
    sys.path[:0] = [str(ROOT / "tests"), str(ROOT)]

from bench.asked_archive import make_archive  # noqa: E402 - after the path is set
from bench.asked_questions import WAYS, Way  # noqa: E402 - as above
from browser.serving import served  # noqa: E402 - as above
from playwright.sync_api import Browser, Page, Request, sync_playwright  # noqa: E402 - as above

_MUSIC_MS, _TASK_MS, _ARCHIVE_BYTES = 50, 50, 150_000
_FIRST_ONES = 12

# Long tasks are those of more than 50 ms, as the standard has them (W3C Long Tasks API).
WATCH = """() => {
  window.longest = 0;
  const see = (list) => {
    for (const { duration } of list.getEntries()) longest = Math.max(longest, duration);
  };
  new PerformanceObserver(see).observe({ type: "longtask", buffered: true });
}"""
ASK = """async ([form, fields]) => {
  const asked = document.getElementById(form);
  const said = asked.parentElement.querySelector(".finder-said");
  for (const [name, value] of Object.entries(fields)) asked.elements.namedItem(name).value = value;
  const answered = new Promise((resolve) => {
    const seen = new MutationObserver(() => resolve(seen.disconnect() ?? performance.now()));
    seen.observe(said, { childList: true });
  });
  const began = performance.now();
  asked.requestSubmit();
  const took = (await answered) - began;
  return [took, asked.parentElement.querySelector(".found").childElementCount];
}"""
TYPE_ON = """async ([name, text]) => {
  const field = document.querySelector(`.facet-form [name=${name}]`);
  const said = document.querySelector(".facet-chosen p");
  for (let n = 1; n <= text.length; n++) {
    field.value = text.slice(0, n);
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
    await new Promise((resolve) => setTimeout(resolve, 90));
  }
  await new Promise((resolve) => setTimeout(resolve, 400));
  return said.textContent;
}"""
PRESS = """async ([facet, place]) => {
  const group = document.querySelector(`.facet[data-facet="${facet}"]`);
  group.closest("details").open = true;
  const button = group.querySelectorAll("button")[place];
  if (!button) return null;
  const said = document.querySelector(".facet-chosen p");
  const answered = new Promise((resolve) => {
    const seen = new MutationObserver(() => resolve(seen.disconnect() ?? performance.now()));
    seen.observe(said, { childList: true });
  });
  const began = performance.now();
  button.click();
  return (await answered) - began;
}"""


@dataclass
class Loads:
    """The files that a page loaded, by their path from the top of the site."""

    top: Path
    names: set[str] = field(default_factory=set)

    def note(self, request: Request) -> None:
        """Take note of a request that was answered."""
        name = unquote(urlsplit(request.url).path).lstrip("/")
        self.names.add(f"{name}index.html" if name.endswith("/") or not name else name)

    def weight(self, *, pictures: bool = True) -> int:
        """Return the bytes of all files, compressed as a host does; each is counted once."""
        files = (self.top / name for name in self.names if pictures or not name.endswith(".svg"))
        return sum(_weight(path) for path in files if path.is_file())


@functools.cache
def _weight(path: Path) -> int:
    data = path.read_bytes()
    # The index of words is compressed by itself.
    return min(len(data), len(gzip.compress(data, 6)))


def main(arguments: list[str]) -> int:
    """Make the archive, ask it, print the table."""
    parser = argparse.ArgumentParser(description=__doc__, allow_abbrev=False)
    parser.add_argument("--write-ups", type=int, default=5000)
    parser.add_argument("--questions", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args(arguments)
    lot = Random(asked.seed)  # noqa: S311 - drawn to measure
    with tempfile.TemporaryDirectory() as folder:
        top = Path(folder)
        listing = make_archive(top, asked.write_ups, asked.seed)
        entries = [one.entry for one in listing]
        charts = sum(len(entry.charts) for entry in entries)
        print(f"{len(listing)} write-ups, {charts} charts", flush=True)
        chromium = shutil.which("chromium") or shutil.which("chromium-browser")
        with served(top) as address, sync_playwright() as playwright:
            browser = playwright.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
            for way in WAYS:
                questions = way.draw(entries, lot, asked.questions)
                ask_all(browser, f"{address}find/index.html", top, way, questions)
            print_archive(browser, f"{address}index.html", top, lot)
            browser.close()
    return 0


def ask_all(
    browser: Browser, address: str, top: Path, way: Way, questions: Sequence[dict[str, str]]
) -> None:
    """Ask all questions of one way and print what they cost, at first and later."""
    firsts = [_ask_first(browser, address, top, way, one) for one in questions[:_FIRST_ONES]]
    page, _ = _opened(browser, address, top)
    times, found = [], 0
    for question in questions:
        _ask(page, way, question)
        took, items = _ask(page, way, question)
        times.append(took)
        found += items > 0
    longest = page.evaluate("longest")
    page.context.close()
    print(f"{way.name:<20} {_say(times)}, target {way.target}; longest task {longest:.0f} ms")
    weights = [weight for _, weight, _ in firsts]
    print(
        f"{'':<20} first: {statistics.median(took for took, _, _ in firsts):.0f} ms,"
        f" {_kilo(statistics.median(weights))}, most {_kilo(max(weights))},"
        f" target {_kilo(way.bytes)}; the page before {_kilo(firsts[0][2])};"
        f" {found} of {len(times)} found something",
        flush=True,
    )


def _ask_first(
    browser: Browser, address: str, top: Path, way: Way, question: dict[str, str]
) -> tuple[float, int, int]:
    """Return what a first question takes in ms and loads in bytes, and what its page loaded."""
    page, loads = _opened(browser, address, top)
    page.wait_for_load_state("networkidle")
    before = Loads(top, set(loads.names))
    took, _ = _ask(page, way, question)
    page.wait_for_load_state("networkidle")
    page.context.close()
    return took, Loads(top, loads.names - before.names).weight(), before.weight()


def _ask(page: Page, way: Way, question: dict[str, str]) -> tuple[float, int]:
    """Return how many milliseconds an answer took and how many passages it shows."""
    took, items = page.evaluate(ASK, [way.form, question])
    return float(took), int(items)


def print_archive(browser: Browser, address: str, top: Path, lot: Random) -> None:
    """Print what the archive's own page costs: cold, while somebody types, and when pressed."""
    page, loads = _opened(browser, address, top)
    page.wait_for_load_state("networkidle")
    cold, longest = loads.weight(), page.evaluate("longest")
    print(
        f"{'archive, cold':<20} {_kilo(cold)} with its pictures,"
        f" target {_kilo(_ARCHIVE_BYTES)}; longest task {longest:.0f} ms"
    )
    page.evaluate("longest = 0")
    for text in ("river", "the lantern", "a song in E minor"):
        page.evaluate(TYPE_ON, ["words", text])
    longest = page.evaluate("longest")
    print(f"{'archive, typing':<20} longest task {longest:.0f} ms, target {_TASK_MS}")
    page.goto(address)
    page.wait_for_selector("html[data-filing]", state="attached")
    facets = page.eval_on_selector_all(".facet", "all => all.map((one) => one.dataset.facet)")
    times = []
    for _ in range(40):
        took = page.evaluate(PRESS, [lot.choice(facets), lot.randrange(3)])
        page.wait_for_load_state("networkidle")
        if took is not None:
            times.append(took)
    weight = loads.weight(pictures=False)
    print(
        f"{'archive, pressed':<20} {_say(times)}, target {_MUSIC_MS}; longest task"
        f" {page.evaluate('longest'):.0f} ms; {_kilo(weight)} in all, without pictures"
    )
    page.context.close()


def _opened(browser: Browser, address: str, top: Path) -> tuple[Page, Loads]:
    """Return a page that is ready to be asked, and what it loads."""
    page = browser.new_context(viewport={"width": 1280, "height": 900}).new_page()
    loads = Loads(top)
    page.on("requestfinished", loads.note)
    page.add_init_script(f"({WATCH})()")
    page.goto(address)
    page.wait_for_selector("html[data-finding], html[data-filing]", state="attached")
    return page, loads


def _kilo(size: float) -> str:
    return f"{size / 1000:.0f} KB"


def _say(times: Sequence[float]) -> str:
    ordered = sorted(times)
    nearly_all = ordered[int(0.95 * (len(ordered) - 1))]
    return f"{statistics.median(ordered):.1f} ms, 95 % {nearly_all:.1f}, most {ordered[-1]:.1f}"


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
