"""The body of a write-up as HTML."""

from typing import Any

from sitegen.article.body_renderer import DRAW_FENCE, DRAW_ROLE, DrawFence, DrawRole
from sitegen.article.markdown import markdown
from sitegen.article.note_places import with_notes_in_place
from sitegen.article.reading import Article


def render_body(article: Article, draw_fence: DrawFence, draw_role: DrawRole) -> str:
    """Return the body's HTML; charts and roles are what the two functions return for them."""
    environment: dict[str, Any] = {DRAW_FENCE: draw_fence, DRAW_ROLE: draw_role}
    parser = markdown()
    tokens = with_notes_in_place(article.tokens)
    return str(parser.renderer.render(tokens, parser.options, environment))
