"""The Atom feed of the newest write-ups: RFC 4287, "The Atom Syndication Format", 2005.

Readers of feeds show no drawings that lie in the page and run no scripts: an entry has the words
of the write-up, each chart as its caption and what was found in it, and a link to hear and see it.
Nothing here depends on the time of the build.
"""

from collections.abc import Callable, Sequence
from datetime import date

from lxml import etree

from sitegen.pages.sharing import song_line
from sitegen.site.addresses import FEED
from sitegen.site.listing import Listed
from sitegen.site.publications.absolute import absolute_html, whole_address
from sitegen.site.settings import Settings

MOST_ENTRIES = 20
_ATOM = "http://www.w3.org/2005/Atom"

Read = Callable[[Listed], str]
"""Returns the words of a write-up as HTML, "" where they are not known."""


def make_feed(settings: Settings, articles: Sequence[Listed], read: Read) -> bytes:
    """Return the feed of the newest write-ups that have a day of publication.

    Returns b"" for a site without an address, which has nothing to lead to, and for one without
    such a write-up. Drafts are left out.
    """
    dated = [one for one in articles if one.front.published is not None and not one.draft]
    if not settings.address or not dated:
        return b""
    feed = etree.Element(f"{{{_ATOM}}}feed", nsmap={None: _ATOM})
    feed.set("{http://www.w3.org/XML/1998/namespace}lang", settings.language)
    newest = dated[:MOST_ENTRIES]
    top = whole_address(settings, "")
    _add(feed, "id", top)
    _add(feed, "title", settings.title)
    if settings.tagline:
        _add(feed, "subtitle", settings.tagline)
    _add(feed, "updated", max(map(_updated, newest)))
    _add(_add(feed, "author"), "name", settings.author or settings.title)
    _add(feed, "link", rel="self", type="application/atom+xml", href=f"{top}{FEED}")
    _add(feed, "link", rel="alternate", type="text/html", href=top)
    for one in newest:
        _add_entry(feed, settings, one, read)
    return etree.tostring(feed, encoding="utf-8", xml_declaration=True, pretty_print=True)


def _add_entry(feed: etree._Element, settings: Settings, one: Listed, read: Read) -> None:
    front, address = one.front, whole_address(settings, one.address)
    entry = _add(feed, "entry")
    _add(entry, "id", address)
    _add(entry, "title", front.title)
    _add(entry, "updated", _updated(one))
    _add(entry, "published", _day(front.published))
    _add(entry, "link", rel="alternate", type="text/html", href=address)
    for topic in front.topics:
        _add(entry, "category", term=topic)
    _add(entry, "summary", front.summary or song_line(front.song) or front.title)
    words = read(one) if settings.feed == "full" else ""
    if words:
        _add(entry, "content", absolute_html(words, address), type="html")


def _add(parent: etree._Element, name: str, text: str = "", **attributes: str) -> etree._Element:
    child = etree.SubElement(parent, f"{{{_ATOM}}}{name}", attributes)
    if text:
        child.text = text
    return child


def _updated(one: Listed) -> str:
    return _day(one.front.updated or one.front.published)


def _day(day: date | None) -> str:
    """Return a day as RFC 3339 has moments: the author says no hour, so it is midnight UTC."""
    return "" if day is None else f"{day.isoformat()}T00:00:00Z"
