"""The Markdown that write-ups are written in: CommonMark, tables, footnotes and our roles.

The library's rules are kept; some are wrapped so that what they find remembers its place.
"""

from collections.abc import Callable, Iterable, Sequence
from functools import cache, partial

from markdown_it import MarkdownIt
from markdown_it.rules_block import StateBlock, table
from markdown_it.rules_core import StateCore
from markdown_it.rules_inline import StateInline, autolink, html_inline, image, link
from markdown_it.token import Token
from mdit_py_plugins.footnote import footnote_plugin
from mdit_py_plugins.footnote.index import footnote_inline

from sitegen.article.body_renderer import BodyRenderer
from sitegen.article.footnotes import report_unknown_footnote, report_unused_notes
from sitegen.article.places import PlacedText, place_cells, place_lines
from sitegen.article.role_rule import find_role
from sitegen.article.tracker import Tracker, tracker_of, with_tracker
from sitegen.diagnostics import fault
from sitegen.source import Source, Span

DEEPEST = 60
"""How many quotes and lists may stand inside one another, counted as the library does."""

LONGEST_BLOCK, MOST_BRACKETS = 10_000, 200
"""How long one paragraph, heading or cell may be, and how many brackets it may open.

The library tries each opened bracket with all of the text behind it.
"""

InlineRule = Callable[[StateInline, bool], bool]


@cache
def markdown() -> MarkdownIt:
    """Return the one set-up for all texts; what belongs to one text stands in its environment."""
    parser = MarkdownIt("commonmark", {"maxNesting": DEEPEST}, renderer_cls=BodyRenderer)
    parser.enable("table").use(footnote_plugin)
    for name in ("ref", "block_open", "block_close", "open", "close", "anchor"):
        own = getattr(BodyRenderer, f"footnote_{name}")
        parser.add_render_rule(f"footnote_{name}", own)  # in place of the plugin's
    parser.validateLink = lambda url: True  # type: ignore[method-assign]  # noqa: ARG005
    parser.core.ruler.at("inline", _parse_inline)
    parser.block.ruler.at("table", _placed_table, {"alt": ["paragraph", "reference"]})
    parser.inline.ruler.before("link", "role", find_role)
    parser.inline.ruler.after("footnote_ref", "footnote_unknown", report_unknown_footnote)
    wrapped: dict[str, tuple[InlineRule, int]] = {
        "link": (link, 0),
        "image": (image, len("![")),
        "autolink": (autolink, 0),
        "html_inline": (html_inline, 0),
        "footnote_inline": (footnote_inline, len("^[")),
    }
    for name, (rule, opening) in wrapped.items():
        parser.inline.ruler.at(name, _placed(rule, opening))
    return parser


def parse_body(source: Source, first: int) -> tuple[list[Token], Tracker]:
    """Return the tokens of the lines from `first` (from 0) on, with what was found in them."""
    # Empty lines stand in for the front matter, so that the library counts the file's lines.
    body = "\n" * first + "\n".join(source.lines[first:])
    body += "" if body.endswith("\n") else "\n"
    tracker = Tracker(source)
    environment = with_tracker(tracker)
    tokens = markdown().parse(body, environment)
    _report_depth(tokens, tracker)
    report_unused_notes(environment, tracker, first)
    return tokens, tracker


def _report_depth(tokens: Iterable[Token], tracker: Tracker) -> None:
    """Report blocks that stand so deep in others that the library leaves out what they hold."""
    for token in tokens:
        if token.nesting == 1 and token.level >= DEEPEST - 1 and token.map:
            span = tracker.source.line_span(token.map[0] + 1)
            message = f"more than {DEEPEST // 2} quotes or lists inside one another"
            tracker.report(fault("nesting", tracker.source, span, message))


def _parse_inline(state: StateCore) -> None:
    tracker = tracker_of(state.env)
    for token in state.tokens:
        if token.type == "inline":
            tracker.block = _place(tracker.source, token)
            token.meta["place"] = tracker.block
            token.children = []
            if _is_too_long(token, tracker):
                continue
            state.md.inline.parse(token.content, state.md, state.env, token.children)


def _is_too_long(token: Token, tracker: Tracker) -> bool:
    """Report a block that would take too long to read; what it says is left out."""
    text = token.content
    if len(text) <= LONGEST_BLOCK and text.count("[") <= MOST_BRACKETS:
        return False
    span = tracker.source.line_span((token.map or [0])[0] + 1)
    message = f"this paragraph has more than {LONGEST_BLOCK} characters"
    if len(text) <= LONGEST_BLOCK:
        message = f"more than {MOST_BRACKETS} brackets are opened in this paragraph"
    hint = "leave an empty line where a new paragraph begins"
    tracker.report(fault("text-long", tracker.source, span, message, hint=hint))
    return True


def _place(source: Source, token: Token) -> PlacedText:
    cell = token.meta.get("cell")
    if isinstance(cell, PlacedText):
        return cell
    return place_lines(source, token.content, (token.map or [0])[0] + 1)


def _placed_table(state: StateBlock, first: int, last: int, silent: bool) -> bool:
    count = len(state.tokens)
    if not table(state, first, last, silent):
        return False
    row: list[Token] = []
    for token in state.tokens[count:]:
        if token.type == "inline":
            row.append(token)
        elif token.type == "tr_close" and row:
            _place_row(state, row, (row[0].map or [0])[0])
            row = []
    return True


def _place_row(state: StateBlock, row: Sequence[Token], number: int) -> None:
    tracker = tracker_of(state.env)
    start_of_line = state.src.rfind("\n", 0, state.bMarks[number]) + 1
    start = state.bMarks[number] + state.tShift[number] - start_of_line
    texts = [token.content for token in row]
    cells = place_cells(tracker.source.lines[number], number + 1, start, texts)
    for token, cell in zip(row, cells, strict=False):
        token.meta["cell"] = cell
    for cell in cells[len(row) :]:
        message = f"this row has more cells than the {len(row)} of the table's first row"
        span = cell.span(0, len(cell.text))
        tracker.report(fault("table-cells", tracker.source, span, message,
                             hint=r"write \| for a | inside a cell"))  # fmt: skip


def _placed(rule: InlineRule, opening: int) -> InlineRule:
    """Return `rule` such that its tokens know their places.

    `opening` is how far behind its start the rule begins anew with a part of the text.
    """

    def run(state: StateInline, silent: bool) -> bool:
        start, count = state.pos, len(state.tokens)
        tracker = tracker_of(state.env)
        inner = start + opening if opening else 0
        tracker.base += inner
        found = rule(state, silent)
        tracker.base -= inner
        if found and not silent:
            _note_places(state.tokens[count:], tracker, start, state.pos)
        return found

    return run


def _note_places(tokens: Iterable[Token], tracker: Tracker, start: int, end: int) -> None:
    """Note in the tokens of one rule where it stands; those of rules inside it know already.

    Of HTML, also the places within it.
    """
    for token in tokens:
        if token.type in ("link_open", "image"):
            token.meta.setdefault("span", tracker.span(start, end))
        elif token.type == "html_inline" and not token.meta:
            block, first = tracker.block, tracker.base + start
            token.meta["spans"] = partial(_span_within, block, first)


def _span_within(block: PlacedText, first: int, start: int, end: int) -> Span:
    return block.span(first + start, first + end)
