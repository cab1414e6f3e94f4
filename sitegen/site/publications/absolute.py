"""Whole addresses of a site's pages, for what is read elsewhere."""

from urllib.parse import quote, urljoin

from lxml import html

from sitegen.site.settings import Settings


def whole_address(settings: Settings, address: str) -> str:
    """Return the public address of what stands at `address`; the site must have one of its own."""
    return f"{settings.address.rstrip('/')}/{quote(address)}"


def absolute_html(words: str, base: str) -> str:
    """Return HTML whose links and pictures lead to whole addresses, from a page at `base`."""
    fragment = html.fragment_fromstring(words, create_parent="div")
    for node in fragment.iter():
        for name in ("href", "src"):
            found = node.get(name)
            if found is not None:
                node.set(name, urljoin(base, found))
    return html.tostring(fragment, encoding="unicode")
