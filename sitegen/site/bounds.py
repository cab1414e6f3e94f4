"""How much one page may hold: more than a reader looks through, less than a browser bears."""

from collections.abc import Iterator, Mapping
from pathlib import Path

from sitegen.article import Article
from sitegen.diagnostics import Diagnostic, fault

MOST_CHARTS = 1000
"""A page of so many progressions, a line each, has 6 MB; more, and browsers falter."""
MOST_FILES = 1000
MOST_BYTES = 4_000_000_000
"""Files and bytes of all that is published beside one page: two films, or a song in all takes."""

_GIGA = 1_000_000_000


def find_excess(article: Article, files: Mapping[str, Path]) -> Iterator[Diagnostic]:
    """Yield what a write-up or page has too much of; `files` are those published beside it."""
    opening = article.source.line_span(1)
    if len(article.fences) > MOST_CHARTS:
        place = article.fences[MOST_CHARTS].passage.opening
        yield fault(
            "page-large", article.source, place, f"more than {MOST_CHARTS} charts", hint=_HINT
        )
    if len(files) > MOST_FILES:
        message = f"more than {MOST_FILES} files are published beside the text"
        yield fault("page-large", article.source, opening, message, hint=_HINT)
    if sum(map(_size, files.values())) > MOST_BYTES:
        message = f"the files beside the text have more than {MOST_BYTES // _GIGA} GB all in all"
        hint = "make them smaller, or link to where they are kept"
        yield fault("page-large", article.source, opening, message, hint=hint)


def _size(path: Path) -> int:
    try:
        return path.stat().st_size
    except OSError:  # it was taken away just now
        return 0


_HINT = "make several write-ups of it"
