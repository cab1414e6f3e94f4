"""Where the pages of a site stand, and the site as each page sees it."""

from collections.abc import Mapping
from urllib.parse import quote, urlsplit

from sitegen import __version__
from sitegen.pages.views import Link, SiteView
from sitegen.site.settings import Settings

GENERATOR = f"sitegen {__version__}"
INDEX = "index.html"
CORRECTIONS, PEOPLE, PICTURES = "corrections/", "people/", "pictures/"
"""The addresses of the pages that tell of all write-ups: corrections, credits, and figures."""
FOOT = {
    PICTURES: "The archive in pictures",
    CORRECTIONS: "Corrections",
    PEOPLE: "Credits and sources",
}
FEED = "feed.xml"
"""The feed of the newest write-ups, from the top of the site."""
FIND = "find/"
"""The address of the page where passages are looked up."""
MISSING = "404.html"


def root_of(address: str) -> str:
    """Return the way from the page at `address` to the top of the site."""
    return "../" * address.count("/")


def href(address: str, root: str = "") -> str:
    """Return the link to the page at `address` for a page whose way to the top is `root`."""
    return f"{root}{quote(address)}{INDEX}"


def site_view(settings: Settings, address: str, menu: Mapping[str, str]) -> SiteView:
    """Return the site as seen from the page at `address` ("" for the top).

    `menu` maps the addresses of the free pages to list to their names.
    """
    whole = f"{settings.address.rstrip('/')}/{quote(address)}" if settings.address else ""
    return _view(settings, root_of(address), whole, menu)


def missing_view(settings: Settings, menu: Mapping[str, str]) -> SiteView:
    """Return the site as seen from the page that a server shows for any address it lacks.

    That page cannot know where it is shown, so that its links start at the server's top.
    """
    root = urlsplit(settings.address).path.rstrip("/") + "/"
    return _view(settings, root, "", menu)


def _view(settings: Settings, root: str, address: str, menu: Mapping[str, str]) -> SiteView:
    return SiteView(
        title=settings.title,
        tagline=settings.tagline,
        author=settings.author,
        language=settings.language,
        root=root,
        menu=tuple(Link(title, href(to, root)) for to, title in menu.items()),
        generator=GENERATOR,
        notice=settings.notice,
        address=address,
        find=Link("Find", href(FIND, root)),
        foot=tuple(Link(text, href(to, root)) for to, text in FOOT.items()),
        feed=f"{root}{FEED}" if settings.address else "",
    )
