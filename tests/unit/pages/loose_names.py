"""Names that run from right to left, and where a page lets them disorder what stands around."""

import re
from collections.abc import Iterator
from typing import Any

from html5lib import parse

NAME = "ערב טוב 7/8"
_ISOLATED = re.compile("\u2068.*?\u2069")
_RUNS_LEFT = re.compile("[\u0590-\u08ff]")


def loose(page: str) -> list[str]:
    """Return the texts of a page that run from right to left and are kept apart by nothing."""
    root = parse(page, treebuilder="lxml", namespaceHTMLElements=False).getroot()
    texts = (_ISOLATED.sub("", text) for text in _loose(root, kept=False))
    return [text for text in texts if _RUNS_LEFT.search(text)]


def _loose(node: Any, *, kept: bool) -> Iterator[str]:  # noqa: ANN401 - lxml has no types
    if not isinstance(node.tag, str) or node.tag == "head":
        return
    within = kept or node.tag == "bdi" or node.get("dir") == "auto"
    if not within and node.text:
        yield node.text
    for child in node:
        yield from _loose(child, kept=within)
        if not within and child.tail:
            yield child.tail
