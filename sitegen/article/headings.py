"""Headings with their anchors."""

import re
import unicodedata
from collections import Counter
from collections.abc import Container, Sequence
from itertools import pairwise

from markdown_it.token import Token

from sitegen.article.places import PlacedText
from sitegen.article.reading import Heading
from sitegen.article.roles import role_text
from sitegen.article.tracker import Tracker
from sitegen.diagnostics import fault

# Accidentals would vanish from an anchor as signs do, and F♯ is not F.
_SHARP = re.compile(r"(?<![^\W\d_])([A-G])(?:♯|#)")
_FLAT = re.compile(r"♭")
_NO_WORD = re.compile(r"[\W_]+")
_NAMELESS = "section"


def take_headings(tokens: Sequence[Token], tracker: Tracker) -> tuple[Heading, ...]:
    """Return the headings among the tokens and give each its anchor."""
    headings: list[Heading] = []
    taken: set[str] = set()
    alike: Counter[str] = Counter()
    for opening, inline in pairwise(tokens):
        if opening.type != "heading_open":
            continue
        text = plain_text(inline.children or ())
        wanted = slug(text)
        anchor = free_anchor(wanted, taken, alike[wanted])
        alike[wanted] += 1
        taken.add(anchor)
        opening.attrSet("id", anchor)
        place: PlacedText = inline.meta["place"]
        span = place.span(0, len(place.text))
        level = int(opening.tag[1])
        headings.append(Heading(level, text, anchor, span))
        if level == 1:
            message = "a heading of the first level stands in the text"
            hint = "the title is the page's own; start the text's headings with ##"
            tracker.report(fault("heading-level", tracker.source, span, message, hint=hint))
    return tuple(headings)


def slug(text: str) -> str:
    """Return an anchor for `text`: its letters and digits in small, hyphens between words."""
    text = _SHARP.sub(r"\1 sharp ", _FLAT.sub(" flat ", text))
    text = unicodedata.normalize("NFC", text).casefold()
    return _NO_WORD.sub("-", text.replace("'", "").replace("’", "")).strip("-") or _NAMELESS


def plain_text(tokens: Sequence[Token]) -> str:
    """Return what is read of inline tokens, marks and links left out."""
    pieces = []
    for token in tokens:
        if token.type in ("text", "code_inline"):
            pieces.append(token.content)
        elif token.type == "role":
            pieces.append(role_text(token.meta["use"]))
        elif token.type == "image":
            pieces.append(plain_text(token.children or ()))
        elif token.type in ("softbreak", "hardbreak"):
            pieces.append(" ")
    return "".join(pieces).strip()


def free_anchor(wanted: str, taken: Container[str], alike: int = 0) -> str:
    """Return `wanted`, numbered from 2 where it is taken.

    `alike` names were made of it already, all of them taken.
    """
    number = max(alike, 1)
    name = wanted if number == 1 else f"{wanted}-{number}"
    while name in taken:
        number += 1
        name = f"{wanted}-{number}"
    return name
