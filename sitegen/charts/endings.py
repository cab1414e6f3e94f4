"""Endings: the brackets over the bars of a repeat."""

import re
from collections.abc import Sequence
from dataclasses import replace

from sitegen.score.chart import Bar

ENDING = re.compile(r"\d\.(?:[,–-]?\s?\d\.)*")
"""How an ending is written in round brackets: `1.`, `1.2.`, `1.-3.`"""


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
