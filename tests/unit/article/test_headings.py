"""Headings have anchors that are unique, readable and the same in each build."""

import pytest

from sitegen.article import read_article, render_body
from sitegen.article.headings import slug
from sitegen.source import Source, Span

FRONT = "---\ntitle: Low Tide\n---\n"


@pytest.mark.parametrize(
    ("text", "anchor"),
    [
        ("The second verse", "the-second-verse"),
        ("  Bars 5–8: the turn! ", "bars-5-8-the-turn"),
        ("Überleitung in Šárka", "überleitung-in-šárka"),
        ("E\u0301tude", "étude"),
        ("序奏", "序奏"),
        ("F♯ and F", "f-sharp-and-f"),
        ("C# minor", "c-sharp-minor"),
        ("No. #1", "no-1"),
        ("E♭sus2", "e-flat-sus2"),
        ("The singer's “own” line", "the-singers-own-line"),
        ("low_tide", "low-tide"),
        ("…", "section"),
        ("", "section"),
    ],
)
def test_an_anchor_keeps_letters_and_digits(text: str, anchor: str) -> None:
    assert slug(text) == anchor


def test_headings_are_listed_with_level_text_and_place() -> None:
    body = "## The *verse* in {chord Eb} ##\n\n> Bridge & `end`\n> ---\n"
    article, faults = read_article(Source("a.md", FRONT + body), ())

    verse, bridge = article.headings
    assert faults == ()
    assert (verse.level, verse.text, verse.anchor) == (2, "The verse in E♭", "the-verse-in-e-flat")
    assert verse.span == Span(4, 4, 4, 29)
    assert (bridge.level, bridge.text, bridge.anchor) == (2, "Bridge & end", "bridge-end")
    assert bridge.span == Span(6, 3, 6, 17)


def test_anchors_of_one_text_differ_and_stand_on_the_page() -> None:
    body = "## Verse\n\n## Verse\n\n## Verse 2\n\n##\n"
    article, _ = read_article(Source("a.md", FRONT + body), ())

    anchors = [heading.anchor for heading in article.headings]
    assert anchors == ["verse", "verse-2", "verse-2-2", "section"]
    html = render_body(article, lambda fence: fence.name, lambda use: use.name)
    assert all(f'<h2 id="{anchor}">' in html for anchor in anchors)


@pytest.mark.parametrize("body", ["# Verse\n", "Verse\n===\n"])
def test_a_heading_of_the_first_level_is_told(body: str) -> None:
    _, faults = read_article(Source("a.md", FRONT + body), ())

    assert [(fault.code, fault.span.line) for fault in faults] == [("heading-level", 4)]
    assert not faults[0].is_error
