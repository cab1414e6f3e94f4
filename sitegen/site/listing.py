"""What will be on the site: write-ups in the archive's order, and the menu of free pages."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from urllib.parse import quote

from sitegen.article import FrontMatter
from sitegen.figures.incipit import INCIPIT
from sitegen.finding import Entry
from sitegen.finding.facet_line import line_facts
from sitegen.finding.facets_index import has_picture
from sitegen.pages.views import ArchiveEntry, Link
from sitegen.site.addresses import href, root_of
from sitegen.site.content import ContentFile
from sitegen.site.settings import Settings


@dataclass(frozen=True)
class Listed:
    """A write-up or page that will be on the site; `front_text` is its front matter as written.

    `is_kept` says that its last good page stays, since it cannot be made anew. `entry` is what a
    write-up can be found by.
    """

    file: ContentFile
    front: FrontMatter
    front_text: str
    charts: int
    draft: bool = False
    is_kept: bool = False
    entry: Entry = field(default=Entry())

    @property
    def address(self) -> str:
        """The folder of its page, from the top of the site."""
        return self.file.address

    def record(self) -> ArchiveEntry:
        """Return its line in the archive, which stands at the top of the site."""
        return ArchiveEntry(
            href(self.address),
            self.front,
            self.charts,
            self.draft,
            line_facts(self.front, self.entry),
            f"{quote(self.address)}{INCIPIT}" if has_picture(self.entry) else "",
        )

    def link(self) -> Link:
        """Return the link to it from another write-up's page."""
        return Link(self.front.title, href(self.address, root_of(self.address)))


def ordered_listing(listed: Iterable[Listed]) -> tuple[Listed, ...]:
    """Return the write-ups newest first, those without a date before all, then by title."""
    titled = sorted(listed, key=lambda one: (one.front.title.casefold(), one.address))
    return tuple(sorted(titled, key=lambda one: one.front.published or date.max, reverse=True))


def neighbours(listing: Sequence[Listed], index: int) -> tuple[Link | None, Link | None]:
    """Return the links from a write-up to the one before it in time and to the one after."""
    earlier = listing[index + 1].link() if index + 1 < len(listing) else None
    later = listing[index - 1].link() if index > 0 else None
    return earlier, later


def menu_of(pages: Sequence[Listed], settings: Settings) -> Mapping[str, str]:
    """Return the names of the free pages in the menu by address.

    The settings say which and in which order; where they are silent, the pages that name
    themselves for it.
    """
    if settings.menu is None:
        return {page.address: page.front.menu for page in pages if page.front.menu}
    by_slug = {page.file.slug: page for page in pages}
    chosen = [by_slug[slug] for slug in settings.menu if slug in by_slug]
    return {page.address: page.front.menu or page.front.title for page in chosen}
