"""The full-text index reads the words of a page, and can lead to its sections and charts."""

import pytest
from lxml import html

from sitegen.pages.words_feed import feed_of

PAGE = """<!DOCTYPE html><html lang="pt-BR"><head><title>x</title></head><body>
<header><a href="/">The site</a></header>
<main class="spread"><article>
<h1>The Borrowed Coat</h1>
<div aria-hidden="true">ornament</div><p hidden>later</p>
<nav><a href="#a">Contents</a></nav>
<h2 id="voice">The voice</h2>
<p>It leaves E♭ for C♭5, not for F♯.<!--no word--></p>
<table><tr><td>an author's table</td></tr></table>
<figure id="chart-verse" class="chart">
<figcaption><span>Example 3</span><span>: </span><span>Verse 1</span>
<a href="#t">0:10</a></figcaption>
<div><svg><title>drawing</title><text>E♭5</text></svg></div>
<table><tr><td>rows of the drawing</td></tr></table>
<p>A legend</p><ul data-words><li>Three appoggiaturas.</li></ul>
<details><summary>In words</summary>bar by bar</details>
<p class="control">Take it with you</p>
<button>Play</button>
</figure>
<aside>Related write-ups</aside>
</article></main><footer>Foot</footer></body></html>"""


def read(page: str = PAGE) -> html.HtmlElement:
    return html.document_fromstring(feed_of(page.encode()))


def test_words_captions_and_findings_are_read() -> None:
    words = " ".join(read().text_content().split())
    for told in ("The Borrowed Coat", "The voice", "an author's table", "Three appoggiaturas."):
        assert told in words


LEFT_OUT = "site ornament later Contents drawing rows bar Take Play legend Related Foot 0:10 word"


@pytest.mark.parametrize("left_out", LEFT_OUT.split())
def test_drawings_controls_and_what_stands_around_are_not(left_out: str) -> None:
    assert left_out in PAGE
    assert left_out not in read().text_content()


def test_both_ways_of_writing_accidentals_are_one() -> None:
    assert "It leaves Eb for Cb5, not for F#." in read().text_content()


def test_a_caption_is_a_heading_with_the_charts_id() -> None:
    (heading,) = read().xpath("//h6")
    assert (heading.get("id"), heading.text) == ("chart-verse", "Example 3: Verse 1")
    assert [node.get("id") for node in read().xpath("//*[@id]")] == ["voice", "chart-verse"]


def test_a_part_without_a_heading_is_told_by_the_name_that_the_theme_gives_it() -> None:
    opening = '<div id="text" data-words-name="The opening">First, <p>the coat.</p></div>'
    page = PAGE.replace('<h2 id="voice">', f'{opening}<h2 id="voice">')

    heading, caption = read(page).xpath("//h6")

    assert (heading.get("id"), heading.text, heading.tail) == ("text", "The opening", "First, ")
    assert caption.get("id") == "chart-verse"
    assert len(read(page).xpath('//*[@id="text"]')) == 1


def test_the_language_goes_along() -> None:
    assert read().get("lang") == "pt-BR"
    assert read(PAGE.replace('lang="pt-BR"', 'lang="&quot;><script>"')).get("lang") == "script"


@pytest.mark.parametrize("page", ["", "<p>bare</p>", "<main><p>no name</p></main>"])
def test_a_page_without_a_text_is_left_out(page: str) -> None:
    assert feed_of(page.encode()) == b""
