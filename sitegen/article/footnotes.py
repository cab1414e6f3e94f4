"""Footnotes that lead nowhere and notes that nothing leads to."""

import re
from collections.abc import MutableMapping
from typing import Any

from markdown_it.rules_inline import StateInline

from sitegen.article.tracker import Tracker, tracker_of
from sitegen.diagnostics import did_you_mean, fault
from sitegen.source import Span

_MARK = re.compile(r"\[\^([^\]\s\[]+)\](?![(\[:])")
_NOTE = re.compile(r"\[\^([^\]\s]{1,200})\]:")


def report_unknown_footnote(state: StateInline, silent: bool) -> bool:
    """Report a footnote mark whose note is not there; the text stays as it is."""
    match = None if silent else _MARK.match(state.src, state.pos, state.posMax)
    if match is not None and f"^{match[1]}".upper() not in state.env.get("references", {}):
        tracker = tracker_of(state.env)
        known = [label.removeprefix(":") for label in _labels(state.env)]
        hint = did_you_mean(match[1], known) or f"write the note as [^{match[1]}]: and its text"
        message = f'no note is called "{match[1]}"'
        span = tracker.span(*match.span())
        tracker.report(fault("footnote-unknown", tracker.source, span, message, hint=hint))
    return False


def report_unused_notes(env: MutableMapping[str, Any], tracker: Tracker, first: int) -> None:
    """Report every note that no mark leads to; `first` is the body's first line (from 0)."""
    unused = {label.removeprefix(":") for label, use in _labels(env).items() if use < 0}
    for number, line in enumerate(tracker.source.lines[first:], start=first + 1):
        match = _NOTE.search(line)
        if match is not None and match[1] in unused:
            unused.remove(match[1])
            span = Span(number, match.start() + 1, number, match.end())
            message = f'nothing in the text leads to the note "{match[1]}"'
            hint = f"put [^{match[1]}] where the note belongs"
            tracker.report(fault("footnote-unused", tracker.source, span, message, hint=hint))


def _labels(env: MutableMapping[str, Any]) -> dict[str, int]:
    """Return the labels of all notes, each after a colon, with a negative number if unused."""
    labels: dict[str, int] = env.get("footnotes", {}).get("refs", {})
    return labels
