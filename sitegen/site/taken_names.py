"""Files beside a write-up that have the names of others of its page."""

import unicodedata
from collections.abc import Collection
from urllib.parse import unquote

from sitegen.article import Article, ImageUse, LinkUse
from sitegen.diagnostics import Diagnostic, fault
from sitegen.figures.incipit import INCIPIT
from sitegen.kinds.takeaway import SUFFIXES


def find_taken_names(
    article: Article, files: Collection[str], anchors: Collection[str]
) -> tuple[Diagnostic, ...]:
    """Return a fault wherever the text uses a file that would replace another one, or be replaced.

    `files` are those published with the write-up, `anchors` its charts'. Names that differ only
    in capitals, or in how an accent is stored, are one to many systems.
    """
    needed = {_plain(f"{anchor}{suffix}") for anchor in anchors for suffix in SUFFIXES}
    uses: tuple[ImageUse | LinkUse, ...] = (*article.images, *article.links)
    first: dict[str, str] = {}
    faults = []
    for use in uses:
        name = unquote(use.target.partition("#")[0].partition("?")[0])
        if name not in files:
            continue
        other = first.setdefault(_plain(name), name)
        hint = "give the file beside the text another name"
        if _plain(name) in needed:
            message = f'"{name}" is what a file to take away of a chart on this page is called'
            faults.append(fault("file-name-taken", article.source, use.span, message, hint=hint))
        elif _plain(name) == INCIPIT:
            message = f'"{name}" is what the picture of the opening is called'
            faults.append(fault("file-name-taken", article.source, use.span, message, hint=hint))
        elif other != name:
            message = f'"{name}" and "{other}" are the same name to some systems'
            faults.append(fault("file-name-double", article.source, use.span, message, hint=hint))
    return tuple(faults)


def _plain(name: str) -> str:
    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", name).casefold())
