"""A write-up as it was read: its words as tokens, and everything in it that has a place."""

from dataclasses import dataclass, field

from markdown_it.token import Token

from sitegen.article.front import FrontMatter
from sitegen.score.chord import Chord, NoChord
from sitegen.score.pitch import Pitch, PitchName
from sitegen.source import Passage, Source, Span


@dataclass(frozen=True)
class Heading:
    """One heading; `text` is what is read, `anchor` its id on the page."""

    level: int
    text: str
    anchor: str
    span: Span


@dataclass(frozen=True)
class Fence:
    """One chart block: `name` is the word after the fence marks and `span` that word's place.

    `info` is whatever else stands on the opening line. `passage` holds the lines between the
    marks, without the marks of lists and quotes around them. One that is not `closed` has
    swallowed what follows it.
    """

    name: str
    info: str
    passage: Passage
    span: Span
    closed: bool = True


@dataclass(frozen=True)
class RoleUse:
    """One inline role that could be read, `{name argument}`.

    `value` is what the argument stands for: the chord of a `chord`, the pitch or pitch name of
    a `note`, the degree of a `degree` ("♭6"), the seconds of an `at`; None for the others.
    `see` and `fact` name a chart, `target`; a `fact` also its `path` ("voice.highest") and, if
    the author wrote one, the `expected` text. The spans of what is not written are empty ones
    at the end of the argument.
    """

    name: str
    argument: str
    span: Span
    argument_span: Span
    value: Chord | NoChord | Pitch | PitchName | str | int | None = None
    target: str = ""
    target_span: Span | None = None
    path: str = ""
    path_span: Span | None = None
    expected: str = ""
    expected_span: Span | None = None


@dataclass(frozen=True)
class ImageUse:
    """One picture of the text: `target` is its path from the write-up's folder, as written."""

    target: str
    alt: str
    span: Span


@dataclass(frozen=True)
class LinkUse:
    """One link of the text: `target` is its address as it stands in the page."""

    target: str
    span: Span


@dataclass(frozen=True)
class Article:
    """A write-up or a free page, read.

    `front_text` is the front matter as written, without its `---` lines. `fences` are the chart
    blocks; plain code is none. All in the order of the file.
    """

    source: Source
    front: FrontMatter
    front_text: str = ""
    headings: tuple[Heading, ...] = ()
    fences: tuple[Fence, ...] = ()
    roles: tuple[RoleUse, ...] = ()
    images: tuple[ImageUse, ...] = ()
    links: tuple[LinkUse, ...] = ()
    tokens: tuple[Token, ...] = field(default=(), repr=False, compare=False)
