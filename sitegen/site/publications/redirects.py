"""Old addresses: a page at each that leads to the new one, and a list for hosts that can do it.

The list has one line for each: the old path, the new one, and 301, the status of HTTP for what has
moved for good (RFC 9110, 15.4.2).
"""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from html import escape
from urllib.parse import quote, unquote, urlsplit

from sitegen.site.addresses import INDEX, href, root_of
from sitegen.site.listing import Listed
from sitegen.site.publications.absolute import whole_address
from sitegen.site.settings import Settings

REDIRECTS = "redirects.txt"
_STATUS = "301"
_PAGE = """\
<!DOCTYPE html>
<html lang="{language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{title}</title>
<meta name="robots" content="noindex">
<meta http-equiv="refresh" content="0; url={link}">
{canonical}</head>
<body>
<p>This has moved: <a href="{link}">{title}</a></p>
</body>
</html>
"""


@dataclass(frozen=True)
class Move:
    """An old address as the author wrote it, the file that stands for it, and where it leads."""

    written: str
    file: str
    to: Listed


def find_moves(articles: Iterable[Listed]) -> Iterator[Move]:
    """Return the moves of the write-ups, in their order; an address of another site has none."""
    for one in articles:
        for written in one.front.moved_from:
            file = file_at(written)
            if file:
                yield Move(written, file, one)


def file_at(written: str) -> str:
    """Return the file that a server shows for an old address; "" for the top of a site.

    The path counts from the top of this site, whichever host it was on.
    """
    path = unquote(urlsplit(written).path).strip("/")
    if not path or path.endswith((".html", ".htm")):
        return path
    return f"{path}/{INDEX}"


def make_redirects(
    settings: Settings, moves: Iterable[Move], taken: Collection[str]
) -> Mapping[str, bytes]:
    """Return a page for each old address and the list of all, by path from the top of the site.

    A file that is among the `taken` ones, or was given to an earlier move, stays as it is.
    """
    pages: dict[str, bytes] = {}
    lines = []
    base = urlsplit(settings.address).path.rstrip("/")
    for move in moves:
        if move.file in pages or move.file in taken:
            continue
        pages[move.file] = _page(settings, move)
        old = f"/{quote(move.file.removesuffix(INDEX))}"
        lines.append(f"{base}{old} {base}/{quote(move.to.address)} {_STATUS}\n")
    if lines:
        pages[REDIRECTS] = "".join(sorted(lines)).encode()
    return pages


def _page(settings: Settings, move: Move) -> bytes:
    link = escape(href(move.to.address, root_of(move.file)))
    canonical = ""
    if settings.address:
        address = escape(whole_address(settings, move.to.address))
        canonical = f'<link rel="canonical" href="{address}">\n'
    title, language = escape(move.to.front.title), escape(settings.language)
    return _PAGE.format(language=language, title=title, link=link, canonical=canonical).encode()
