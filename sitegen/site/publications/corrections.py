"""What was wrong in the write-ups and was put right, all of it on one page."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from sitegen.pages.views import Link
from sitegen.site.addresses import CORRECTIONS, href, root_of
from sitegen.site.listing import Listed


@dataclass(frozen=True)
class Corrected:
    """A correction and the write-up that it was made in."""

    date: date
    what: str
    write_up: Link


def corrections_of(articles: Iterable[Listed]) -> tuple[Corrected, ...]:
    """Return the corrections of all write-ups, the newest first."""
    found = [
        Corrected(one.date, one.what, Link(listed.front.title, _href(listed)))
        for listed in articles
        for one in listed.front.corrections
    ]
    return tuple(sorted(found, key=lambda one: one.date, reverse=True))


def _href(listed: Listed) -> str:
    return f"{href(listed.address, root_of(CORRECTIONS))}#corrections_head"
