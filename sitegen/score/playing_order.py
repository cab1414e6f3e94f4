"""The order in which a chart's bars are played: repeats and endings followed."""

import re
from collections.abc import Sequence

from sitegen.score.chart import Bar

_MOST_BARS = 1000
_RANGE = re.compile(r"(\d+)\.\s?[-\u2013]\s?(\d+)|(\d+)")


def bars_as_played(bars: Sequence[Bar]) -> tuple[int, ...]:
    """Return the places of the bars in the order of play, at most 1,000.

    What stands between repeat signs is played twice, with endings as often as they are
    numbered. A repeat without a sign at its start goes back to the last one, or to the first
    full bar.
    """
    order: list[int] = []
    start = next((place for place, bar in enumerate(bars) if bar.number), 0)
    place, turn, last_turn = 0, 1, 2
    while place < len(bars) and len(order) < _MOST_BARS:
        bar = bars[place]
        if bar.repeat_start and place != start:
            start, turn, last_turn = place, 1, 2
        if bar.ending:
            turns = turns_of(bar.ending)
            if turn not in turns:
                place = _bracket_end(bars, place) + 1
                continue
            last_turn = max(*turns, 2)
        order.append(place)
        if bar.repeat_end and (turn < last_turn or _is_ending(bars, place + 1)):
            place, turn = start, turn + 1
            continue
        if bar.repeat_end or (bar.ending_closes and not _is_ending(bars, place + 1)):
            start, turn, last_turn = place + 1, 1, 2
        place += 1
    return tuple(order)


def _is_ending(bars: Sequence[Bar], place: int) -> bool:
    return place < len(bars) and bool(bars[place].ending)


def _bracket_end(bars: Sequence[Bar], place: int) -> int:
    while place + 1 < len(bars) and not bars[place].ending_closes:
        place += 1
    return place


def turns_of(ending: str) -> frozenset[int]:
    """Return the turns that an ending is for: "1.2." and "1.-3."."""
    turns: set[int] = set()
    for low, high, one in _RANGE.findall(ending):
        turns.update(range(int(low), int(high) + 1) if low else [int(one)])
    return frozenset(turns)
