"""The archive's facets as files for a browser, small enough for thousands of write-ups."""

from collections.abc import Iterable, Iterator, Sequence

import msgspec

from sitegen.article import FrontMatter
from sitegen.finding.entry import Entry
from sitegen.finding.facets import tempos
from sitegen.finding.filing import FiledFacet

RECORDS = 32
"""How many write-ups stand in one file of records: few are shown at once, and from many places."""

DRAFT, PICTURE = 1, 2
"""What the number at the end of a record is the sum of: a draft; a picture of its opening."""

_DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
_BITS, _MORE = 5, 32

Row = tuple[str, FrontMatter, Entry, bool]
"""A write-up: its address, what it says of itself, what it holds, whether it is a draft."""


def facet_files(rows: Sequence[Row], filed: Sequence[FiledFacet]) -> Iterator[tuple[str, bytes]]:
    """Return the index files by name; write-ups are counted from 0 in their order.

    `facets.json` has the facets of few values and `facets-names.json` those of many, each as [id,
    name, words of its values, their addresses, their write-ups]; an address is "" where it is the
    words in small letters with hyphens, and the write-ups of the values stand apart by blanks
    (see `packed`). `records-0.json` has the first `RECORDS` write-ups, each as [address, title,
    song, artist, year or 0, sum of `DRAFT` and `PICTURE`], and `titles.json` the words of all that
    they are looked up by.
    """
    short = [_facet(one) for one in filed if not one.facet.is_long]
    whole = {"count": len(rows), "tempos": [_tempos(row) for row in rows], "facets": short}
    yield "facets.json", msgspec.json.encode(whole)
    yield (
        "facets-names.json",
        msgspec.json.encode([_facet(one) for one in filed if one.facet.is_long]),
    )
    yield "titles.json", msgspec.json.encode([_titles(front) for _, front, _, _ in rows])
    for number, start in enumerate(range(0, len(rows), RECORDS)):
        records = [_record(*row) for row in rows[start : start + RECORDS]]
        yield f"records-{number}.json", msgspec.json.encode(records)


def has_picture(entry: Entry) -> bool:
    """Return whether a write-up has a picture: of notation, a progression or a plan."""
    return bool(entry.charts or entry.sections)


def packed(numbers: Iterable[int]) -> str:
    """Return rising numbers as text: each as its distance from the one before it, less one.

    A distance is written in digits of 5 bits, the lowest first, out of the 64 that base64 has for
    addresses; 32 is added to a digit that another one follows.
    """
    signs: list[str] = []
    before = -1
    for number in numbers:
        left = number - before - 1
        while left >= _MORE:
            signs.append(_DIGITS[left % _MORE + _MORE])
            left >>= _BITS
        signs.append(_DIGITS[left])
        before = number
    return "".join(signs)


def _facet(filed: FiledFacet) -> list[object]:
    words = [value.words for value in filed.values]
    addresses = [
        "" if value.address == value.words.lower().replace(" ", "-") else value.address
        for value in filed.values
    ]
    numbers = " ".join(packed(value.numbers) for value in filed.values)
    return [filed.facet.id, filed.facet.name, words, addresses, numbers]


def _tempos(row: Row) -> float | list[float]:
    """Return the tempos of a write-up: one as a number, 0 for none, else a list."""
    _, front, entry, _ = row
    found = [_plain(tempo) for tempo in tempos(front, entry)]
    return found if len(found) > 1 else next(iter(found), 0)


def _plain(tempo: float) -> float:
    return int(tempo) if tempo == int(tempo) else tempo


def _record(address: str, front: FrontMatter, entry: Entry, draft: bool) -> list[object]:
    song = front.song
    told = DRAFT * draft + PICTURE * has_picture(entry)
    return [address, front.title, song.title, song.artist, song.year or 0, told]


def _titles(front: FrontMatter) -> str:
    """Return title, song and artist, nothing that the words before it say already."""
    told = front.title
    for words in (front.song.title, front.song.artist):
        told = told if words in told else f"{told}, {words}"
    return told
