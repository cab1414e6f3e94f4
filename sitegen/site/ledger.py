"""What a published folder says of itself, so that the next build can keep its good pages."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from sitegen.site.file_reading import read_own
from sitegen.site.publishing import MARKER

VERSION = 1


@dataclass(frozen=True)
class Published:
    """A write-up or page as last published: its front matter's text, its number of charts."""

    front: str
    charts: int


@dataclass(frozen=True)
class Ledger:
    """The write-ups and pages by address, and the paths of styles and fonts.

    `words` is the hash of the words that the full-text index was made of, "" without an index.
    """

    pages: Mapping[str, Published] = field(default_factory=dict)
    assets: tuple[str, ...] = ()
    words: str = ""


def read_ledger(published: Path) -> Ledger:
    """Return the ledger of a published folder; an empty one when it has none that we can read."""
    try:
        record = json.loads(read_own(published / MARKER))
        if record["version"] != VERSION:
            return Ledger()
        pages = {
            str(address): Published(str(entry["front"]), int(entry["charts"]))
            for address, entry in record["pages"].items()
        }
        return Ledger(pages, tuple(map(str, record["assets"])), str(record.get("words", "")))
    except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return Ledger()


def ledger_text(ledger: Ledger) -> str:
    """Return the ledger as it stands in a published folder, the same for the same ledger."""
    record = {
        "version": VERSION,
        "pages": {
            address: {"front": entry.front, "charts": entry.charts}
            for address, entry in ledger.pages.items()
        },
        "assets": sorted(ledger.assets),
        "words": ledger.words,
    }
    return json.dumps(record, ensure_ascii=False, indent=1, sort_keys=True) + "\n"
