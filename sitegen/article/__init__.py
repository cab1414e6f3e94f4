"""The text of one file as a write-up: front matter, words, chart blocks and inline roles.

The only room that knows the Markdown library.
"""

from sitegen.article.decoding import load_source
from sitegen.article.front import FrontMatter
from sitegen.article.front_reader import read_article_front, read_page_front
from sitegen.article.headings import free_anchor
from sitegen.article.reader import read_article, read_page
from sitegen.article.reading import Article, Fence, Heading, ImageUse, LinkUse, RoleUse
from sitegen.article.render import render_body
from sitegen.article.roles import role_text

__all__ = [
    "Article",
    "Fence",
    "FrontMatter",
    "Heading",
    "ImageUse",
    "LinkUse",
    "RoleUse",
    "free_anchor",
    "load_source",
    "read_article",
    "read_article_front",
    "read_page",
    "read_page_front",
    "render_body",
    "role_text",
]
