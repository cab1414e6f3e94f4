"""The words of a page that was set: without drawings, controls and what stands around them.

They are what the full-text index and readers of feeds are given.
"""

import re

from lxml import html

_DRAWING = re.compile(rb"<svg\b.*?</svg>", re.DOTALL)
_LEFT_OUT = (
    "nav aside script style template button select fieldset form details audio video iframe"
).split()
_CONTROL = "control"
"""The class of what a theme leaves out in print, too: what is there to be pressed."""


def words_of(page: bytes) -> html.HtmlElement | None:
    """Return the part `main` of a page of ours, reduced to its words; None without an `h1` there.

    Of a figure there is left its caption, as a heading with the figure's id so that it can be led
    to, and what the theme marks with `data-words`.
    """
    if b"<main" not in page:
        return None
    parser = html.HTMLParser(encoding="utf-8", remove_comments=True)
    document = html.document_fromstring(_DRAWING.sub(b"", page), parser=parser)
    main = document.find(".//main")
    if main is None or main.find(".//h1") is None:
        return None
    _clear(main, [*main.iter(*_LEFT_OUT), *main.find_class(_CONTROL)])
    _clear(main, main.xpath('.//*[@hidden or @aria-hidden="true"]'))
    for figure in list(main.iter("figure")):
        _lead_to(figure)
    main.tag = "div"
    return main


def _clear(main: html.HtmlElement, nodes: list[html.HtmlElement]) -> None:
    """Take nodes out of `main`, where they are still in it; the text behind them stays."""
    for node in nodes:
        if node is not main and node.getparent() is not None:
            node.drop_tree()


def _lead_to(figure: html.HtmlElement) -> None:
    """Leave a heading and what is marked in a figure that has a caption and an id."""
    caption, anchor = figure.find("figcaption"), figure.attrib.pop("id", "")
    if caption is None or not anchor:
        return
    for moment in [*caption.iter("a", "time")]:
        moment.drop_tree()
    heading = html.Element("h6", id=anchor)
    heading.text = " ".join(caption.text_content().split()).replace(" : ", ": ")
    figure[:] = [heading, *figure.xpath(".//*[@data-words]")]
