"""What stands at the top of a site: the archive, the page for lost readers, styles and fonts."""

from collections.abc import Mapping, Sequence

from sitegen.engraving import notation_font
from sitegen.pages.views import ArchiveView, PageView
from sitegen.site.addresses import INDEX, MISSING, missing_view, site_view
from sitegen.site.listing import Listed
from sitegen.site.pressing import Press
from sitegen.site.settings import Settings
from sitegen.site.writing import put_bytes

_ARCHIVE = "All write-ups"
_LOST = "Nothing is filed here"
_LOST_BODY = "<p>The page that you asked for is not on this site.</p>"


def write_top(
    press: Press, settings: Settings, articles: Sequence[Listed], menu: Mapping[str, str]
) -> set[str]:
    """Write the front page, the page for unknown addresses, styles and fonts.

    Returns the paths of styles and fonts from the top of the site.
    """
    theme = press.load_theme()
    site = site_view(settings, "", menu)
    archive = ArchiveView(site, _ARCHIVE, tuple(one.entry() for one in articles))
    missing = PageView(missing_view(settings, menu), _LOST, _LOST_BODY)
    pages = {INDEX: theme.render_archive(archive), MISSING: theme.render_missing(missing)}
    assets = theme.assets(notation_font())
    files = {name: text.encode() for name, text in pages.items()} | dict(assets)
    for name, data in files.items():
        put_bytes(press.top / name, data, press.old / name)
    return set(assets)
