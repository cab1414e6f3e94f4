"""The archive's order: write-ups filed by the year of publication, the newest first."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from itertools import groupby

from sitegen.pages.views import ArchiveEntry


@dataclass(frozen=True)
class Year:
    """One year's write-ups; `name` is "Not yet published" for those without a date."""

    name: str
    anchor: str
    entries: tuple[ArchiveEntry, ...]


def by_year(entries: Iterable[ArchiveEntry]) -> tuple[Year, ...]:
    """Return the entries by year, newest first; those without a date stand before all others.

    Entries of the same day keep the alphabetical order of their titles.
    """
    titled = sorted(entries, key=lambda entry: entry.front.title.casefold())
    ordered = sorted(titled, key=_day, reverse=True)
    return tuple(_filed(number, list(group)) for number, group in groupby(ordered, key=_year))


def _day(entry: ArchiveEntry) -> date:
    return entry.front.published or date.max


def _year(entry: ArchiveEntry) -> int | None:
    return entry.front.published.year if entry.front.published else None


def _filed(number: int | None, entries: list[ArchiveEntry]) -> Year:
    if number is None:
        return Year("Not yet published", "undated", tuple(entries))
    return Year(str(number), str(number), tuple(entries))
