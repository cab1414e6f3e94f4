"""From the tokens of a body to HTML."""

import re
from collections.abc import Callable, MutableMapping, Sequence
from html import escape, unescape
from typing import Any

from markdown_it.renderer import RendererHTML
from markdown_it.token import Token
from markdown_it.utils import OptionsDict

from sitegen.article.reading import Fence, RoleUse

DRAW_FENCE, DRAW_ROLE = "draw_fence", "draw_role"
_HEADING = "heading"
DrawFence = Callable[[Fence], str]
DrawRole = Callable[[RoleUse], str]
Env = MutableMapping[str, Any]
_TAG = re.compile(r"<[^>]*>")


class BodyRenderer(RendererHTML):
    """The library's renderer with charts, roles, wide tables and footnotes of our own.

    Ids of footnotes hold an underscore, as no heading's anchor does.
    """

    def fence(self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: Env) -> str:
        """Draw a chart, or show plain text as it is typed."""
        chart = tokens[idx].meta.get("fence")
        if chart is None:
            return super().fence(tokens, idx, options, env)
        return str(env[DRAW_FENCE](chart))

    def role(self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: Env) -> str:
        """Draw a role."""
        del options
        return str(env[DRAW_ROLE](tokens[idx].meta["use"]))

    def raw_shown(self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: Env) -> str:
        """Show HTML that must not take effect as the text that it is."""
        del options, env
        return f"<pre><code>{escape(tokens[idx].content)}</code></pre>\n"

    def table_open(self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: Env) -> str:
        """Open a table in a box of its own, which scrolls by keyboard too where it is wide.

        The box goes by the name of the heading that the table stands under.
        """
        above = env.get(_HEADING)
        heading = self.renderInlineAsText(above.children, options, env) if above else ""
        name = escape(f"Table: {heading}" if heading else "Table")
        box = f'<div class="table-scroll" role="group" aria-label="{name}" tabindex="0">\n'
        return box + self.renderToken(tokens, idx, options, env)

    def heading_open(
        self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: Env
    ) -> str:
        """Open a heading, and remember it for the tables below it."""
        env[_HEADING] = tokens[idx + 1]
        return self.renderToken(tokens, idx, options, env)

    def table_close(
        self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: Env
    ) -> str:
        """Close a table and its box."""
        return self.renderToken(tokens, idx, options, env) + "</div>\n"

    def th_open(self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: Env) -> str:
        """Open a head cell, which speaks of its column."""
        tokens[idx].attrSet("scope", "col")
        return self.renderToken(tokens, idx, options, env)

    def footnote_ref(
        self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: Env
    ) -> str:
        """Link to a note."""
        del options, env
        number, place = _note(tokens[idx])
        return (
            f'<sup class="footnote-ref"><a href="#note_{number}" id="{place}" '
            f'aria-label="Note {number}">{number}</a></sup>'
        )

    def footnote_block_open(
        self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: Env
    ) -> str:
        """Open the notes of a block of text."""
        del tokens, idx, options, env
        return '<div class="footnotes" role="note">\n<ol>\n'

    def footnote_block_close(
        self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: Env
    ) -> str:
        """Close the notes of a block of text."""
        del tokens, idx, options, env
        return "</ol>\n</div>\n"

    def footnote_open(
        self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: Env
    ) -> str:
        """Open one note."""
        del options, env
        number, _ = _note(tokens[idx])
        return f'<li id="note_{number}" value="{number}" class="footnote-item">\n'

    def footnote_close(
        self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: Env
    ) -> str:
        """Close one note."""
        del tokens, idx, options, env
        return "</li>\n"

    def footnote_anchor(
        self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: Env
    ) -> str:
        """Link from a note back to the place that led to it."""
        del options, env
        number, place = _note(tokens[idx])
        again = int(tokens[idx].meta.get("subId") or 0)
        which = f", place {again + 1}" if again else ""
        return (
            f' <a href="#{place}" class="footnote-backref" '
            f'aria-label="Back to the text at note {number}{which}">↩</a>'
        )

    def renderInlineAsText(  # noqa: N802 - the library's name
        self, tokens: Sequence[Token] | None, options: OptionsDict, env: Env
    ) -> str:
        """Return the description of a picture as plain text, roles as they are read."""
        pieces = []
        for token in tokens or ():
            if token.type == "role":
                pieces.append(unescape(_TAG.sub("", str(env[DRAW_ROLE](token.meta["use"])))))
            else:
                pieces.append(super().renderInlineAsText([token], options, env))
        return "".join(pieces)


def _note(token: Token) -> tuple[int, str]:
    """Return a note's number and the id of the place in the text that this token speaks of."""
    number = int(token.meta["id"]) + 1
    again = int(token.meta.get("subId") or 0)
    return number, f"note_{number}_from" + (f"_{again + 1}" if again else "")
