"""What the templates are given: plain frozen values, already computed, links already made.

Every `href` is relative to the page that shows it, so that a site works in any folder.
"""

from dataclasses import dataclass, field
from typing import Literal

from sitegen.article.front import FrontMatter
from sitegen.article.reading import Heading
from sitegen.kinds.kind import Drawing
from sitegen.score.chord import Chord, NoChord

Player = Literal["audio", "video", "frame"]


@dataclass(frozen=True)
class Link:
    """A link with its text."""

    text: str
    href: str


@dataclass(frozen=True)
class TimeLink(Link):
    """A moment of the recording, `seconds` from its start; `href` is "" where nothing plays it."""

    seconds: float = 0


@dataclass(frozen=True)
class RecordingView:
    """The recording as the page plays it: a file, or the player of its host in a frame.

    `address` is the file's, or the frame's with the place `{seconds}`. `host` is the server that
    has it, "" for a file of the site itself: no other is asked before the reader says so. `link`
    leads to where it is heard without this page.
    """

    kind: Player
    address: str
    host: str = ""
    link: Link | None = None


@dataclass(frozen=True)
class SiteView:
    """The site as a page sees it; `root` leads from the page to the site's top ("../../").

    `address` is the page's own full address, "" as long as the site has none. `find` leads to the
    page where passages are looked up, `foot` to what else is told of all write-ups, `feed` to the
    feed of the newest, "" without one.
    """

    title: str
    tagline: str
    author: str
    language: str
    root: str
    menu: tuple[Link, ...]
    generator: str
    notice: str = ""
    address: str = ""
    find: Link | None = None
    foot: tuple[Link, ...] = ()
    feed: str = ""


@dataclass(frozen=True)
class RoleView:
    """One inline role, ready to be set: `text` is what is read.

    `chord` is the symbol of a `chord` role (None when it could not be read), `href` the place
    that `at` and `see` lead to ("" where there is none), `seconds` the moment of an `at`.
    """

    kind: Literal["chord", "degree", "note", "at", "see", "fact"]
    text: str
    chord: Chord | NoChord | None = None
    href: str = ""
    seconds: int = 0


@dataclass(frozen=True)
class ChartView:
    """One chart of a page. `frames` are faults as text, shown where there is no drawing.

    `at` is the moment where it is heard; `starts` are those of a form plan's sections, None for
    an unknown one, and empty where nothing leads to them.
    """

    id: str
    anchor: str
    name: str
    kind: str
    title: str
    drawing: Drawing | None
    frames: tuple[str, ...] = ()
    at: TimeLink | None = None
    starts: tuple[TimeLink | None, ...] = ()


@dataclass(frozen=True)
class CardView:
    """The picture that link previews show of a write-up, beside its page.

    `address` is its whole address, "" as long as the site has none; `alt` says what it shows.
    """

    address: str
    width: int
    height: int
    alt: str


@dataclass(frozen=True)
class ArticleView:
    """One write-up. `body` is HTML with every chart in its place; `plan` repeats the first form.

    `glyphs` are the SVG definitions that the page's charts share. `moments` lead to the moments
    of the front matter, one link each in their order; empty where there is nothing to link to.
    `quoted` says how much of the song stands in notation on the page.
    """

    site: SiteView
    slug: str
    front: FrontMatter
    body: str
    headings: tuple[Heading, ...]
    charts: tuple[ChartView, ...]
    plan: ChartView | None = None
    glyphs: tuple[str, ...] = ()
    moments: tuple[TimeLink, ...] = ()
    recording: RecordingView | None = None
    card: CardView | None = None
    earlier: Link | None = None
    later: Link | None = None
    draft: bool = False
    quoted: str = ""


@dataclass(frozen=True)
class RelatedView:
    """A write-up that another one leads to, and the reason in words."""

    link: Link
    song: str
    reason: str


@dataclass(frozen=True)
class ArchiveEntry:
    """One line of the archive.

    `facts` are names and figures of the song; `picture` is the drawing of its opening, "" where
    there is none.
    """

    href: str
    front: FrontMatter
    charts: int
    draft: bool = False
    facts: tuple[tuple[str, str], ...] = ()
    picture: str = ""


@dataclass(frozen=True)
class ValueLink(Link):
    """A value that write-ups are filed under, and how many they are."""

    count: int = 0


@dataclass(frozen=True)
class FacetView:
    """A facet with its values, or some of its `total`; `href` leads to all of them."""

    id: str
    name: str
    href: str
    total: int
    values: tuple[ValueLink, ...]


@dataclass(frozen=True)
class GroupView:
    """Facets that stand together."""

    name: str
    facets: tuple[FacetView, ...]


@dataclass(frozen=True)
class ArchiveView:
    """The newest write-ups or all of them, newest first, with the words above them (HTML).

    `total` is how many there are in all; where these are more, all stand by their `years`.
    `groups` are the facets to look them up by, `index` leads to all values of these, and `shelf`
    to the index files; "" where there are none.
    """

    site: SiteView
    title: str
    entries: tuple[ArchiveEntry, ...]
    intro: str = ""
    total: int = 0
    years: tuple[ValueLink, ...] = ()
    groups: tuple[GroupView, ...] = ()
    index: str = ""
    shelf: str = ""


@dataclass(frozen=True)
class FindView:
    """The page where passages are looked up.

    `shelf` leads from it to the index files; `lines` are those in which tunes are looked up
    unless somebody chooses others: "any", "sung", "played" or "bass".
    """

    site: SiteView
    title: str
    shelf: str
    lines: str = "any"


@dataclass(frozen=True)
class PageView:
    """A free page: a title and HTML; `tells_all` says that it tells of all write-ups."""

    site: SiteView
    title: str
    body: str
    charts: tuple[ChartView, ...] = field(default=())
    glyphs: tuple[str, ...] = ()
    tells_all: bool = False
