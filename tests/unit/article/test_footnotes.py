"""Footnotes are linked both ways; marks and notes without each other are told."""

import pytest

from sitegen.article import read_article, render_body
from sitegen.source import Source, Span

FRONT = "---\ntitle: Low Tide\n---\n"


def shown(body: str) -> str:
    article, faults = read_article(Source("a.md", FRONT + body), ())
    assert faults == ()
    return render_body(article, lambda fence: fence.name, lambda use: use.argument)


def test_a_note_and_its_marks_lead_to_each_other() -> None:
    assert shown("One[^a] and two[^a].\n\n[^a]: By {note Eb2}.\n") == (
        '<p>One<sup class="footnote-ref"><a href="#note_1" id="note_1_from" aria-label="Note 1">'
        '1</a></sup> and two<sup class="footnote-ref"><a href="#note_1" id="note_1_from_2" '
        'aria-label="Note 1">1</a></sup>.</p>\n'
        '<div class="footnotes" role="note">\n<ol>\n'
        '<li id="note_1" value="1" class="footnote-item">\n<p>By Eb2. '
        '<a href="#note_1_from" class="footnote-backref" '
        'aria-label="Back to the text at note 1">↩</a> '
        '<a href="#note_1_from_2" class="footnote-backref" '
        'aria-label="Back to the text at note 1, place 2">↩</a></p>\n</li>\n</ol>\n</div>\n'
    )


def test_an_inline_note_is_numbered_with_the_others() -> None:
    html = shown("One^[in *passing*] and two[^a].\n\n[^a]: Later.\n")

    assert html.index('href="#note_1"') < html.index('href="#note_2"')
    assert "<p>in <em>passing</em> <a" in html


def test_a_note_stands_behind_the_block_that_leads_to_it() -> None:
    body = "> - One[^a] and two[^b].\n\nThree[^a], four[^c].\n\n## Five\n\n"
    html = shown(body + "[^c]: N3.\n\n[^a]: N1.\n\n[^b]: N2.\n")
    order = [html.index(part) for part in ("One", "N1", "N2", "Three", "N3", "Five")]

    assert order == sorted(order)
    assert html.count('role="note"') == 2
    assert "</blockquote>\n<div" in html


def test_a_note_of_a_note_stands_with_it() -> None:
    html = shown("One[^a].\n\nTwo.\n\n[^a]: N1[^b].\n\n[^b]: N2.\n")

    assert html.index("N1") < html.index("N2") < html.index("Two")
    assert html.count('role="note"') == 1


def test_ids_of_notes_are_no_anchors_of_headings() -> None:
    html = shown("## Note 1\n\n## note_1 from\n\nText^[x]\n")

    assert html.count('id="note_1"') == 1
    assert html.count('id="note-1"') == 1


@pytest.mark.parametrize(
    ("body", "code", "span"),
    [
        ("> Text[^tuningx].\n\n[^tuning]: x", "footnote-unknown", Span(4, 7, 4, 17)),
        ("Text[^tuning].", "footnote-unknown", Span(4, 5, 4, 14)),
        ("| a[^b] |\n|---|\n", "footnote-unknown", Span(4, 4, 4, 8)),
        ("Text.\n\n> [^tuning]: x", "footnote-unused", Span(6, 3, 6, 12)),
    ],
)
def test_marks_and_notes_alone_are_told(body: str, code: str, span: Span) -> None:
    _, faults = read_article(Source("a.md", FRONT + body), ())

    assert (code, span) in [(fault.code, fault.span) for fault in faults]
    assert not any(fault.is_error for fault in faults)


@pytest.mark.parametrize("body", ["`[^a]`", "\\[^a]", "[^a](b)", "[^a]\n\n[^A]: /url\n\n[x][^A]"])
def test_other_brackets_are_no_marks(body: str) -> None:
    _, faults = read_article(Source("a.md", FRONT + body), ())

    assert "footnote-unknown" not in {fault.code for fault in faults} or body.startswith("[^a]\n")
