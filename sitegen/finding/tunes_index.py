"""The tunes of all write-ups as the browser searches them.

There is a file for each kind of line, `tunes-sung.json`, `tunes-played.json` and
`tunes-bass.json`, in columns as those of `chords_index`: `parts` are the names of parts. One
character for each line:

- `write_ups` how many write-ups after that of the line before it, `charts` which chart, `lines`
  which line of its write-up, of all kinds,
- `names` its place among the parts,
- `tonics` its tonic's pitch class and one more, 0 without one; with `FLATS` added where its key
  has flats,
- `lengths` how many notes it has, `opens` the MIDI number of the first one.

And one for each further note of all of them: `steps`, the semitones from the note before it (0,
-1, 1, -2, ... as 0, 1, 2, 3, ...).

What a search does not go through stands in parts like those of the names (`names.py`):
`lines-0.json` has a list for each of the first write-ups, with a pair of texts for each line: the
ticks from each note to the next, and for each note how many bars after that of the note before it
is (`MIDDLE` for 0).
"""

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import NamedTuple

import msgspec

from sitegen.finding.columns import MIDDLE, column, unsigned
from sitegen.finding.entry import Entry, Melody
from sitegen.finding.names import PART
from sitegen.score.key import Key

KINDS = ("sung", "played", "bass")
FLATS = 16
_FURTHEST = 44


class _Row(NamedTuple):
    write_up: int
    chart: int
    line: int
    flats: bool
    found: Melody


def tune_files(entries: Sequence[Entry]) -> Mapping[str, bytes]:
    """Return the index files of the lines of some write-ups, in their order, by file name."""
    rows = [row for number, entry in enumerate(entries) for row in _rows(number, entry)]
    files = {f"tunes-{kind}.json": _file([r for r in rows if _kind(r) == kind]) for kind in KINDS}
    for number, start in enumerate(range(0, len(entries), PART)):
        lines = [list(map(_times, _lines(entry))) for entry in entries[start : start + PART]]
        files[f"lines-{number}.json"] = msgspec.json.encode(lines)
    return files


def _rows(number: int, entry: Entry) -> Iterator[_Row]:
    line = 0
    for chart, one in enumerate(entry.charts):
        flats = bool(one.key) and Key.read(one.key).fifths < 0
        for found in one.melodies:
            yield _Row(number, chart, line, flats, found)
            line += 1


def _lines(entry: Entry) -> Iterator[Melody]:
    return (line for chart in entry.charts for line in chart.melodies)


def _kind(row: _Row) -> str:
    if row.found.bass:
        return "bass"
    return "sung" if row.found.sung else "played"


def _file(rows: Sequence[_Row]) -> bytes:
    parts = list(dict.fromkeys(row.found.part for row in rows))
    places = {part: place for place, part in enumerate(parts)}
    before = [0, *(row.write_up for row in rows)]
    return msgspec.json.encode(
        {
            "parts": parts,
            "write_ups": column(r.write_up - last for r, last in zip(rows, before, strict=False)),
            "charts": column(row.chart for row in rows),
            "lines": column(row.line for row in rows),
            "names": column(places[row.found.part] for row in rows),
            "tonics": column(row.found.tonic + 1 + FLATS * row.flats for row in rows),
            "lengths": column(len(row.found.midi) for row in rows),
            "opens": column(row.found.midi[0] for row in rows),
            "steps": column(step for row in rows for step in _steps(row.found.midi)),
        }
    )


def _steps(midi: Sequence[int]) -> Iterator[int]:
    return (unsigned(after - before) for before, after in pairwise(midi))


def _times(line: Melody) -> tuple[str, str]:
    gaps = (after - before for before, after in pairwise(line.onsets))
    bars = (after - before for before, after in pairwise((0, *line.bars)))
    return column(gaps), column((max(-_FURTHEST, min(b, _FURTHEST)) for b in bars), MIDDLE)
