"""What of a page is read by the full-text index.

The index finds headings with an id for itself and leads to them. A part that begins without one
gets the name that the theme gives it in `data-words-name`: its words would else be told of the
section before it. Flats and sharps are written b and #, so that a reader may type either: the
theme's script `accidentals.js` puts the signs back where it shows what was found.
"""

import re

from lxml import html

from sitegen.pages.page_words import words_of

_PLAIN = str.maketrans("♭♯", "b#")
_HEAD = '<!DOCTYPE html><html lang="{}"><head><title></title></head><body data-pagefind-body>'


def feed_of(page: bytes) -> bytes:
    """Return the document that the index reads in place of a page; b"" for one without a text."""
    words = words_of(page)
    if words is None:
        return b""
    language = words.getroottree().getroot().get("lang") or "en"
    for part in words.xpath(".//*[@data-words-name][@id]"):
        _name(part)
    head = _HEAD.format(re.sub(r"[^A-Za-z0-9-]", "", language))
    text = html.tostring(words, encoding="unicode").translate(_PLAIN)
    return f"{head}{text}</body></html>".encode()


def _name(part: html.HtmlElement) -> None:
    heading = html.Element("h6", id=part.attrib.pop("id"))
    heading.text = part.get("data-words-name")
    heading.tail, part.text = part.text, None
    part.insert(0, heading)
