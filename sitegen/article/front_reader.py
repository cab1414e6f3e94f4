"""The front matter of a file, read field by field."""

from dataclasses import dataclass
from datetime import date

from sitegen.article.front import FrontMatter, Rights, Status
from sitegen.article.front_block import find_front
from sitegen.article.front_fields import Fields
from sitegen.article.front_rows import read_corrections, read_moments, read_sources
from sitegen.article.front_tree import read_tree
from sitegen.article.front_values import read_date, read_old_address, read_status
from sitegen.article.song_fields import read_song, read_video
from sitegen.diagnostics import Diagnostic
from sitegen.source import Source


@dataclass(frozen=True)
class ReadFront:
    """A front matter, its text as written, and the line (from 0) on which the body starts."""

    front: FrontMatter
    text: str
    body_line: int
    diagnostics: tuple[Diagnostic, ...]


def read_article_front(source: Source) -> ReadFront:
    """Return the front matter of a write-up."""
    return _read(source, is_page=False)


def read_page_front(source: Source) -> ReadFront:
    """Return the front matter of a free page: `title`, `summary` and `menu`."""
    return _read(source, is_page=True)


def _read(source: Source, *, is_page: bool) -> ReadFront:
    block = find_front(source)
    tree, faults = read_tree(source, block)
    fields = Fields(source, tree, list(faults))
    front = _page_front(fields) if is_page else _article_front(fields)
    fields.finish()
    missing = any(wrong.code == "front-missing" for wrong in block.diagnostics)
    if not front.title and not missing:
        _report_title(fields)
    faults = (*block.diagnostics, *fields.faults)
    return ReadFront(front, block.text, block.body_line, faults)


def _page_front(fields: Fields) -> FrontMatter:
    return FrontMatter(fields.text("title"), fields.text("summary"), menu=fields.text("menu"))


def _read_status(fields: Fields) -> Status:
    """Return the status: an unreadable one publishes nothing, none at all does not hinder."""
    unread: Status = "draft" if fields.has("status") else "published"
    return fields.take("status", read_status, unread)


def _article_front(fields: Fields) -> FrontMatter:
    rights = fields.group("rights")
    front = FrontMatter(
        title=fields.text("title"),
        summary=fields.text("summary"),
        status=_read_status(fields),
        published=fields.take("published", read_date, None),
        updated=fields.take("updated", read_date, None),
        song=read_song(fields.group("song")),
        video=read_video(fields.group("video")),
        moments=read_moments(fields),
        topics=fields.texts("topics"),
        sources=read_sources(fields),
        corrections=read_corrections(fields),
        rights=Rights(rights.text("holder"), rights.text("note")),
        moved_from=fields.texts("moved-from", read_old_address),
    )
    rights.finish()
    _check_dates(fields, front)
    return front


def _report_title(fields: Fields) -> None:
    written = fields.has("title")
    if (written and fields.reported("title")) or _is_title_broken(fields):
        return
    span = fields.span_of("title") if written else fields.source.line_span(1)
    message = "the title is empty" if written else "the front matter has no title"
    fields.report(span, message, code="front-title", hint="write title: and the title")


def _is_title_broken(fields: Fields) -> bool:
    """Return whether a line is no field, and a reader would say that it holds the title."""
    broken = (wrong.span.line for wrong in fields.faults if wrong.code == "front-syntax")
    return any(fields.source.lines[number - 1].startswith("title") for number in broken)


def _check_dates(fields: Fields, front: FrontMatter) -> None:
    if fields.has("status") and front.status == "published" and not fields.has("published"):
        message = "the write-up is published, and no date says since when"
        fields.report(fields.span_of("status"), message, code="front-undated",
                      hint="write published: and the day, such as 2026-05-04")  # fmt: skip
    if front.published is None:
        return
    if front.updated is not None and front.updated < front.published:
        _report_order(fields, "updated", front.published)


def _report_order(fields: Fields, name: str, published: date) -> None:
    message = f'"{name}" lies before the day of publication, {published.isoformat()}'
    fields.report(fields.span_of(name), message, code="front-order")
