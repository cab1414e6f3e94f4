"""Everything that is published beside the pages, in one go."""

from collections.abc import Collection, Mapping, Sequence

from sitegen.site.addresses import FEED, FOOT
from sitegen.site.listing import Listed
from sitegen.site.publications.archive_record import ARCHIVE, make_archive
from sitegen.site.publications.feed import Read, make_feed
from sitegen.site.publications.redirects import find_moves, make_redirects
from sitegen.site.publications.sitemap import ROBOTS, SITEMAP, make_robots, make_sitemap
from sitegen.site.settings import Settings


def make_publications(
    settings: Settings,
    articles: Sequence[Listed],
    pages: Sequence[Listed],
    taken: Collection[str],
    read: Read,
) -> Mapping[str, bytes]:
    """Return the files by path from the top of the site.

    `taken` are the paths that pages already have, which no old address may replace; `read` gives
    the words of a write-up for the feed.
    """
    public = [one for one in articles if not one.draft]
    files = {
        FEED: make_feed(settings, public, read),
        SITEMAP: make_sitemap(settings, (*public, *pages), FOOT),
        ROBOTS: make_robots(settings),
        ARCHIVE: make_archive(settings, public),
    }
    files = {name: data for name, data in files.items() if data}
    moved = make_redirects(settings, find_moves(public), {*taken, *files})
    return {**files, **moved}
