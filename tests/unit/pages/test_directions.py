"""What an author names stays apart from the words around it, whichever way its letters run."""

from dataclasses import replace
from datetime import date

import pytest
from unit.pages.loose_names import NAME, loose

from sitegen.article import FrontMatter
from sitegen.article.front import Correction, Moment, Rights, Song, SourceNote
from sitegen.pages.directions import isolated
from sitegen.pages.theme import Theme
from sitegen.pages.views import (
    ArchiveEntry,
    ArchiveView,
    ArticleView,
    ChartView,
    Link,
    RelatedView,
)


@pytest.fixture
def front() -> FrontMatter:
    """Return front matter whose every name runs from right to left."""
    song = Song(title=NAME, artist=NAME, album=NAME, studio=NAME, writers=(NAME, NAME))
    return FrontMatter(
        title=NAME,
        summary=NAME,
        published=date(2026, 5, 4),
        topics=(NAME,),
        song=song,
        moments=(Moment(83, NAME),),
        sources=(SourceNote(NAME, NAME, NAME, NAME),),
        corrections=(Correction(date(2026, 5, 5), NAME),),
        rights=Rights(NAME, NAME),
    )


def test_a_name_in_plain_text_is_isolated_where_its_letters_run_the_other_way() -> None:
    assert isolated("Café 7/8") == "Café 7/8"
    assert isolated(NAME) == f"\u2068{NAME}\u2069"


def test_a_loose_name_is_seen() -> None:
    page = f"<p>{NAME} <b>{NAME}</b>, <bdi>{NAME}</bdi> <i dir=auto>{NAME}</i>{NAME}</p>"

    assert len(loose(page)) == 3


def test_a_write_up_keeps_names_apart(
    theme: Theme, article: ArticleView, front: FrontMatter
) -> None:
    site = replace(article.site, title=NAME, tagline=NAME, author=NAME, notice=NAME)
    site = replace(site, menu=(Link(NAME, "../about/"),))
    beside = Link(NAME, "../x/index.html")
    view = replace(article, site=site, front=front, earlier=beside, later=beside, moments=())

    page = theme.render_article(view)

    assert page.count(NAME) > 25
    assert loose(page) == []


def test_a_chart_keeps_its_title_apart(theme: Theme, charts: dict[str, ChartView]) -> None:
    for chart in charts.values():
        assert loose(theme.render_chart(replace(chart, title=NAME))) == []


def test_lists_keep_names_apart(theme: Theme, article: ArticleView, front: FrontMatter) -> None:
    entry = ArchiveEntry("a/index.html", front, 1, facts=(("Key", "C major"), ("Tuning", NAME)))
    page = theme.render_archive(ArchiveView(article.site, "All", (entry,)))
    line = theme.render_line(entry)
    related = theme.render_related((RelatedView(Link(NAME, "../x/"), "", "in the same key"),))

    assert [loose(one) for one in (page, line, related)] == [[], [], []]
