"""HTML that an author types is kept unless it is unsafe or broken; then it is shown as text."""

import html5lib
import pytest

from sitegen.article import Article, read_article, render_body
from sitegen.diagnostics import Diagnostic
from sitegen.source import Source, Span

FRONT = "---\ntitle: Low Tide\n---\n"


def read(body: str) -> tuple[Article, tuple[Diagnostic, ...]]:
    return read_article(Source("a.md", FRONT + body), ())


def shown(body: str) -> str:
    return render_body(read(body)[0], lambda fence: fence.name, lambda use: use.name)


def marks(faults: tuple[Diagnostic, ...]) -> list[tuple[str, int, str]]:
    """Return code, line and marked text of each fault, which stand in one line each."""
    return [(fault.code, fault.span.line, mark(fault.source, fault.span)) for fault in faults]


def mark(source: Source, span: Span) -> str:
    return source.lines[span.line - 1][span.column - 1 : span.end_column - 1]


@pytest.mark.parametrize(
    "body",
    [
        "Press <kbd class='key'>space</kbd><br> now.",
        "<details>\n<summary>More</summary>\n\nHidden *text*.\n\n</details>",
        "<div>\n3 < 4 and 5 > 4, a <3\n</div>",
        "<!-- a remark\nof <two> lines -->",
        "so <!--> and <!-- x -->",
        '<a href="https://example.org">there</a>',
        '<blockquote cite="x">\n<p>One\n<p>Two\n</blockquote>',
        "<table><tr><td>a<td>b</table>",
    ],
)
def test_harmless_html_is_kept(body: str) -> None:
    _, faults = read(body)

    assert faults == ()
    first_tag = body[body.index("<") : body.index(">") + 1]
    assert first_tag in shown(body)


@pytest.mark.parametrize(
    ("body", "marked"),
    [
        ("> a <script>", [(4, "<script>")]),
        ("<SCRIPT src=x>\n</SCRIPT>", [(4, "<SCRIPT src=x>"), (5, "</SCRIPT>")]),
        ("a <img src=x alt=y>", [(4, "<img src=x alt=y>")]),
        ("- <div>\n  <iframe src=x>\n  </div>", [(5, "<iframe src=x>")]),
        ("<svg><a></a></svg>", [(4, "<svg>"), (4, "</svg>")]),
        ("a <b onclick='play()'>x", [(4, "onclick='play()'")]),
        ("a <b\nONERROR=play()>x", [(5, "ONERROR=play()")]),
        ("a <b style='x'>x", [(4, "style='x'")]),
        ("a <a href='javascript:x'>x", [(4, "href='javascript:x'")]),
        ('a <a href="&#x6a;avascript:x">x', [(4, 'href="&#x6a;avascript:x"')]),
        ('a <a href=" java&#9;script:x">x', [(4, 'href=" java&#9;script:x"')]),
        ("<div><b</div>", [(4, "<b")]),
        ("<div id='a\n\nText", [(4, "<div")]),
        ("<!-- not closed\n\nText", [(4, "<!--")]),
        ("<!-- a --!> <script> -->", [(4, "<!--"), (4, "<script>")]),
        ("<!-- a <!-- b -->", [(4, "<!--")]),
        ("<?php x ?>", [(4, "<?php")]),
        ("<!DOCTYPE html>", [(4, "<!DOCTYPE")]),
        ("a <![CDATA[x]]>", [(4, "<!")]),
        ("<div>\n</ div>\n</div>", [(5, "</")]),
    ],
)
def test_unsafe_or_broken_html_is_told_and_shown_as_text(
    body: str, marked: list[tuple[int, str]]
) -> None:
    _, faults = read(body)

    unsafe = [(line, text) for code, line, text in marks(faults) if code == "html-unsafe"]
    assert unsafe == marked
    for element in html5lib.parseFragment(shown(body), namespaceHTMLElements=False).iter():
        assert element.tag in (
            "DOCUMENT_FRAGMENT",
            "blockquote",
            "p",
            "pre",
            "code",
            "ul",
            "li",
            "a",
        )
        assert element.attrib == {}


def test_what_is_refused_does_not_spoil_its_surroundings() -> None:
    assert shown("a <script>*x*</script> <b>c</b>") == (
        "<p>a &lt;script&gt;<em>x</em>&lt;/script&gt; <b>c</b></p>\n"
    )
    assert shown("<div>\n<script>\n</div>\n") == (
        "<pre><code>&lt;div&gt;\n&lt;script&gt;\n&lt;/div&gt;\n</code></pre>\n"
    )


@pytest.mark.parametrize(
    ("body", "marked"),
    [
        ("<div>\n\nText", [(4, "<div>")]),
        ("Text\n\n</div>", [(6, "</div>")]),
        ("a <b><i>x</b></i>", [(4, "<i>"), (4, "</i>")]),
        ("a <kbd>x\n\nb <kbd>y</kbd>", [(4, "<kbd>")]),
        ("[a <b>](c)</b>", []),
        ("<br><hr>", []),
    ],
)
def test_elements_that_are_not_closed_in_order_are_told(
    body: str, marked: list[tuple[int, str]]
) -> None:
    _, faults = read(body)

    assert marks(faults) == [("html-open", *place) for place in marked]
