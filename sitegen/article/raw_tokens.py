"""HTML among the tokens of a body: what must not be published is shown as text instead."""

from collections.abc import Callable, Iterable

from markdown_it.token import Token

from sitegen.article.html_balance import Tag, check_balance
from sitegen.article.places import place_lines
from sitegen.article.raw_html import check_html, find_tags
from sitegen.article.tracker import Tracker
from sitegen.diagnostics import fault
from sitegen.source import Span

Spans = Callable[[int, int], Span]


def check_raw_html(tokens: Iterable[Token], tracker: Tracker) -> None:
    """Report unsafe or unbalanced HTML and turn what is unsafe into text."""
    tags: list[Tag] = []
    for token in tokens:
        if token.type == "html_block":
            place = place_lines(tracker.source, token.content, (token.map or [0])[0] + 1)
            tags += _check(token, "raw_shown", place.span, tracker)
        tags += _check_inline(token.children or (), tracker)
    check_balance(tags, tracker)


def _check_inline(tokens: Iterable[Token], tracker: Tracker) -> list[Tag]:
    tags: list[Tag] = []
    for token in tokens:
        if token.type == "html_inline":
            tags += _check(token, "text", token.meta["spans"], tracker)
        tags += _check_inline(token.children or (), tracker)
    return tags


def _check(token: Token, shown_as: str, spans: Spans, tracker: Tracker) -> list[Tag]:
    """Return the tags of an HTML token; with any fault it becomes a token of type `shown_as`."""
    refusals = check_html(token.content)
    for refusal in refusals:
        span = spans(refusal.start, refusal.end)
        tracker.report(
            fault("html-unsafe", tracker.source, span, refusal.message, hint=refusal.hint)
        )
    if refusals:
        token.type = shown_as
        return []
    return [
        Tag(name, closes, spans(start, end))
        for name, closes, start, end in find_tags(token.content)
    ]
