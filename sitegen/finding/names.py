"""What results of a search are called: write-ups and their charts, in parts loaded when needed."""

from collections.abc import Iterator, Sequence

import msgspec

from sitegen.article import FrontMatter
from sitegen.finding.entry import Entry

PART = 32
"""How many write-ups stand in one part: a dozen results, wherever they stand, load little."""


def name_files(
    listed: Sequence[tuple[str, FrontMatter, Entry]],
) -> Iterator[tuple[str, bytes]]:
    """Return the parts by file name, `names-0.json` with the first `PART` write-ups.

    A write-up is told as [address, title, artist, year or 0, charts], a chart as [anchor, name,
    title]. All index files count write-ups and charts in this order, from 0.
    """
    for number, start in enumerate(range(0, len(listed), PART)):
        rows = [_row(*one) for one in listed[start : start + PART]]
        yield f"names-{number}.json", msgspec.json.encode(rows)


def _row(address: str, front: FrontMatter, entry: Entry) -> list[object]:
    charts = [[chart.anchor, chart.name, chart.title] for chart in entry.charts]
    song = front.song
    return [address, front.title, song.artist, song.year or 0, charts]
