"""What of a page is read by the full-text index: its words, without drawings and controls.

The index finds headings with an id for itself and leads to them; a figure's caption is given to it
as a heading with the figure's id, so that a search can lead to a chart. Flats and sharps are
written b and #, so that a reader may type either: the theme's script `accidentals.js` puts the
signs back where it shows what was found.
"""

import re

from lxml import html

_DRAWING = re.compile(rb"<svg\b.*?</svg>", re.DOTALL)
_LEFT_OUT = (
    "nav aside script style template button select fieldset form details audio video iframe"
).split()
_LEFT_OUT_OF_FIGURES = ("table", "pre")
_PLAIN = str.maketrans("♭♯", "b#")
_CONTROL = "control"
"""The class of what a theme leaves out in print, too: what is there to be pressed."""
_HEAD = '<!DOCTYPE html><html lang="{}"><head><title></title></head><body data-pagefind-body>'


def feed_of(page: bytes) -> bytes:
    """Return the document that the index reads in place of a page; b"" for one without a text.

    `page` is a page of ours: its text stands in `main`, and its name in the first `h1` there.
    """
    if b"<main" not in page:
        return b""
    parser = html.HTMLParser(encoding="utf-8", remove_comments=True)
    document = html.document_fromstring(_DRAWING.sub(b"", page), parser=parser)
    main = document.find(".//main")
    if main is None or main.find(".//h1") is None:
        return b""
    _clear(main, [*main.iter(*_LEFT_OUT), *main.find_class(_CONTROL)])
    _clear(main, main.xpath('.//*[@hidden or @aria-hidden="true"]'))
    for figure in list(main.iter("figure")):
        _clear(main, list(figure.iter(*_LEFT_OUT_OF_FIGURES)))
        _lead_to(figure)
    main.tag = "div"
    head = _HEAD.format(re.sub(r"[^A-Za-z0-9-]", "", document.get("lang") or "en"))
    text = html.tostring(main, encoding="unicode").translate(_PLAIN)
    return f"{head}{text}</body></html>".encode()


def _clear(main: html.HtmlElement, nodes: list[html.HtmlElement]) -> None:
    """Take nodes out of `main`, where they are still in it; the text behind them stays."""
    for node in nodes:
        if node is not main and node.getparent() is not None:
            node.drop_tree()


def _lead_to(figure: html.HtmlElement) -> None:
    """Make a figure's caption a heading that can be led to."""
    caption, anchor = figure.find("figcaption"), figure.attrib.pop("id", "")
    if caption is not None and anchor:
        for moment in [*caption.iter("a", "time")]:
            moment.drop_tree()
        heading = html.Element("h6", id=anchor)
        heading.text = " ".join(caption.text_content().split()).replace(" : ", ": ")
        figure.replace(caption, heading)
