"""The beats of all write-ups as the browser searches them.

The file is a list of charts, each

    [write-up, chart, tempo or 0, feel, [[meter, length, hits, bars], ...]]

with the lengths of bars in ticks. `hits` has a text for each drum by its label: a character for
each hit, its tick (see `columns`). Charts without drums have no bars, and can be asked for by
tempo and feel.
"""

from collections.abc import Sequence

import msgspec

from sitegen.finding.columns import column
from sitegen.finding.entry import Beat, Entry


def beats_file(entries: Sequence[Entry]) -> bytes:
    """Return the index file of the drum bars of some write-ups, in their order."""
    charts = [
        [write_up, chart, one.tempo, one.feel, [_bar(beat) for beat in one.beats]]
        for write_up, entry in enumerate(entries)
        for chart, one in enumerate(entry.charts)
        if one.beats or one.tempo
    ]
    return msgspec.json.encode(charts)


def _bar(beat: Beat) -> list[object]:
    hits = {label: column(ticks) for label, ticks in beat.hits}
    return [beat.meter, beat.length, hits, list(beat.bars)]
