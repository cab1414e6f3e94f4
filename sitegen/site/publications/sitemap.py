"""What tells search engines which pages there are: sitemaps.org 0.9 and RFC 9309 (robots.txt)."""

from collections.abc import Iterable, Sequence

from lxml import etree

from sitegen.site.listing import Listed
from sitegen.site.publications.absolute import whole_address
from sitegen.site.settings import Settings

SITEMAP, ROBOTS = "sitemap.xml", "robots.txt"
MOST_PAGES = 50_000
"""A sitemap holds no more: sitemaps.org, "Sitemaps XML format", from memory."""
_NAMESPACE = "http://www.sitemaps.org/schemas/sitemap/0.9"


def make_sitemap(settings: Settings, listed: Sequence[Listed], others: Iterable[str]) -> bytes:
    """Return the sitemap of the site's pages, `others` by their address from the top of the site.

    Returns b"" for a site without an address. Drafts are left out. A page's day of change is the
    author's; one without is told without.
    """
    if not settings.address:
        return b""
    top = etree.Element(f"{{{_NAMESPACE}}}urlset", nsmap={None: _NAMESPACE})
    days = {one.address: one.front.updated or one.front.published for one in listed}
    hidden = {one.address for one in listed if one.draft}
    for address in sorted({"", *days, *others} - hidden)[:MOST_PAGES]:
        page = etree.SubElement(top, f"{{{_NAMESPACE}}}url")
        etree.SubElement(page, f"{{{_NAMESPACE}}}loc").text = whole_address(settings, address)
        day = days.get(address)
        if day is not None:
            etree.SubElement(page, f"{{{_NAMESPACE}}}lastmod").text = day.isoformat()
    return etree.tostring(top, encoding="utf-8", xml_declaration=True, pretty_print=True)


def make_robots(settings: Settings) -> bytes:
    """Return robots.txt: everything may be read; where there is a sitemap, it is named."""
    lines = ["User-agent: *", "Allow: /"]
    if settings.address:
        lines.append(f"Sitemap: {whole_address(settings, SITEMAP)}")
    return ("\n".join(lines) + "\n").encode()
