"""The examples of the CommonMark specification, run through our set-up.

commonmark-0.31.2.json holds all 652 examples of CommonMark Spec 0.31.2 by John MacFarlane
(https://spec.commonmark.org/0.31.2/, licence CC-BY-SA 4.0) as the npm package commonmark-spec
0.31.2 extracts them. Each is the body of a write-up. What we add on purpose is taken away before
the comparison: ids of headings, `rel` of links to other sites. Names of code blocks that are no
charts are faults of ours, and change nothing in the HTML. White space between an opening and a
closing quote, which no browser shows, is left out on both sides.
"""

import json
import re
from pathlib import Path

import pytest

from sitegen.article import read_article, render_body
from sitegen.article.markdown import markdown, parse_body
from sitegen.source import Source

FRONT = "---\ntitle: x\n---\n"
EXAMPLES = json.loads(
    Path(__file__).with_name("commonmark-0.31.2.json").read_text(encoding="utf-8")
)["examples"]
SHOWN_AS_TEXT = {
    **dict.fromkeys((156, 157, 158), "a tag that never ends would swallow the page"),
    **dict.fromkeys((170, 178), "script runs a program"),
    171: "textarea takes what follows for its own text",
    **dict.fromkeys((172, 173, 176), "style restyles the whole page"),
    **dict.fromkeys((180, 181, 182, 627, 628, 629), "no HTML to a browser, or not inside a page"),
    475: "img passes by the checks of a picture",
}
"""Examples whose HTML we refuse to publish: by design it is shown as text, with a fault."""


def tabs(text: str) -> str:
    return str(text).replace("→", "\t")  # how the specification writes them


def comparable(html: str) -> str:
    html = re.sub(r'(<h[1-6]) id="[^"]*">', r"\1>", html).replace(' rel="noopener"', "")
    return re.sub(r"<blockquote>\s+</blockquote>", "<blockquote></blockquote>", html)


def our_html(text: str) -> tuple[str, set[str]]:
    """Return the HTML of a write-up's body and the codes of its faults."""
    article, faults = read_article(Source("example", FRONT + text), ())
    html = render_body(article, lambda fence: fence.name, lambda use: use.argument)
    return html, {fault.code for fault in faults}


def test_the_set_is_whole() -> None:
    assert [example["number"] for example in EXAMPLES] == list(range(1, 653))
    assert set(SHOWN_AS_TEXT) < {example["number"] for example in EXAMPLES}


@pytest.mark.parametrize(
    ("text", "html"),
    [
        pytest.param(tabs(example["markdown"]), tabs(example["html"]), id=str(example["number"]))
        for example in EXAMPLES
        if example["number"] not in SHOWN_AS_TEXT
    ],
)
def test_an_example_gives_the_html_of_the_specification(text: str, html: str) -> None:
    assert comparable(our_html(text)[0]) == comparable(html)


@pytest.mark.parametrize("number", SHOWN_AS_TEXT)
def test_what_we_refuse_is_told_and_differs_in_nothing_else(number: int) -> None:
    example = EXAMPLES[number - 1]
    text, html = tabs(example["markdown"]), tabs(example["html"])
    tokens, _ = parse_body(Source("example", text), 0)

    assert markdown().renderer.render(tokens, markdown().options, {}) == html
    ours, codes = our_html(text)
    assert "html-unsafe" in codes
    assert ours != html


def test_the_comparison_sees_a_difference() -> None:
    assert comparable(our_html("*a*\n")[0]) != comparable("<p><b>a</b></p>\n")
