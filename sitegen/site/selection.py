"""Which files a path on the command line stands for."""

import os
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from sitegen.diagnostics import Diagnostic
from sitegen.site.content import (
    ARTICLE_FILE,
    PAGES_FOLDER,
    Content,
    ContentFile,
    scan_content,
    shown,
)
from sitegen.site.content_folder import find_content
from sitegen.site.file_reading import find_unfit
from sitegen.site.refusal import RefusedError


@dataclass(frozen=True)
class Selection:
    """Files to look at; `contents` are the folders whose settings are among them.

    `diagnostics` are the faults of their names and places.
    """

    articles: tuple[ContentFile, ...]
    pages: tuple[ContentFile, ...]
    contents: tuple[Content, ...]
    diagnostics: tuple[Diagnostic, ...]


def select(paths: Iterable[Path]) -> Selection:
    """Return the files that the paths stand for: content folders, folders and files in them.

    A Markdown file without a content folder around it is a write-up by itself. Raises
    RefusedError for a path that stands for nothing.
    """
    articles: dict[Path, ContentFile] = {}
    pages: dict[Path, ContentFile] = {}
    contents: dict[Path, Content] = {}
    diagnostics: list[Diagnostic] = []
    for path in paths:
        chosen = _select_one(_plain(path))
        articles |= {file.path: file for file in chosen.articles}
        pages |= {file.path: file for file in chosen.pages}
        contents |= {content.folder: content for content in chosen.contents}
        diagnostics += chosen.diagnostics
    return Selection(
        tuple(articles.values()), tuple(pages.values()), tuple(contents.values()),
        tuple(diagnostics),
    )  # fmt: skip


def select_article(path: Path) -> ContentFile:
    """Return the write-up or page at `path`, which may be a write-up's folder.

    Raises RefusedError when there is none.
    """
    path = path / ARTICLE_FILE if path.is_dir() else path
    if not path.exists():
        raise RefusedError(f"{shown(path.parent)} holds no {ARTICLE_FILE}")
    if path.suffix != ".md":
        raise RefusedError(f"{shown(path)} is not a write-up: one ends in .md")
    unfit = find_unfit(path)
    if unfit:
        raise RefusedError(f"{shown(path)} cannot be read: {unfit}")
    path = _plain(path)
    is_page = path.parent.name == PAGES_FOLDER and find_content(path) == path.parent.parent
    return ContentFile(path.stem if is_page else path.parent.name, path, is_page)


def _plain(path: Path) -> Path:
    """Return the whole path without `..`; links are left as they are, for names show them."""
    return Path(os.path.abspath(path))  # noqa: PTH100 - resolve() would follow links


def _select_one(path: Path) -> Selection:
    folder = find_content(path)
    if folder is None:
        if path.is_dir() and not (path / ARTICLE_FILE).is_file():
            raise RefusedError(f"no content folder at {shown(path)}: one holds a site.toml")
        return Selection((select_article(path),), (), (), ())
    content = scan_content(folder)
    if path == content.settings_path:
        return Selection((), (), (content,), ())
    if path == folder:
        return Selection(content.articles, content.pages, (content,), content.diagnostics)
    return _below(path, content)


def _below(path: Path, content: Content) -> Selection:
    """Return what stands at or under `path` in a content folder."""
    articles = tuple(file for file in content.articles if file.path.is_relative_to(path))
    pages = tuple(file for file in content.pages if file.path.is_relative_to(path))
    name = shown(path)
    diagnostics = tuple(
        diagnostic
        for diagnostic in content.diagnostics
        if diagnostic.source.path == name or diagnostic.source.path.startswith(f"{name}/")
    )
    if path.suffix == ".md" and path.is_file() and not (articles or pages):
        return Selection((select_article(path),), (), (), diagnostics)
    if not (articles or pages or diagnostics or path.is_dir()):
        raise RefusedError(f"{name} is neither a write-up nor a page")
    return Selection(articles, pages, (), diagnostics)
