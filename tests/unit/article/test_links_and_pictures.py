"""Links lead to pages and pictures lie beside the text; all else is told in its place."""

import pytest

from sitegen.article import Article, ImageUse, LinkUse, read_article, render_body
from sitegen.diagnostics import Diagnostic
from sitegen.source import Source, Span

FRONT = "---\ntitle: Low Tide\n---\n"


def read(body: str) -> tuple[Article, tuple[Diagnostic, ...]]:
    return read_article(Source("a.md", FRONT + body), ())


def shown(body: str) -> str:
    return render_body(read(body)[0], lambda fence: fence.name, lambda use: use.argument)


@pytest.mark.parametrize("address", ["https://example.org/a", "http://example.org", "//a.b/c"])
def test_links_to_other_sites_do_not_hand_over_the_page(address: str) -> None:
    assert shown(f"[a]({address})") == f'<p><a href="{address}" rel="noopener">a</a></p>\n'


@pytest.mark.parametrize("address", ["../still/", "#verse", "mailto:a@example.org", "a:b"])
def test_other_links_stay_as_they_are(address: str) -> None:
    assert shown(f"[a]({address})") == f'<p><a href="{address}">a</a></p>\n'


def test_links_are_listed_with_their_places() -> None:
    article, faults = read(
        "> a [b *c*](#d), <https://e.f>\n> and [x][y] ![i [k](l)](m.png)\n\n[y]: /z\n"
    )

    assert faults == ()
    assert article.links == (
        LinkUse("#d", Span(4, 5, 4, 16)),
        LinkUse("https://e.f", Span(4, 18, 4, 31)),
        LinkUse("/z", Span(5, 7, 5, 13)),
        LinkUse("l", Span(5, 18, 5, 24)),
    )


@pytest.mark.parametrize(
    "address",
    [
        "javascript:play()",
        "JavaScript:play()",
        "&#106;avascript:play()",
        "<javascript:play()>",
        "vbscript:x",
        "data:text/html,x",
        "data:image/png;base64,AA",
        "file:///etc/passwd",
    ],
)
def test_a_link_that_is_no_page_is_told_and_leads_nowhere(address: str) -> None:
    article, faults = read(f"1. so [a]({address})")

    assert [(fault.code, fault.span.column) for fault in faults] == [("link-unsafe", 7)]
    assert article.links == ()
    assert "<a>a</a>" in shown(f"1. so [a]({address})")


@pytest.mark.parametrize("body", ["<javascript:play()>", "[a]\n\n[a]: javascript:play()"])
def test_every_form_of_link_is_checked(body: str) -> None:
    _, faults = read(body)

    assert [(fault.code, fault.span.line) for fault in faults] == [("link-unsafe", 4)]
    assert "javascript:" not in shown(body).replace(">javascript:play()<", "")


def test_pictures_are_listed_with_their_places() -> None:
    article, faults = read(
        "A ![pedal *board*](board%201.png) and\n![{chord Gb}](<a b/c.svg> 't')\n"
    )

    assert faults == ()
    assert article.images == (
        ImageUse("board%201.png", "pedal board", Span(4, 3, 4, 34)),
        ImageUse("a%20b/c.svg", "G♭", Span(5, 1, 5, 31)),
    )


def test_a_role_in_a_description_is_read_as_text() -> None:
    article, _ = read("![{chord Gb} & *so*](a.png)")
    html = render_body(article, lambda fence: fence.name, lambda _: "G<sup>♭</sup> &amp; B")

    assert html == '<p><img src="a.png" alt="G♭ &amp; B &amp; so" /></p>\n'


@pytest.mark.parametrize("body", ["![](a.png)", "![ ](a.png)", "![<b></b>](a.png)"])
def test_a_picture_without_description_is_told(body: str) -> None:
    _, faults = read(body)

    place = Span(4, 1, 4, len(body) + 1)
    assert [(fault.code, fault.span) for fault in faults] == [("image-alt", place)]
    assert not faults[0].is_error


@pytest.mark.parametrize(
    "target",
    ["../a.png", "/a.png", "https://example.org/a.png", "//example.org/a.png", "a/../../b.png",
     "%2e%2e/a.png", "C:/a.png", "a\\\\b.png", "javascript:x", "data:image/png;base64,AA", "#"],
)  # fmt: skip
def test_a_picture_from_elsewhere_is_told(target: str) -> None:
    article, faults = read(f"- ![a]({target})")

    assert [(fault.code, fault.span.column) for fault in faults] == [("image-outside", 3)]
    assert article.images == ()
