"""The tunes of all write-ups as the browser searches them.

The file has `gaps`, the times from one note to the next in ticks, the commonest first, `parts`,
the names of parts, and `rows`, a line each:

    [write-up, chart, part, tonic or -1, 1 for a key with flats, pitches, gaps, bars]

`pitches` has a character for each note, its MIDI number plus `FIRST`; `gaps` one fewer, each a
place among the gaps plus `FIRST`; `bars` one for each note, how many bars after that of the note
before it is, plus `MIDDLE`.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import pairwise

import msgspec

from sitegen.finding.chords_index import FIRST, MIDDLE
from sitegen.finding.entry import Entry, Melody
from sitegen.score.key import Key

_FURTHEST = 44


def tunes_file(entries: Sequence[Entry]) -> bytes:
    """Return the index file of the lines of some write-ups, in their order."""
    counted = Counter(gap for _, _, line in _lines(entries) for gap in _gaps(line))
    gaps = sorted(counted, key=lambda gap: (-counted[gap], gap))
    places = {gap: place for place, gap in enumerate(gaps)}
    parts = list(dict.fromkeys(line.part for _, _, line in _lines(entries)))
    numbers = {part: number for number, part in enumerate(parts)}
    rows = [
        [
            write_up,
            chart,
            numbers[line.part],
            line.tonic,
            int(_has_flats(entries[write_up].charts[chart].key)),
            "".join(chr(FIRST + pitch) for pitch in line.midi),
            "".join(chr(FIRST + places[gap]) for gap in _gaps(line)),
            _bars(line),
        ]
        for write_up, chart, line in _lines(entries)
    ]
    return msgspec.json.encode({"gaps": gaps, "parts": parts, "rows": rows})


def _lines(entries: Sequence[Entry]) -> Iterator[tuple[int, int, Melody]]:
    for write_up, entry in enumerate(entries):
        for chart, one in enumerate(entry.charts):
            for line in one.melodies:
                yield write_up, chart, line


def _has_flats(key: str) -> bool:
    return bool(key) and Key.read(key).fifths < 0


def _gaps(line: Melody) -> Iterator[int]:
    return (after - before for before, after in pairwise(line.onsets))


def _bars(line: Melody) -> str:
    steps = (after - before for before, after in pairwise((0, *line.bars)))
    return "".join(chr(MIDDLE + max(-_FURTHEST, min(step, _FURTHEST))) for step in steps)
