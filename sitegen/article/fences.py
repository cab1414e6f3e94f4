"""Fenced blocks: which of them are charts, and where their lines stand in the file."""

from collections.abc import Collection, Iterable

from markdown_it.token import Token

from sitegen.article.places import BLANKS, cut_line
from sitegen.article.reading import Fence
from sitegen.article.tracker import Tracker
from sitegen.diagnostics import did_you_mean, fault
from sitegen.source import Passage, Source, Span

PLAIN = "text"
"""The word that opens a block of plain text."""


def take_fences(
    tokens: Iterable[Token], names: Collection[str], tracker: Tracker
) -> tuple[Fence, ...]:
    """Return the chart blocks among the tokens, which keep them; `names` are those of charts."""
    fences = []
    for token in tokens:
        if token.type != "fence" or token.map is None:
            continue
        fence = _read_fence(tracker.source, token, token.map)
        if not fence.closed:
            _report_open(token, fence, tracker)
        if fence.name in names:
            token.meta["fence"] = fence
            fences.append(fence)
            _check_info(fence, tracker)
        elif fence.name not in ("", PLAIN):
            _report_name(fence, names, tracker)
    return tuple(fences)


def _read_fence(source: Source, token: Token, placed: list[int]) -> Fence:
    number = placed[0] + 1
    texts = token.content.split("\n")[:-1]
    lines = tuple(cut_line(source, text, number + n) for n, text in enumerate(texts, start=1))
    name, span = _name(source, token, number)
    info = token.info.strip(BLANKS)[len(name) :].strip(BLANKS)
    passage = Passage(source, lines, _opening(source, token, number))
    return Fence(name, info, passage, span, closed=placed[1] - placed[0] > len(lines) + 1)


def _name(source: Source, token: Token, number: int) -> tuple[str, Span]:
    words = token.info.split(maxsplit=1)
    rest = len(token.info) - len(token.info.lstrip())
    start = len(source.lines[number - 1]) - len(token.info) + rest + 1
    if not words:
        return "", _opening(source, token, number)
    return words[0], Span(number, start, number, start + len(words[0]))


def _opening(source: Source, token: Token, number: int) -> Span:
    """Return where the opening line's own text stands, its marks first."""
    line = source.lines[number - 1]
    start = len(line) - len(token.info) - len(token.markup) + 1
    return Span(number, start, number, max(len(line.rstrip()), start) + 1)


def _report_open(token: Token, fence: Fence, tracker: Tracker) -> None:
    message = "this block is opened and not closed"
    hint = f"write {token.markup} below its last line, indented as here"
    tracker.report(fault("block-open", tracker.source, fence.passage.opening, message, hint=hint))


def _check_info(fence: Fence, tracker: Tracker) -> None:
    if fence.info:
        number, end = fence.span.line, fence.passage.opening.end_column
        span = Span(number, max(end - len(fence.info), fence.span.end_column), number, end)
        message = f'"{fence.info}" stands behind the name of the block'
        hint = "what a block says of itself stands in its head: title: and so on"
        tracker.report(fault("block-name", tracker.source, span, message, hint=hint))


def _report_name(fence: Fence, names: Collection[str], tracker: Tracker) -> None:
    message = f'no block is called "{fence.name}"'
    near = did_you_mean(fence.name, names)
    joint = " " if near.endswith("?") else "; "
    hint = f"{near}{joint}a block of plain text opens with {PLAIN}".removeprefix("; ")
    tracker.report(fault("block-name", tracker.source, fence.span, message, hint=hint))
