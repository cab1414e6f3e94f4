"""HTML that an author types into Markdown: kept, except for what is not safe to publish.

What is kept must be made of whole tags, so that a browser sees in it what is checked here.
"""

import re
from dataclasses import dataclass
from html import unescape

from sitegen.article.links import is_unsafe

REFUSED = frozenset(
    (
        "applet audio base body button embed fieldset form frame frameset head html iframe img "
        "input link math meta noembed noframes noscript object option param picture plaintext "
        "portal script select source style svg template textarea title track video xmp"
    ).split()
)
"""Elements that run, load or replace something, or take what follows for something else."""
_ADDRESSES = frozenset(
    "action background cite data formaction href longdesc manifest poster src xlink:href".split()
)
_REFUSED_ATTRIBUTES = frozenset({"srcdoc", "srcset", "style"})

_VALUE = r"""[^\s"'=<>`]+|'[^']*'|"[^"]*\""""
_ATTRIBUTE = re.compile(
    rf"\s+(?P<name>[A-Za-z_:][\w:.-]*)(?:\s*=\s*(?P<value>{_VALUE}))?", re.ASCII
)
_TAG = re.compile(
    rf"</(?P<closed>[A-Za-z][A-Za-z0-9-]*)\s*>"
    rf"|<(?P<opened>[A-Za-z][A-Za-z0-9-]*)(?P<attributes>(?:\s+[A-Za-z_:][\w:.-]*(?:\s*=\s*(?:{_VALUE}))?)*)\s*/?>"
    r"|<!---?>|<!--(?!-?>)(?:(?!--!?>|<!--).)*-->",
    re.ASCII | re.DOTALL,
)  # fmt: skip

# What a browser takes for the start of a tag or a comment; any other < is text to it.
_OPENING = re.compile(r"<[A-Za-z!?/][\w-]*")


@dataclass(frozen=True)
class Refusal:
    """What must not be published, from code point `start` up to `end` of some HTML."""

    start: int
    end: int
    message: str
    hint: str = ""


def check_html(text: str) -> tuple[Refusal, ...]:
    """Return everything in a piece of HTML that must not be published."""
    refusals: list[Refusal] = []
    at = 0
    while (opening := _OPENING.search(text, at)) is not None:
        tag = _TAG.match(text, opening.start())
        if tag is None:
            hint = "write &lt; where the sign < is meant"
            message = "this is not a whole HTML tag or comment"
            refusals.append(Refusal(*opening.span(), message, hint))
        else:
            refusals += _check_tag(tag)
        at = (tag or opening).end()
    return tuple(refusals)


def find_tags(text: str) -> tuple[tuple[str, bool, int, int], ...]:
    """Return the tags of some HTML: name in small letters, whether it closes, start and end."""
    matches = _TAG.finditer(text)
    return tuple(
        ((tag["opened"] or tag["closed"]).lower(), bool(tag["closed"]), *tag.span())
        for tag in matches
        if tag["opened"] or tag["closed"]
    )


def _check_tag(tag: re.Match[str]) -> list[Refusal]:
    name = (tag["opened"] or tag["closed"] or "").lower()
    if name in REFUSED:
        hint = "write a picture as ![what it shows](file)" if name == "img" else ""
        return [Refusal(*tag.span(), f"the HTML element <{name}> must not stand in a text", hint)]
    if not tag["attributes"]:
        return []
    start = tag.start("attributes")
    matches = _ATTRIBUTE.finditer(tag["attributes"])
    return [
        Refusal(start + match.start("name"), start + match.end(), message)
        for match in matches
        if (message := _attribute_fault(match["name"].lower(), match["value"] or ""))
    ]


def _attribute_fault(name: str, value: str) -> str:
    if name.startswith("on") or name in _REFUSED_ATTRIBUTES:
        return f'the HTML attribute "{name}" must not stand in a text'
    if name in _ADDRESSES and is_unsafe(unescape(value.strip("\"'"))):
        return f'the address of "{name}" must not run or hold a program'
    return ""
