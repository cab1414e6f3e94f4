"""The demo site as it is built: whatever the archive and the write-ups link to is there."""

from html.parser import HTMLParser
from pathlib import Path
from posixpath import dirname, join, normpath
from urllib.parse import unquote, urlsplit

import pytest

from sitegen.cli import main

CONTENT = Path(__file__).parents[2] / "content"
BEYOND = ("http:", "https:", "mailto:", "data:")


class Uses(HTMLParser):
    """What a page links to and shows, and its own anchors."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.found: list[str] = []
        self.anchors: set[str] = set()
        self.feed(html)

    def handle_starttag(self, _tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Keep the addresses and anchors of a tag."""
        given = dict(attrs)
        self.found += [value for name in ("href", "src") if (value := given.get(name))]
        if given.get("id"):
            self.anchors.add(given["id"] or "")


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("site") / "published"
    assert main(["build", str(CONTENT), "--out", str(out)]) == 0
    return out


def dead_links(folder: Path) -> list[str]:
    """Return the links of all pages that lead to nothing, with the page of each."""
    pages = {
        path.relative_to(folder).as_posix(): Uses(path.read_text("utf-8"))
        for path in folder.rglob("*.html")
    }
    dead = []
    for page, uses in pages.items():
        # The page for lost readers is shown under any address, and starts its links at the top.
        for href in uses.found if page != "404.html" else ():
            to = urlsplit(href)
            if href.startswith(BEYOND):
                continue
            target = normpath(join(dirname(page), unquote(to.path))) if to.path else page
            there = pages.get(target)
            is_dead = not (folder / target).is_file()
            if is_dead or (to.fragment and there and unquote(to.fragment) not in there.anchors):
                dead.append(f"{page}: {href}")
    return dead


def test_every_link_of_the_demo_site_leads_somewhere(built: Path) -> None:
    assert len(list((built / "archive").rglob("*.html"))) > 60
    assert dead_links(built) == []


def test_a_dead_link_would_be_seen(built: Path, tmp_path: Path) -> None:
    (tmp_path / "a").mkdir()
    (tmp_path / "index.html").write_text('<a href="a/index.html#here">x</a>', encoding="utf-8")
    (tmp_path / "a/index.html").write_text('<img src="../gone.svg">', encoding="utf-8")
    assert dead_links(tmp_path) == ["index.html: a/index.html#here", "a/index.html: ../gone.svg"]
    assert built


def test_every_write_up_has_a_small_picture(built: Path) -> None:
    pictures = sorted(built.glob("breakdowns/*/incipit.svg"))
    assert len(pictures) == len(list(built.glob("breakdowns/*/index.html")))
    assert all(1000 < picture.stat().st_size < 16_000 for picture in pictures)
