"""The brackets of labels as spans of their own, so that a page can leave them out of sight."""

from collections.abc import Sequence

from sitegen.engraving.markup import escaped

BRACKET = "bracket"
"""The class of an opening or closing bracket around the label of a non-chord tone."""


def with_brackets(contents: Sequence[str]) -> list[str]:
    """Return the runs of a label as markup, its outer brackets in spans of class `bracket`."""
    contents, before, after = list(contents), "", ""
    if contents and contents[0].startswith("("):
        before, contents[0] = _span("("), contents[0][1:]
    if contents and contents[-1].endswith(")"):
        after, contents[-1] = _span(")"), contents[-1][:-1]
    written = [escaped(content) for content in contents]
    if written:
        written[0] = before + written[0]
        written[-1] += after
    return written


def _span(sign: str) -> str:
    return f'<tspan class="{BRACKET}">{sign}</tspan>'
