"""The links of a write-up: to places on its own page, to other pages, to files beside it."""

import posixpath
import re
from collections.abc import Collection
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import unquote

from sitegen.article import Article, LinkUse
from sitegen.diagnostics import Diagnostic, did_you_mean, fault
from sitegen.site.addresses import INDEX
from sitegen.site.attachments import ALL_KINDS, Attachment, path_below, unfit
from sitegen.site.content import (
    ARTICLE_FILE,
    ARTICLES_FOLDER,
    PAGES_FOLDER,
    ContentFile,
)
from sitegen.site.content_folder import find_content
from sitegen.site.file_reading import holds_file

_ELSEWHERE = re.compile(r"[A-Za-z][A-Za-z0-9+.-]*:|/")


@dataclass(frozen=True)
class _Page:
    """The page that the links stand on, with what can be found from there."""

    file: ContentFile
    article: Article
    anchors: frozenset[str]
    content: Path | None


def find_links(
    file: ContentFile, article: Article, chart_anchors: Collection[str]
) -> tuple[dict[str, Path], tuple[Diagnostic, ...]]:
    """Return the files beside the write-up that it links to, and a fault for every dead link.

    Links to other servers and to the top of this one are not followed.
    """
    anchors = frozenset(heading.anchor for heading in article.headings) | set(chart_anchors)
    page = _Page(file, article, anchors, find_content(file.path))
    files: dict[str, Path] = {}
    faults = []
    for link in article.links:
        target, _, anchor = link.target.partition("#")
        name = unquote(target.partition("?")[0])
        beside = _file_beside(file, name)
        if beside is not None:
            attached = Attachment(name, article.source, link.span)
            wrong = unfit(beside, attached, ALL_KINDS)
            if wrong is None:
                files[name] = beside
            else:
                faults.append(wrong)
        elif not target and anchor and unquote(anchor) not in anchors:
            faults.append(_no_anchor(page, link, unquote(anchor)))
        elif target and not _ELSEWHERE.match(target) and not _is_page(page, name):
            faults.append(_no_page(page, link, name))
    return files, tuple(faults)


def linked_pages(file: ContentFile, article: Article) -> tuple[str, ...]:
    """Return where a page's relative links lead to, as addresses without a slash at their end.

    Some may be files beside it, or nothing.
    """
    names = (unquote(re.split("[#?]", link.target)[0]) for link in article.links)
    led = {_address(file, name) for name in names if name and not _ELSEWHERE.match(name)}
    return tuple(sorted(led))


def _file_beside(file: ContentFile, name: str) -> Path | None:
    path = path_below(file.folder, name) if name else None
    return path if path is not None and holds_file(path) and path.name != file.path.name else None


def _is_page(page: _Page, name: str) -> bool:
    """Return whether the relative `name` leads to a page; True where there is no site to ask."""
    if page.content is None:
        return True
    match _address(page.file, name).split("/"):
        case ["."]:
            return True
        case [slug]:
            return holds_file(page.content / PAGES_FOLDER / f"{slug}.md")
        case [room, slug] if room == ARTICLES_FOLDER:
            return holds_file(page.content / ARTICLES_FOLDER / slug / ARTICLE_FILE)
    return False


def _address(file: ContentFile, name: str) -> str:
    return posixpath.normpath(posixpath.join(file.address, name.removesuffix(INDEX)))


def _no_anchor(page: _Page, link: LinkUse, anchor: str) -> Diagnostic:
    message = f'nothing on this page has the anchor "{anchor}"'
    hint = did_you_mean(anchor, page.anchors)
    return fault("link-nowhere", page.article.source, link.span, message, hint=hint)


def _no_page(page: _Page, link: LinkUse, name: str) -> Diagnostic:
    message = f'"{name}" leads neither to a page of this site nor to a file beside the text'
    hint = "another write-up is ../its-name/, a free page ../../its-name/"
    return fault("link-nowhere", page.article.source, link.span, message, hint=hint)
