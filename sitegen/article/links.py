"""Links and pictures: what they lead to, and what is wrong with it."""

import re
from collections.abc import Iterable, Iterator, Sequence
from urllib.parse import unquote

from markdown_it.token import Token

from sitegen.article.front_values import is_path_below
from sitegen.article.headings import plain_text
from sitegen.article.reading import ImageUse, LinkUse
from sitegen.article.tracker import Tracker
from sitegen.diagnostics import fault
from sitegen.source import Span

MOST_OF_ADDRESSES = 1_000_000
"""Characters of all addresses of a page's links, and of all of its pictures.

No text can type so many, but links by name repeat an address that was typed once.
"""

_RUNS = re.compile(r"(javascript|vbscript|data|file):", re.IGNORECASE)
# What a browser leaves out of an address, WHATWG URL Standard, 4.4; spaces only at the start.
_LEFT_OUT = re.compile(r"[\x00-\x20]+")
_OUTSIDE = re.compile(r"(https?:)?//", re.IGNORECASE)


def is_unsafe(address: str) -> bool:
    """Return whether an address runs a program or shows what is no page."""
    return bool(_RUNS.match(_LEFT_OUT.sub("", address)))


def take_links(tokens: Iterable[Token], tracker: Tracker) -> tuple[LinkUse, ...]:
    """Return the links among the tokens; a link that is unsafe is left without an address."""
    links = []
    lengths = _Lengths(tracker)
    for token in _inner(tokens, "link_open"):
        address, span = str(token.attrGet("href") or ""), _span(token)
        if is_unsafe(address):
            del token.attrs["href"]
            message = f'a link must not lead to "{address[:60]}"'
            hint = "link to a page: https:, mailto: or a path on this site"
            tracker.report(fault("link-unsafe", tracker.source, span, message, hint=hint))
            continue
        if lengths.exceed_with(address, span):
            token.attrs.pop("href", None)
            continue
        if _OUTSIDE.match(address):
            token.attrSet("rel", "noopener")
        links.append(LinkUse(address, span))
    return tuple(links)


def take_images(tokens: Iterable[Token], tracker: Tracker) -> tuple[ImageUse, ...]:
    """Return the pictures among the tokens that lie beside the text or below."""
    images = []
    lengths = _Lengths(tracker)
    for token in _inner(tokens, "image"):
        target, span = str(token.attrGet("src") or ""), _span(token)
        if lengths.exceed_with(target, span):
            token.attrSet("src", "")
            continue
        alt = plain_text(token.children or ())
        if not alt:
            message = "the picture has no description"
            hint = "write what it shows between the brackets: ![what it shows](file)"
            tracker.report(fault("image-alt", tracker.source, span, message, hint=hint))
        if is_path_below(unquote(target)):
            images.append(ImageUse(target, alt, span))
            continue
        message = f'the picture "{unquote(target)[:60]}" does not lie beside the text'
        hint = "put the file beside the text and name it by its path from there"
        tracker.report(fault("image-outside", tracker.source, span, message, hint=hint))
        if is_unsafe(target):
            token.attrSet("src", "")
    return tuple(images)


class _Lengths:
    """Adds up the lengths of addresses, and reports once that they are too many characters."""

    def __init__(self, tracker: Tracker) -> None:
        self._tracker = tracker
        self._sum = 0

    def exceed_with(self, address: str, span: Span) -> bool:
        """Return whether the addresses are too long with this one."""
        was_within = self._sum <= MOST_OF_ADDRESSES
        self._sum += len(address)
        if self._sum <= MOST_OF_ADDRESSES:
            return False
        if was_within:
            message = f"up to here the addresses have more than {MOST_OF_ADDRESSES} characters"
            hint = "give a shorter address to what is linked so often"
            tracker = self._tracker
            tracker.report(fault("text-long", tracker.source, span, message, hint=hint))
        return True


def _inner(tokens: Iterable[Token], kind: str) -> Iterator[Token]:
    """Return the tokens of a kind inside others, however deep."""
    for token in tokens:
        children: Sequence[Token] = token.children or ()
        for child in children:
            if child.type == kind:
                yield child
        yield from _inner(children, kind)


def _span(token: Token) -> Span:
    span: Span = token.meta["span"]
    return span
