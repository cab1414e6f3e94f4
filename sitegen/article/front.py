"""The front matter of a write-up as values: what the page says of the song and of itself."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Literal

from sitegen.score.key import Key
from sitegen.score.meter import Meter
from sitegen.score.tempo import Tempo
from sitegen.source import Span

Status = Literal["draft", "published"]


@dataclass(frozen=True)
class Song:
    """The recorded song. Texts are "" and tuples empty where nothing is known.

    `length` is in seconds. `performers` are told as the author writes them, often with what
    they play: "Ada Brandt, bass".
    """

    title: str = ""
    artist: str = ""
    year: int | None = None
    album: str = ""
    writers: tuple[str, ...] = ()
    producers: tuple[str, ...] = ()
    engineers: tuple[str, ...] = ()
    performers: tuple[str, ...] = ()
    studio: str = ""
    key: Key | None = None
    tempo: Tempo | None = None
    meter: Meter | None = None
    tuning: str = ""
    length: int | None = None


@dataclass(frozen=True)
class Video:
    """The film or recording that a breakdown speaks of.

    `page` is the address where it is watched or heard. `embed` is what a frame shows: an address
    with the place `{seconds}`, or a name for the site's own pattern. `file` is a file beside the
    write-up or an address; each is "" where there is none. `length` is in seconds, `holder` says
    whose recording it is, `uploaded` since when it can be watched. `places` are the spans of the
    values, by field, for later faults.
    """

    page: str = ""
    embed: str = ""
    file: str = ""
    length: int | None = None
    holder: str = ""
    uploaded: date | None = None
    places: Mapping[str, Span] = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True)
class Moment:
    """A moment of the recording worth listening for, `seconds` from its start."""

    seconds: int
    name: str


@dataclass(frozen=True)
class SourceNote:
    """Where something in the write-up comes from: who said what, where and when."""

    who: str
    what: str = ""
    where: str = ""
    when: str = ""


@dataclass(frozen=True)
class Correction:
    """What was wrong and was put right on `date`."""

    date: date
    what: str


@dataclass(frozen=True)
class Rights:
    """Whose the music is, and a note on how it is quoted."""

    holder: str = ""
    note: str = ""


@dataclass(frozen=True)
class FrontMatter:
    """Everything that stands between the two `---` lines.

    `moved_from` are old addresses that lead here. `menu` is the name of a free page in the
    site's menu, "" where it is not listed; a write-up has none.
    """

    title: str = ""
    summary: str = ""
    status: Status = "published"
    published: date | None = None
    updated: date | None = None
    song: Song = Song()
    video: Video = Video()
    moments: tuple[Moment, ...] = ()
    topics: tuple[str, ...] = ()
    sources: tuple[SourceNote, ...] = ()
    corrections: tuple[Correction, ...] = ()
    rights: Rights = Rights()
    moved_from: tuple[str, ...] = ()
    menu: str = ""
