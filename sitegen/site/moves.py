"""Old addresses that cannot lead to their write-up, because something else stands there."""

from collections.abc import Collection, Iterable

from sitegen.article import FrontMatter, load_source
from sitegen.diagnostics import Diagnostic, fault
from sitegen.site.addresses import FEED, INDEX, MISSING
from sitegen.site.content import ARTICLES_FOLDER, RESERVED, ContentFile, scan_content, shown
from sitegen.site.content_folder import find_content
from sitegen.site.publications.redirects import file_at
from sitegen.source import Source, Span

_FIELD = "moved-from"
_AT_THE_TOP = frozenset({"", INDEX, MISSING, FEED})
_KEPT = RESERVED - {ARTICLES_FOLDER, "404", "index"}

WriteUp = tuple[ContentFile, FrontMatter]


def find_taken_moves(
    write_ups: Iterable[WriteUp], addresses: Collection[str]
) -> tuple[Diagnostic, ...]:
    """Return a warning for each old address that is taken by a page or by a write-up before it.

    `addresses` are those of all pages of the site. A write-up that can no longer be read says
    nothing.
    """
    faults = []
    first: dict[str, ContentFile] = {}
    for file, front in write_ups:
        for written in front.moved_from:
            moved = file_at(written)
            other = first.setdefault(moved, file)
            why = _taken_by(moved, file, addresses)
            if not why and other is not file:
                why = f"the write-up {other.slug} has it too"
            if why:
                faults.append(_fault(file, written, why))
    return tuple(faults)


def site_addresses(files: Iterable[ContentFile]) -> frozenset[str]:
    """Return the addresses of all pages of the sites that some files belong to."""
    folders = {find_content(file.path) for file in files}
    contents = [scan_content(folder) for folder in folders if folder is not None]
    return frozenset(
        file.address for content in contents for file in (*content.articles, *content.pages)
    )


def _taken_by(moved: str, file: ContentFile, addresses: Collection[str]) -> str:
    if moved in _AT_THE_TOP or moved.partition("/")[0].casefold() in _KEPT:
        return "the site keeps something else there"
    address = moved.removesuffix(INDEX)
    if address == file.address:
        return "it is the write-up's own"
    return "another page stands there" if address in addresses else ""


def _fault(file: ContentFile, written: str, why: str) -> Diagnostic:
    source, _ = load_source(file.read(), shown(file.path))
    message = f"nothing can lead from the old address {written}: {why}"
    return fault("moved-from-taken", source, _span(source, written), message)


def _span(source: Source, written: str) -> Span:
    """Return where an address stands in or below the field of old ones; else the first line."""
    start = source.text.find(written, max(source.text.find(f"\n{_FIELD}"), 0))
    return source.line_span(1) if start < 0 else source.span(start, start + len(written))
