"""What stands at the top of a site: the archive, the page for lost readers, styles and fonts."""

from collections.abc import Mapping, Sequence

from sitegen.engraving import notation_font
from sitegen.pages.theme import Theme
from sitegen.pages.views import ArchiveView, FindView, PageView
from sitegen.site.addresses import FIND, INDEX, MISSING, missing_view, root_of, site_view
from sitegen.site.listing import Listed
from sitegen.site.settings import Settings
from sitegen.site.shelf_files import SHELF, shelf_files

_ARCHIVE = "All write-ups"
_FIND = "Find a passage"
_LOST = "Nothing is filed here"
_LOST_BODY = "<p>The page that you asked for is not on this site.</p>"


def make_top(
    theme: Theme, settings: Settings, articles: Sequence[Listed], menu: Mapping[str, str]
) -> tuple[Mapping[str, bytes], Mapping[str, bytes]]:
    """Return the pages at the top, and the styles, scripts and fonts, by path from there.

    The pages are the archive, the one for unknown addresses and the one where passages are looked
    up, with the indexes that it reads.
    """
    site = site_view(settings, "", menu)
    archive = ArchiveView(site, _ARCHIVE, tuple(one.record() for one in articles))
    missing = PageView(missing_view(settings, menu), _LOST, _LOST_BODY)
    pages = {INDEX: theme.render_archive(archive), MISSING: theme.render_missing(missing)}
    encoded = {name: text.encode() for name, text in pages.items()}
    if theme.has_find:
        view = FindView(site_view(settings, FIND, menu), _FIND, f"{root_of(FIND)}{SHELF}")
        encoded |= {f"{FIND}{INDEX}": theme.render_find(view).encode(), **shelf_files(articles)}
    return encoded, theme.assets(notation_font())
