"""The progressions of all write-ups as the browser searches them.

The file has `symbols`, each [text, root, notes, family] once, the commonest first, and `rows`, a
progression each:

    [write-up, chart, tonic or -1, 1 for a minor key, loop start, loop length, steps, bars]

`steps` has a character for each chord, whose code less `FIRST` is its place among the symbols.
`bars` has two for each chord: how many bars after the last bar of the chord before it starts, and
how many bars later it ends, both plus `MIDDLE`; it is "" where each chord has the next bar for
itself.
"""

from collections import Counter
from collections.abc import Iterator, Sequence

import msgspec

from sitegen.finding.entry import ChordStep, Entry, Progression

FIRST = 35
"""The code of the first symbol's character: from # on, which JSON need not escape."""
MIDDLE = 79
_FURTHEST = 44
"""Bars that lie further apart are written as if they lay so far."""
_LAST_PLAIN, _AFTER_SURROGATES = 0xD7FF, 0xE000

Symbol = tuple[str, int, str, str]


def chords_file(entries: Sequence[Entry]) -> bytes:
    """Return the index file of the progressions of some write-ups, in their order."""
    counted = Counter(
        _symbol(step) for _, _, found in _progressions(entries) for step in found.steps
    )
    symbols = sorted(counted, key=lambda symbol: (-counted[symbol], symbol))
    signs = {symbol: _sign(place) for place, symbol in enumerate(symbols)}
    rows = [
        [
            write_up,
            chart,
            found.tonic,
            int(found.minor),
            found.loop_start,
            found.loop_length,
            "".join(signs[_symbol(step)] for step in found.steps),
            _bars(found),
        ]
        for write_up, chart, found in _progressions(entries)
    ]
    return msgspec.json.encode({"symbols": symbols, "rows": rows})


def _progressions(entries: Sequence[Entry]) -> Iterator[tuple[int, int, Progression]]:
    for write_up, entry in enumerate(entries):
        for chart, one in enumerate(entry.charts):
            if one.progression is not None:
                yield write_up, chart, one.progression


def _symbol(step: ChordStep) -> Symbol:
    return step.symbol, step.root, step.notes, step.family


def _sign(place: int) -> str:
    code = FIRST + place
    # Half of a pair of code units is no text.
    return chr(code if code <= _LAST_PLAIN else code - _LAST_PLAIN - 1 + _AFTER_SURROGATES)


def _bars(found: Progression) -> str:
    last, signs = 0, []
    for step in found.steps:
        signs += [_near(step.bar - last), _near(step.last_bar - step.bar)]
        last = step.last_bar
    text = "".join(signs)
    plain = f"{_near(1)}{_near(0)}" * len(found.steps)
    return "" if text == plain else text


def _near(bars: int) -> str:
    return chr(MIDDLE + max(-_FURTHEST, min(bars, _FURTHEST)))
