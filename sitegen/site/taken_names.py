"""Files beside a write-up that have the names of what is made of its charts."""

from collections.abc import Collection
from urllib.parse import unquote

from sitegen.article import Article, ImageUse, LinkUse
from sitegen.diagnostics import Diagnostic, fault
from sitegen.kinds.takeaway import SUFFIXES


def find_taken_names(
    article: Article, files: Collection[str], anchors: Collection[str]
) -> tuple[Diagnostic, ...]:
    """Return a fault wherever the text uses a file that a chart's download would replace.

    `files` are those published with the write-up, `anchors` its charts'. Names that differ only
    in capitals are one to many systems.
    """
    needed = {f"{anchor}{suffix}".casefold() for anchor in anchors for suffix in SUFFIXES}
    taken = {name for name in files if name.casefold() in needed}
    uses: tuple[ImageUse | LinkUse, ...] = (*article.images, *article.links)
    found = ((unquote(use.target.partition("#")[0].partition("?")[0]), use) for use in uses)
    return tuple(
        fault(
            "file-name-taken",
            article.source,
            use.span,
            f'"{name}" is what a file to take away of a chart on this page is called',
            hint="give the file beside the text another name",
        )
        for name, use in found
        if name in taken
    )
