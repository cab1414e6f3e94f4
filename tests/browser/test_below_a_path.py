"""A site works below a path of its host: pages, questions, files, and what it tells others."""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import unquote, urldefrag, urljoin

import pytest
from browser.conftest import one_of_each
from browser.opening import open_page
from browser.serving import served
from lxml import etree
from playwright.sync_api import Browser, Page, Response, expect

from sitegen.cli import main

CONTENT = Path(__file__).parents[2] / "content"
PATH = "/notes/on songs/"
ADDRESS = "https://pencilled-part.example/notes/on%20songs/"
IN_TEXT = re.compile(r"https://pencilled-part\.example/[^\s\"'<>]*")
FILES_THAT_TELL = ("feed.xml", "sitemap.xml", "robots.txt", "archive.json")
HREFS = "all => all.map((one) => one.href ?? one.src).filter((one) => typeof one === 'string')"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the demo site for a place below a path."""
    content = tmp_path_factory.mktemp("below") / "content"
    shutil.copytree(CONTENT, content)
    settings = content / "site.toml"
    text = settings.read_text("utf-8")
    moved = re.sub(r'address = ".*"', f'address = "{ADDRESS}"', text)
    assert moved != text
    settings.write_text(moved, encoding="utf-8")
    out = content.with_name("published")
    assert main(["build", str(content), "--out", str(out)]) == 0
    return out


@pytest.fixture(scope="module")
def top(folder: Path) -> Iterator[str]:
    with served(folder, PATH.replace(" ", "%20")) as address:
        yield address


class Failures:
    """What went wrong while a page was used: answers of a server, errors of scripts."""

    def __init__(self, page: Page) -> None:
        self.found: list[str] = []
        page.on("response", self._answer)
        page.on("requestfailed", lambda request: self.found.append(request.url))
        page.on("pageerror", lambda wrong: self.found.append(str(wrong)))

    def _answer(self, response: Response) -> None:
        if response.status >= 400:
            self.found.append(f"{response.status} {response.url}")


def pages_of(folder: Path) -> list[str]:
    return one_of_each(sorted(page.relative_to(folder) for page in folder.rglob("*.html")))


def is_there(folder: Path, address: str, top: str) -> bool:
    """Tell whether a file of the site stands under an address."""
    if not address.startswith(top):
        return False
    name = unquote(address.removeprefix(top))
    path = folder / name
    return (path / "index.html" if not name or name.endswith("/") else path).is_file()


def look_at(page: Page, name: str, folder: Path, top: str) -> list[str]:
    """Open a page and return its links that lead to nothing, or out of the site on its host."""
    page.goto(f"{top}{name}")
    page.wait_for_load_state("networkidle")
    wrong = []
    for href in page.eval_on_selector_all("a[href], link[href], [src]", HREFS):
        to = urldefrag(href.partition("?")[0])[0].replace(ADDRESS, top)
        is_ours = to.startswith((urljoin(top, "/"), urljoin(ADDRESS, "/")))
        if is_ours and not is_there(folder, to, top):
            wrong.append(f"{name}: {href}")
    return wrong


def test_every_page_loads_all_that_it_needs_and_links_to_what_is_there(
    browser: Browser, folder: Path, top: str
) -> None:
    page = browser.new_page()
    failures = Failures(page)
    dead = [wrong for name in pages_of(folder) for wrong in look_at(page, name, folder, top)]
    page.close()
    assert failures.found == []
    assert dead == []


def test_what_leads_out_of_the_path_would_be_seen(browser: Browser, tmp_path: Path) -> None:
    (tmp_path / "index.html").write_text(
        '<a href="/index.html">up</a><a href="gone.html">x</a><a href="index.html#a">y</a>'
        '<img src="/notes/none.png"><script>throw Error("torn")</script>',
        encoding="utf-8",
    )
    page = browser.new_page()
    failures = Failures(page)
    with served(tmp_path, PATH.replace(" ", "%20")) as top:
        assert len(look_at(page, "index.html", tmp_path, top)) == 3
    page.close()
    assert any("404" in one for one in failures.found)
    assert any("torn" in one for one in failures.found)


@pytest.mark.parametrize(
    ("form", "field", "asked"),
    [
        ("chords", "chords", "i bVI"),
        ("tune", "tune", "up up down"),
        ("beat", "feel", "straight"),
        ("words", "words", "chorus"),
    ],
)
def test_questions_are_answered_and_lead_to_pages(
    browser: Browser, folder: Path, top: str, form: str, field: str, asked: str
) -> None:
    page = open_page(browser, f"{top}find/index.html?{field}={asked}#find_{form}", 1280)
    failures = Failures(page)
    link = page.locator(f"#{form}_found a").first
    expect(link).to_be_visible()
    href = urljoin(page.url, link.get_attribute("href") or "")
    assert is_there(folder, urldefrag(href.partition("?")[0])[0], top)
    link.click()
    page.wait_for_selector("html[data-enhanced]", state="attached")
    assert failures.found == []
    page.context.close()


def test_the_archive_combines_and_leads_to_write_ups(browser: Browser, top: str) -> None:
    page = open_page(browser, f"{top}index.html?words=a", 1280)
    failures = Failures(page)
    page.locator(".matches .record h3 a").first.click()
    page.wait_for_selector("article h1")
    assert page.url.startswith(f"{top}breakdowns/")
    assert failures.found == []
    page.context.close()


@pytest.mark.parametrize("name", FILES_THAT_TELL)
def test_what_tells_others_of_pages_names_those_that_are_there(folder: Path, name: str) -> None:
    text = (folder / name).read_text("utf-8")
    told = {urldefrag(one)[0].partition("?")[0] for one in IN_TEXT.findall(text)}
    assert told
    assert [one for one in sorted(told) if not is_there(folder, one, ADDRESS)] == []


def test_the_page_for_lost_readers_leads_back_from_any_depth(folder: Path) -> None:
    page = etree.HTML((folder / "404.html").read_text("utf-8"))
    found = page.xpath("//a/@href | //link/@href | //script/@src")
    hrefs = [str(one) for one in found if not one.startswith("#")]
    lost = urljoin(ADDRESS, "some/where/else.html")
    reached = [urldefrag(urljoin(lost, href))[0] for href in hrefs]
    assert reached
    assert [one for one in reached if not is_there(folder, one, ADDRESS)] == []
