"""The archive: the newest write-ups, a page for each value, and files that combine them."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date, timedelta
from html.parser import HTMLParser
from pathlib import Path
from posixpath import dirname, join, normpath
from urllib.parse import parse_qs, unquote, urlsplit

import html5lib
import pytest
from unit.finding.drawn_archive import draw_rows
from unit.site.conftest import write_theme

from sitegen.article import FrontMatter
from sitegen.article.front import Song
from sitegen.finding import ChartEntry, Entry
from sitegen.finding.facet_addresses import identity
from sitegen.finding.facets import FACETS
from sitegen.pages.theme import Theme, load_theme
from sitegen.site.archive_pages import LINES, NEWEST, archive_pages
from sitegen.site.content import ContentFile
from sitegen.site.listing import Listed, ordered_listing
from sitegen.site.settings import Settings

LINER = Path(__file__).parents[3] / "themes/liner"
SETTINGS = Settings(title="Side Two")
HOSTILE = '"><script>alert(1)</script>&amp;{{ 7 * 7 }}'


@pytest.fixture(scope="module")
def liner() -> Theme:
    return load_theme(LINER)


def listed(slug: str, front: FrontMatter, entry: Entry, *, draft: bool = False) -> Listed:
    file = ContentFile(slug, Path(f"breakdowns/{slug}/article.md"))
    return Listed(file, front, "", len(entry.charts), draft=draft, entry=entry)


def drawn(count: int) -> tuple[Listed, ...]:
    rows = draw_rows(11, count)
    return ordered_listing(listed(f"n{n}", *row) for n, row in enumerate(rows))


def made(theme: Theme, articles: Sequence[Listed]) -> dict[str, str]:
    pages = archive_pages(theme, SETTINGS, articles, {})
    return {path: data.decode() for path, data in pages.items()}


class Links(HTMLParser):
    """The addresses in a page."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.found: list[str] = []
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Keep where a link leads."""
        if tag == "a":
            self.found += [value for name, value in attrs if name == "href" and value]


def targets(path: str, html: str) -> list[str]:
    """Return where the links of a page lead, from the top of the site."""
    found = (urlsplit(href) for href in Links(html).found)
    return [normpath(join(dirname(path), unquote(one.path))) for one in found if one.path]


@pytest.mark.parametrize("count", [0, 1, 3, 40])
def test_every_link_into_the_archive_leads_to_a_page(liner: Theme, count: int) -> None:
    articles = drawn(count)
    pages = made(liner, articles)
    known = {f"{one.address}index.html" for one in articles} | pages.keys()
    for path, html in pages.items():
        if path.endswith(".html"):
            own = [to for to in targets(path, html) if to.startswith(("archive", "breakdowns"))]
            assert [to for to in own if to not in known] == [], path


def test_pages_are_sound_html(liner: Theme) -> None:
    pages = made(liner, drawn(3))
    for path in ("index.html", "archive/index.html", "archive/key/index.html"):
        html5lib.HTMLParser(strict=True).parse(pages[path])
    (one, *_) = (path for path in pages if re.match("archive/topic/[^/]+/", path))
    html5lib.HTMLParser(strict=True).parse(pages[one])


def test_every_write_up_stands_on_the_pages_of_its_values(liner: Theme) -> None:
    articles = drawn(40)
    pages = made(liner, articles)
    listing: dict[str, set[str]] = {}
    for path, html in pages.items():
        if re.fullmatch(r"archive/[^/]+/[^/]+/index\.html", path):
            listing[path] = set(targets(path, html))
    for facet in FACETS:
        folders = [found for path, found in listing.items() if path.split("/")[1] == facet.id]
        for one in articles:
            values = {identity(words) for words in facet.find(one.front, one.entry)} - {""}
            mine = [found for found in folders if f"{one.address}index.html" in found]
            assert len(mine) == len(values), (facet.id, one.address)


def test_counts_are_the_lines_of_their_pages(liner: Theme) -> None:
    pages = made(liner, drawn(90))
    counted = re.findall(
        r'<a href="([^"]+)">(?:<bdi>)?[^<]+(?:</bdi>)?</a> <span class="facet-count">(\d+)',
        pages["archive/index.html"],
    )
    assert len(counted) > 60
    for href, count in counted:
        assert pages[f"archive/{href}"].count('class="line-song"') == int(count)


def test_the_front_page_shows_the_newest_and_leads_to_the_rest_by_year(liner: Theme) -> None:
    fronts = [
        FrontMatter(title=f"No. {n}", published=date(2026, 1, 1) - timedelta(days=9 * n))
        for n in range(NEWEST + 40)
    ]
    articles = tuple(listed(f"n{n}", front, Entry()) for n, front in enumerate(fronts))
    front = made(liner, articles)["index.html"]
    shown = re.findall(r'<h3><a href="breakdowns/(n\d+)/', front)
    assert shown == [f"n{n}" for n in range(NEWEST)]
    assert "All 88 write-ups by year" in front
    assert 'href="archive/published/2024/index.html"' in front
    assert "by year" not in made(liner, articles[:NEWEST])["index.html"]


def test_a_long_page_goes_on_at_the_next(liner: Theme) -> None:
    front = FrontMatter(title="One", topics=("bass lines",))
    articles = tuple(listed(f"n{n}", front, Entry()) for n in range(LINES + 1))
    pages = made(liner, articles)
    folder = "archive/topic/bass-lines/"
    first, second = pages[f"{folder}index.html"], pages[f"{folder}page-2.html"]
    assert (first.count('class="line-song"'), second.count('class="line-song"')) == (LINES, 1)
    assert f"{folder}page-2.html" in targets(f"{folder}index.html", first)
    assert '<a href="page-2.html" aria-current="page">' in second
    assert f"{folder}page-3.html" not in pages


def test_a_theme_without_pages_for_values_lists_everything(tmp_path: Path) -> None:
    theme = load_theme(write_theme(tmp_path / "plain"))
    articles = drawn(NEWEST + 10)
    pages = made(theme, articles)
    assert list(pages) == ["index.html"]
    assert pages["index.html"].count("<a href=") == NEWEST + 10


def test_drafts_say_so_wherever_they_are_listed(liner: Theme) -> None:
    front = FrontMatter(title="One", topics=("capo",))
    pages = made(liner, (listed("a", front, Entry(), draft=True),))
    assert '<p class="stamp">Draft</p>' in pages["index.html"]
    assert '<span class="line-draft">draft</span>' in pages["archive/topic/capo/index.html"]
    assert '"",0,1]' in pages["shelf/records-0.json"]


def test_only_what_has_charts_is_shown_with_a_picture(liner: Theme) -> None:
    front = FrontMatter(title="One")
    with_chart = listed("a b", front, Entry((ChartEntry("c", "", "", "notation"),)))
    page = made(liner, (with_chart, listed("b", front, Entry())))["index.html"]
    assert re.findall(r'<img[^>]* src="([^"]+)"', page) == ["breakdowns/a%20b/incipit.svg"]


def test_hostile_words_stay_words(liner: Theme) -> None:
    song = Song(HOSTILE, HOSTILE, writers=(HOSTILE,), producers=(HOSTILE,), tuning=HOSTILE)
    front = FrontMatter(title=HOSTILE, summary=HOSTILE, song=song, topics=(HOSTILE,))
    pages = made(liner, (listed("a", front, Entry()),))
    for path, html in pages.items():
        if path.endswith(".html"):
            assert "<script>alert" not in html, path
            assert "49" not in re.sub(r"[0-9a-f]{8,}", "", html), path
        assert re.fullmatch(r"[a-zA-Z0-9_./-]+", path)


def test_a_value_asks_the_front_page_for_itself(liner: Theme) -> None:
    song = replace(Song(), tuning="drop C♯")
    chart = ChartEntry("c", "", "", "notation", tempo=40, key="C♯ minor")
    pages = made(liner, (listed("a", FrontMatter(title="x", song=song), Entry((chart,))),))
    asked: Mapping[str, str] = {
        "archive/key/c-sharp-minor/index.html": "key=c-sharp-minor",
        "archive/tempo/under-50/index.html": "tempo=..49",
        "archive/tuning/drop-c-sharp/index.html": "tuning=drop-c-sharp",
    }
    for path, query in asked.items():
        assert f'href="../../../index.html?{query}"' in pages[path]
        assert parse_qs(query)
