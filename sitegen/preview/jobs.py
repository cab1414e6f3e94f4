"""What the server asks of a worker process, and what it is answered: values that travel."""

import pickle
import zlib
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from sitegen.article import FrontMatter
from sitegen.finding import Entry
from sitegen.preview.remarks import Remark
from sitegen.site.content import ContentFile
from sitegen.site.listing import Listed
from sitegen.site.pressing import Sheet
from sitegen.site.settings import Settings

_LEVEL = 1


@dataclass(frozen=True)
class ThemeState:
    """A theme's folder, with a number that changes whenever something in it does."""

    folder: Path
    number: int


@dataclass(frozen=True)
class FrontsJob:
    """Read the front matter of some files, so that there is a list of the site."""

    files: tuple[ContentFile, ...]


@dataclass(frozen=True)
class PageJob:
    """Make one page; with `has_good`, one that has faults is not drawn."""

    sheet: Sheet
    theme: ThemeState
    has_good: bool = False


@dataclass(frozen=True)
class TopJob:
    """Make what stands at the top of the site: the archive, the page for lost readers, assets."""

    settings: Settings
    articles: tuple[Listed, ...]
    menu: Mapping[str, str]
    theme: ThemeState


Job = FrontsJob | PageJob | TopJob


@dataclass(frozen=True)
class Told:
    """What a file tells the rest of the site.

    `linked` are the addresses that it links to, `entry` is what it can be found by.
    """

    front: FrontMatter | None
    charts: int = 0
    draft: bool = False
    linked: tuple[str, ...] = ()
    entry: Entry = field(default=Entry())


@dataclass(frozen=True)
class Made:
    """A page, or the top of the site, as a worker made it.

    `packed` holds its files (see `pack`), None where there is no page; `digest` stands for all
    that the page is, the `attachments` with it. `is_good` says that it has no errors.
    `related` are the lists of related write-ups, set, by the address of each: the top of the site
    tells them, which sees all.
    """

    told: Told
    packed: bytes | None = None
    attachments: Mapping[str, Path] = field(default_factory=dict)
    digest: str = ""
    remarks: tuple[Remark, ...] = ()
    is_good: bool = False
    related: Mapping[str, bytes] = field(default_factory=dict)


def pack(files: Mapping[str, bytes]) -> bytes:
    """Return files by name as one piece of data; the same files give the same data."""
    return zlib.compress(pickle.dumps(dict(files), pickle.HIGHEST_PROTOCOL), _LEVEL)


def unpack(packed: bytes) -> dict[str, bytes]:
    """Return the files that a worker of our own packed."""
    files = pickle.loads(zlib.decompress(packed))  # noqa: S301 - it came from our own process
    return dict(files)
