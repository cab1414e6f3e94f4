"""What the last build knew of each write-up, so that the next one need not study it again."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field

from sitegen.finding import Entry
from sitegen.pages.views import RelatedView
from sitegen.site.cache import Cache
from sitegen.site.survey import Survey
from sitegen.site.writing import Written


@dataclass(frozen=True)
class Record:
    """A write-up or page as it was studied from `inputs`, a hash of all that it was read from.

    `leads` says of every page that it links to whether it was there. `sheet` is the hash of what
    its page was made from, "" where none was, and `files` what was written for it. `entry` is what
    it could be found by when it was last good, `related` the list that its page shows, None where
    it shows none yet.
    """

    inputs: str
    survey: Survey
    leads: Mapping[str, bool]
    sheet: str = ""
    files: tuple[Written, ...] = ()
    entry: Entry = field(default=Entry())
    related: tuple[RelatedView, ...] | None = None


@dataclass(frozen=True)
class Records:
    """The records by the address of the page, and the cache that they are kept in."""

    cache: Cache | None
    key: str
    known: Mapping[str, Record] = field(default_factory=dict)

    @classmethod
    def load(cls, cache: Cache | None, key: str) -> "Records":
        """Return the records that the last build kept under `key`."""
        kept = cache.get(key) if cache is not None else None
        return cls(cache, key, kept if isinstance(kept, dict) else {})

    def find(self, address: str, inputs: str, pages: Collection[str]) -> Record | None:
        """Return what is known of a page, where it would be found just the same today."""
        record = self.known.get(address)
        if record is None or record.inputs != inputs:
            return None
        still = all((led in pages) == there for led, there in record.leads.items())
        return record if still else None

    def entry(self, address: str) -> Entry:
        """Return what a page could be found by when it was last good, whatever has changed."""
        record = self.known.get(address)
        return Entry() if record is None else record.entry

    def keep(self, records: Mapping[str, Record]) -> None:
        """Put the records of a build in place of those of the last one."""
        if self.cache is not None:
            self.cache.put(self.key, dict(records))


def new_record(
    survey: Survey,
    inputs: str,
    pages: Collection[str],
    sheet: str,
    files: tuple[Written, ...],
    before: Entry,
) -> Record:
    """Return the record of what was just studied, and written where `sheet` is not "".

    `before` is what it could be found by until now, which is kept where it has errors.
    """
    leads = {led: led in pages for led in survey.linked}
    entry = survey.entry if survey.is_good else before
    return Record(inputs, survey, leads, sheet, files, entry)
