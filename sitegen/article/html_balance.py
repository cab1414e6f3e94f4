"""Whether the HTML elements that an author opens are closed again, in the right order.

One that is not would take in what stands below it, up to the end of the page.
"""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from sitegen.article.tracker import Tracker
from sitegen.diagnostics import fault
from sitegen.source import Span

# HTML Standard, 13.1.2: void elements, and those whose end tag may be left out.
_VOID = frozenset("area base br col embed hr img input link meta source track wbr".split())
_CLOSED_BY_THE_NEXT = frozenset(
    "colgroup dd dt li option p rp rt tbody td tfoot th thead tr".split()
)


@dataclass(frozen=True)
class Tag:
    """One HTML tag of the text, `name` in small letters."""

    name: str
    closes: bool
    span: Span


def check_balance(tags: Iterable[Tag], tracker: Tracker) -> None:
    """Report every element that is opened and not closed, or closed and not open."""
    opened: list[Tag] = []
    names: Counter[str] = Counter()
    for tag in tags:
        if tag.name in _VOID:
            continue
        if not tag.closes:
            opened.append(tag)
            names[tag.name] += 1
        elif names[tag.name]:
            while (last := opened.pop()).name != tag.name:
                names[last.name] -= 1
                _report_open(last, tracker)
            names[tag.name] -= 1
        else:
            _report(tag, f"the HTML element <{tag.name}> is closed and was not open", tracker)
    for tag in opened:
        _report_open(tag, tracker)


def _report_open(tag: Tag, tracker: Tracker) -> None:
    if tag.name not in _CLOSED_BY_THE_NEXT:
        message = f"the HTML element <{tag.name}> is opened and not closed"
        _report(tag, message, tracker, f"write </{tag.name}> where it ends")


def _report(tag: Tag, message: str, tracker: Tracker, hint: str = "") -> None:
    tracker.report(fault("html-open", tracker.source, tag.span, message, hint=hint))
