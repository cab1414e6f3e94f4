"""The list of related write-ups below each of them.

It can be told only when all write-ups have been studied, and by then most pages are written: so
each page has a place for it, which is filled at the end, again where the list changes.
"""

from collections.abc import Mapping, Sequence
from pathlib import Path

from sitegen.finding.kinship import find_kin
from sitegen.pages.sharing import song_line
from sitegen.pages.theme import Theme
from sitegen.pages.views import Link, RelatedView
from sitegen.site.addresses import INDEX, href, root_of
from sitegen.site.listing import Listed
from sitegen.site.related_place import with_related
from sitegen.site.writing import put_bytes

Related = Mapping[str, tuple[RelatedView, ...]]
"""The related write-ups by the address of each."""


def related_views(articles: Sequence[Listed]) -> Related:
    """Return for each write-up those that it leads to; they are in the archive's order."""
    kin = find_kin([(one.front, one.entry) for one in articles])
    return {
        one.address: tuple(_view(one, articles[other.place], other.reason) for other in found)
        for one, found in zip(articles, kin, strict=True)
    }


def _view(one: Listed, other: Listed, reason: str) -> RelatedView:
    link = Link(other.front.title, href(other.address, root_of(one.address)))
    return RelatedView(link, song_line(other.front.song), reason)


def set_related(views: Sequence[RelatedView], theme: Theme) -> bytes:
    """Return the list as it stands in a page."""
    return theme.render_related(views).encode()


def fill_related(page: Path, views: Sequence[RelatedView], theme: Theme, old: Path) -> None:
    """Fill the place in the written file `page`; `old` is the published one.

    Raises RefusedError when the system does not let us write.
    """
    found = page.read_bytes()
    filled = with_related(found, set_related(views, theme))
    if filled != found:
        put_bytes(page, filled, old)


def index_of(folder: Path, address: str) -> Path:
    """Return the file of the page at `address` below `folder`."""
    return folder / address / INDEX
