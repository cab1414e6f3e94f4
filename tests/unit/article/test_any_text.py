"""Whatever an author types is read and rendered, and every place lies in the file."""

from collections.abc import Iterator

from hypothesis import example, given
from hypothesis import strategies as st

from sitegen.article import Article, load_source, read_article, read_page, render_body, role_text
from sitegen.diagnostics import Diagnostic, draw_frame
from sitegen.source import Source, Span

NAMES = ("notation", "changes")
PIECES = (
    "``` ~~~ notation changes text > - 1. {chord {see {fact {at } | |---| [^1] [^1]: ^[ [ ] ( ) !["
    " <div> </div> <b <!-- --> # == * ** _ ` `` \\ \\| &amp; = 9 a b.c 1:23 Eb2 javascript:x"
    " title: song: key: - & *a !!int --- [r] [r]: /u % @ ' \" : , { }"
).split()
BLANKS = ("\n", "\n\n", " ", "  ", "    ", "\t", "\x0b", "\x0c", "\x85", "\u2028", "\u00a0", "")
ODD = ("e\u0301", "♭", "𝄪", "🎵", "\x00", "\r", "\ud800", "\ufeff")

text_like_articles = st.lists(
    st.sampled_from((*PIECES, *ODD)).flatmap(
        lambda piece: st.sampled_from(BLANKS).map(lambda blank: piece + blank)
    ),
    max_size=60,
).map("".join)
fronts = st.sampled_from(("", "---\n", "---\ntitle: x\n---\n"))


def check(text: str) -> None:
    """Read a text as both kinds of page and check what comes out."""
    for read in (read_article, read_page):
        article, faults = read(Source("a.md", text), NAMES)
        for span in spans(article, faults):
            assert is_inside(span, article.source), span
        for fault in faults:
            assert draw_frame(fault)
        for use in article.roles:
            assert mark(article, use.span).startswith("{" + use.name)
            assert mark(article, use.span).endswith("}")
            assert mark(article, use.argument_span).split() == use.argument.split()
        for fence in article.fences:
            assert mark(article, fence.span) == fence.name
        assert isinstance(render_body(article, lambda fence: fence.name, role_text), str)


def spans(article: Article, faults: tuple[Diagnostic, ...]) -> Iterator[Span]:
    yield from (fault.span for fault in faults)
    yield from (heading.span for heading in article.headings)
    yield from (use.span for use in article.roles)
    yield from (use.span for use in article.images)
    yield from (use.span for use in article.links)
    for fence in article.fences:
        yield from (line.span(0, len(line.text)) for line in fence.passage.lines)


def is_inside(span: Span, source: Source) -> bool:
    lines = source.lines
    # A caret may stand just behind the last code point of a line.
    return (
        1 <= span.line <= span.end_line <= len(lines)
        and 1 <= span.column <= len(lines[span.line - 1]) + 1
        and 1 <= span.end_column <= len(lines[span.end_line - 1]) + 2
        and (span.line, span.column) <= (span.end_line, span.end_column)
    )


def mark(article: Article, span: Span) -> str:
    """Return what a span marks, the marks of quotes at the starts of further lines left out."""
    lines = list(article.source.lines[span.line - 1 : span.end_line])
    lines[-1] = lines[-1][: span.end_column - 1]
    lines[0] = lines[0][span.column - 1 :]
    return "\n".join([lines[0], *(line.lstrip("> \t") for line in lines[1:])])


@given(st.text())
@example("\r\n\x00{chord G}")
@example("---\n\ta:\n---")
def test_any_text_is_read(text: str) -> None:
    check(text)


@given(fronts, text_like_articles)
def test_any_mixture_of_what_articles_hold_is_read(front: str, text: str) -> None:
    check(front + text)


@given(st.binary())
def test_any_bytes_become_a_text_that_can_be_written_again(data: bytes) -> None:
    source, faults = load_source(data, "a.md")

    assert source.text.encode().decode() == source.text
    assert all(is_inside(fault.span, source) for fault in faults)


@given(st.text(st.characters(exclude_categories=("Cc", "Cs")) | st.sampled_from("\t\n")))
def test_text_in_utf_8_comes_through_unchanged(text: str) -> None:
    source, faults = load_source(b"\xef\xbb\xbf" + text.encode(), "a.md")

    assert (source.text, faults) == (text, ())
