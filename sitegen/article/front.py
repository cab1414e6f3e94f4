"""The front matter of a write-up as values: what the page says of the song and of itself."""

from dataclasses import dataclass
from datetime import date
from typing import Literal

from sitegen.score.key import Key
from sitegen.score.meter import Meter
from sitegen.score.tempo import Tempo

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
    """The moving picture of a breakdown.

    `page` is the address where it is watched, `embed` the one that a frame shows, `file` a
    file beside the write-up or an address; each "" where there is none. `length` in seconds.
    """

    page: str = ""
    embed: str = ""
    file: str = ""
    length: int | None = None


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
