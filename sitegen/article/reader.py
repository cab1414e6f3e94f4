"""Reads a whole file as a write-up or as a free page."""

from collections.abc import Callable, Collection

from sitegen.article.decoding import without_controls
from sitegen.article.fences import take_fences
from sitegen.article.front_reader import ReadFront, read_article_front, read_page_front
from sitegen.article.headings import take_headings
from sitegen.article.links import take_images, take_links
from sitegen.article.markdown import parse_body
from sitegen.article.raw_tokens import check_raw_html
from sitegen.article.reading import Article
from sitegen.diagnostics import Diagnostic, ordered
from sitegen.source import Source


def read_article(
    source: Source, chart_names: Collection[str]
) -> tuple[Article, tuple[Diagnostic, ...]]:
    """Return the write-up in `source` and everything that is wrong with it.

    `chart_names` are the words that open a chart block.
    """
    return _read(source, read_article_front, chart_names)


def read_page(
    source: Source, chart_names: Collection[str]
) -> tuple[Article, tuple[Diagnostic, ...]]:
    """Return the free page in `source`, whose front matter has a title, a summary and a menu."""
    return _read(source, read_page_front, chart_names)


def _read(
    source: Source, read_front: Callable[[Source], ReadFront], chart_names: Collection[str]
) -> tuple[Article, tuple[Diagnostic, ...]]:
    source, unprintable = without_controls(source)
    read = read_front(source)
    tokens, tracker = parse_body(source, read.body_line)
    article = Article(
        source,
        read.front,
        read.text,
        headings=take_headings(tokens, tracker),
        fences=take_fences(tokens, chart_names, tracker),
        roles=tuple(sorted(tracker.roles, key=lambda use: use.span)),
        images=take_images(tokens, tracker),
        links=take_links(tokens, tracker),
        tokens=tuple(tokens),
    )
    check_raw_html(tokens, tracker)
    return article, ordered((*unprintable, *read.diagnostics, *tracker.faults))
