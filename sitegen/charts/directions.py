"""Directions at the head of a bar, in round brackets: a meter, (7/8), or an ending, (1.)."""

import re
from collections.abc import Sequence
from dataclasses import replace

from sitegen.charts.grid.faults import Faults
from sitegen.score.chart import Bar
from sitegen.score.meter import Meter
from sitegen.source import Span

DIRECTION = re.compile(r"\(((?:[^()|]|\([^()|]*\))*)\)")
"""A direction; it may hold brackets of its own: (7/8 (2+2+3))."""

DIRECTION_HINT = "a direction is a meter, (7/8), or an ending, (1.)"
_ENDING = re.compile(r"\d\.(?:[,–-]?\s?\d\.)*")


def read_direction(text: str, span: Span, faults: Faults) -> Meter | str | None:
    """Return the meter, or the text of the ending; what is neither is reported and gives None."""
    if _ENDING.fullmatch(text.strip()):
        return text.strip()
    try:
        return Meter.read(text)
    except ValueError as wrong:
        faults.add("count-direction", span, str(wrong), hint=DIRECTION_HINT)
        return None


def close_endings(bars: Sequence[Bar]) -> tuple[Bar, ...]:
    """Return the bars with the end of each ending's bracket marked.

    A bracket closes at a repeat sign, a double bar line, before the next ending and at the
    chart's end; a last ending that none of these closes is as long as the one before it.
    """
    closed = list(bars)
    open_since: int | None = None
    longest = 0
    for index, bar in enumerate(bars):
        if bar.ending:
            open_since = index
        if open_since is None:
            continue
        length = index - open_since + 1
        at_end = index + 1 == len(bars) or bool(bars[index + 1].ending)
        if bar.repeat_end or bar.double_bar or at_end or length == longest:
            closed[index] = replace(bar, ending_closes=True)
            longest, open_since = length, None
    return tuple(closed)
