"""What stands at the top of a site: the archive, pages about all write-ups, styles and fonts."""

from collections.abc import Iterator, Mapping, Sequence

from sitegen.engraving import notation_font
from sitegen.pages.theme import Theme
from sitegen.pages.views import FindView, PageView
from sitegen.site.addresses import (
    CORRECTIONS,
    FIND,
    INDEX,
    MISSING,
    PEOPLE,
    PICTURES,
    missing_view,
    root_of,
    site_view,
)
from sitegen.site.archive_pages import archive_pages
from sitegen.site.listing import Listed
from sitegen.site.pictures import pictures_of, plans_of
from sitegen.site.publications.corrections import corrections_of
from sitegen.site.publications.people import people_of
from sitegen.site.settings import Settings
from sitegen.site.shelf_files import SHELF, first_lines, shelf_files

_FIND = "Find a passage"
_CORRECTIONS = "Corrections"
_PEOPLE = "Credits and sources"
_PICTURES = "The archive in pictures"
_LOST = "Nothing is filed here"
_LOST_BODY = "<p>The page that you asked for is not on this site.</p>"


def make_top(
    theme: Theme, settings: Settings, articles: Sequence[Listed], menu: Mapping[str, str]
) -> tuple[Mapping[str, bytes], Mapping[str, bytes]]:
    """Return the pages at the top, and the styles, scripts and fonts, by path from there.

    The pages are the archive, the one for unknown addresses, those of corrections, credits
    and figures, and the one where passages are looked up, with the indexes that it reads.
    """
    missing = PageView(missing_view(settings, menu), _LOST, _LOST_BODY)
    pages = {MISSING: theme.render_missing(missing)}
    pages |= {
        f"{address}{INDEX}": theme.render_page(
            PageView(site_view(settings, address, menu), title, body, tells_all=True)
        )
        for address, title, body in _texts(theme, articles)
        if body
    }
    encoded = {name: text.encode() for name, text in pages.items()}
    encoded |= archive_pages(theme, settings, articles, menu)
    if theme.has_find:
        files = shelf_files(articles)
        site = site_view(settings, FIND, menu)
        view = FindView(site, _FIND, f"{root_of(FIND)}{SHELF}", first_lines(files))
        encoded |= {f"{FIND}{INDEX}": theme.render_find(view).encode(), **files}
    return encoded, theme.assets(notation_font())


def _texts(theme: Theme, articles: Sequence[Listed]) -> Iterator[tuple[str, str, str]]:
    """Return the address, title and text of the pages that tell of all write-ups."""
    corrections = theme.render_text("corrections", corrections=corrections_of(articles))
    yield CORRECTIONS, _CORRECTIONS, corrections
    yield PEOPLE, _PEOPLE, theme.render_text("people", letters=people_of(articles))
    given = {"pictures": pictures_of(articles), "plans": plans_of(articles)}
    yield PICTURES, _PICTURES, theme.render_text("pictures", **given)
