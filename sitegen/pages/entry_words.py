"""The words of a write-up as readers of feeds show them."""

import re

from lxml import html

from sitegen.pages.page_words import words_of

_AROUND = ("header", "footer", "h1")
_UNWRAPPED = ("article", "div", "section", "span")
_KEPT = frozenset({"href", "src", "alt", "lang", "dir", "title", "datetime", "colspan", "rowspan"})
_BLANKS = re.compile(r"\s*\n\s*")


def entry_words(page: bytes) -> str:
    """Return the text of a write-up's page as plain HTML, without what names and credits it.

    Returns "" for a page without a text. Classes, ids and styles mean nothing elsewhere.
    """
    words = words_of(page)
    if words is None:
        return ""
    for node in [*words.iter(*_AROUND)]:
        if node.getparent() is not None:
            node.drop_tree()
    for node in [*words.iter(*_UNWRAPPED)]:
        if node is not words:
            node.drop_tag()
    for node in words.iter():
        for name in set(node.attrib) - _KEPT:
            del node.attrib[name]
    return _BLANKS.sub("\n", html.tostring(words, encoding="unicode")).strip()
