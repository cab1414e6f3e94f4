"""What a page says of itself in a tab, in search results and in link previews."""

from dataclasses import replace
from html.parser import HTMLParser

import pytest

from sitegen.article.front import FrontMatter, Song
from sitegen.pages.sharing import description, open_graph_locale, song_line, tab_title
from sitegen.pages.theme import Theme
from sitegen.pages.views import ArticleView, CardView

ADDRESS = "https://turnaround.example/breakdowns/low-tide/"
CARD = CardView(f"{ADDRESS}card.png", 1200, 630, "The title. With the first bars of Example 1.")


class Head(HTMLParser):
    """Collects what a page's head says by name, and its title."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.found: dict[str, list[str]] = {}
        self.links: dict[str, str] = {}
        self.title = ""
        self._in_title = False
        self.feed(html.partition("<body>")[0])

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Keep one element."""
        named = dict(attrs)
        self._in_title = tag == "title"
        name = named.get("property") or named.get("name")
        if tag == "meta" and name:
            self.found.setdefault(name, []).append(named.get("content") or "")
        if tag == "link":
            self.links[named.get("rel") or ""] = named.get("href") or ""

    def handle_data(self, data: str) -> None:
        """Keep the title."""
        if self._in_title:
            self.title += data.strip("\n")


def addressed(article: ArticleView) -> ArticleView:
    return replace(article, site=replace(article.site, address=ADDRESS), card=CARD, draft=False)


def titled(article: ArticleView, title: str, song: str = "", summary: str = "") -> ArticleView:
    front = FrontMatter(title=title, song=Song(song, "The Harbour Lamps"), summary=summary)
    return replace(article, front=front)


def test_the_tab_names_the_song_in_any_case(article: ArticleView) -> None:
    assert tab_title(titled(article, "Low Tide: two chords", "Low tide")) == "Low Tide: two chords"
    assert tab_title(titled(article, "Two chords", "Low Tide")) == "Two chords (Low Tide)"
    assert tab_title(titled(article, "Two chords")) == "Two chords"


def test_the_description_names_song_and_artist(article: ArticleView) -> None:
    def of(title: str, summary: str) -> str:
        return description(titled(article, title, "Low Tide", summary))

    line = "Low Tide by The Harbour Lamps."
    assert of("Two chords", "No third.") == f"{line} No third."
    assert of("Low Tide", "No third.") == f"{line} No third."
    assert of("Low Tide", "What The Harbour Lamps leave out.") == (
        "What The Harbour Lamps leave out."
    )
    assert of("Two chords", "") == f"{line} Records, taken apart"


def test_a_song_line_has_what_is_known() -> None:
    assert song_line(Song("Low Tide", "The Harbour Lamps")) == "Low Tide by The Harbour Lamps"
    assert song_line(Song(artist="The Harbour Lamps")) == "The Harbour Lamps"
    assert song_line(Song()) == ""


# BCP 47 on the left; the protocol writes language_TERRITORY (ogp.me, og:locale).
@pytest.mark.parametrize(
    ("tag", "locale"),
    [("en-GB", "en_GB"), ("pt-br", "pt_BR"), ("zh-Hant-TW", "zh_TW"), ("en", ""), ("sr-Latn", "")],
)
def test_a_language_tag_as_open_graph_has_it(tag: str, locale: str) -> None:
    assert open_graph_locale(tag) == locale


def test_the_head_has_what_link_previews_read(theme: Theme, article: ArticleView) -> None:
    head = Head(theme.render_article(addressed(article)))
    # The protocol asks for the first four of every page (ogp.me, Basic Metadata).
    assert head.found["og:title"] == ["The third is in the throat"]
    assert head.found["og:type"] == ["article"]
    assert head.found["og:image"] == [f"{ADDRESS}card.png"]
    assert head.found["og:url"] == [ADDRESS]
    assert head.links["canonical"] == ADDRESS
    assert head.found["og:description"] == head.found["description"]
    assert head.found["og:site_name"] == ["The Turnaround"]
    assert head.found["og:image:width"] == ["1200"]
    assert head.found["og:image:height"] == ["630"]
    assert head.found["og:image:alt"] == [CARD.alt]
    assert head.found["article:published_time"] == ["2026-05-04"]
    assert head.found["article:modified_time"] == ["2026-06-01"]
    assert head.found["article:tag"] == ["suspended chords", "detuned guitar"]
    assert head.found["twitter:card"] == ["summary_large_image"]
    assert head.title == "The third is in the throat (Low Tide) · The Turnaround"


def test_without_an_address_there_is_neither_picture_nor_canonical(
    theme: Theme, article: ArticleView
) -> None:
    html = theme.render_article(replace(article, card=replace(CARD, address="")))
    head = Head(html)
    assert not {"og:image", "og:url", "twitter:card"} & head.found.keys()
    assert "canonical" not in head.links
    assert head.found["og:title"] == ["The third is in the throat"]


def test_the_card_is_nowhere_in_the_page(theme: Theme, article: ArticleView) -> None:
    _, _, body = theme.render_article(addressed(article)).partition("<body>")
    assert body
    assert "card.png" not in body


@pytest.mark.parametrize("language", ["en", "de", "pt-BR"])
def test_the_page_is_in_the_sites_language(
    theme: Theme, article: ArticleView, language: str
) -> None:
    view = replace(article, site=replace(article.site, language=language))
    html = theme.render_article(view)
    assert html.startswith(f'<!DOCTYPE html>\n<html lang="{language}">')
    locale = Head(html).found.get("og:locale", [])
    assert locale == (["pt_BR"] if language == "pt-BR" else [])


def test_hostile_words_stay_in_their_place(theme: Theme, article: ArticleView) -> None:
    words = "\"><script>alert(1)</script>{{ 7 * 7 }}&'"
    front = FrontMatter(title=words, summary=words, song=Song(words, words), topics=(words,))
    view = addressed(replace(article, front=front, moments=()))
    view = replace(view, card=replace(CARD, alt=words))
    head = Head(theme.render_article(view))
    assert head.found["og:title"] == [words]
    assert head.found["og:image:alt"] == [words]
    assert head.found["article:tag"] == [words]
    assert head.title == f"{words} · The Turnaround"
