"""Views as the site would hand them to a theme: a full set and the barest one."""

from dataclasses import replace
from datetime import date
from fractions import Fraction
from pathlib import Path
from types import SimpleNamespace

import pytest

from sitegen.article.front import (
    Correction,
    FrontMatter,
    Moment,
    Rights,
    Song,
    SourceNote,
    Video,
)
from sitegen.article.reading import Heading
from sitegen.figures.contour import Contour
from sitegen.figures.drum_grid import GridBar, GridRow
from sitegen.figures.progression import ProgressionBar, ProgressionCell, ProgressionDrawing
from sitegen.kinds.kind import BarAccount, Drawing
from sitegen.kinds.notation import LegendEntry, NotationDrawing
from sitegen.pages.theme import Theme, load_theme
from sitegen.pages.views import (
    ArchiveEntry,
    ArchiveView,
    ArticleView,
    ChartView,
    Link,
    PageView,
    RecordingView,
    SiteView,
    TimeLink,
)
from sitegen.score.chord import Chord, NoChord
from sitegen.score.key import Key
from sitegen.score.meter import Meter
from sitegen.score.pitch import PitchName
from sitegen.score.tempo import read_tempo
from sitegen.source import Span

LINER = Path(__file__).parents[3] / "themes" / "liner"
SITE = SiteView(
    title="The Turnaround",
    tagline="Records, taken apart",
    author="Ines Calloway",
    language="en",
    root="../../",
    menu=(Link("About", "../../about/index.html"),),
    generator="sitegen 0",
    notice="No recording is hosted here.",
)
BARE_SITE = SiteView("Notes", "", "", "en", "", (), "sitegen 0")
FRONT = FrontMatter(
    title="The third is in the throat",
    summary="Two chords without a third.",
    status="published",
    published=date(2026, 5, 4),
    updated=date(2026, 6, 1),
    song=Song(
        title="Low Tide",
        artist="The Harbour Lamps",
        year=2011,
        album="Brackish",
        writers=("Dara Quillfeather", "Tom Ostrander"),
        producers=("Milla Renfrew",),
        engineers=("J. Ockley",),
        performers=("Tom Ostrander, bass", "Ib Sørgaard, drums"),
        studio="The Old Net Loft",
        key=Key.read("Eb minor"),
        tempo=read_tempo("96"),
        meter=Meter.read("4/4"),
        tuning="half-step down",
        length=252,
    ),
    video=Video(page="watch/index.html", length=612),
    moments=(Moment(14, "The voice enters"), Moment(60, "First chorus")),
    topics=("suspended chords", "detuned guitar"),
    sources=(SourceNote("Dara Quillfeather", "on the tuning", "Harbour Radio", "March 2012"),),
    corrections=(Correction(date(2026, 6, 1), "Bar 7 had a sixth."),),
    rights=Rights("Quillfeather and Ostrander", "Four bars quoted."),
)
SPAN = Span(1, 1, 1, 2)


def chord(root: str, quality: str = "", bass: str = "") -> Chord:
    name = PitchName.read(root)
    return Chord(name, quality, (), (), PitchName.read(bass) if bass else name)


def svg(name: str) -> str:
    return (
        f'<svg viewBox="0 0 720 90" role="img" aria-labelledby="{name}-title">'
        f'<title id="{name}-title">Drawing</title><g id="{name}-note"></g></svg>'
    )


def chart(number: int, drawing: Drawing | None, kind: str = "notation") -> ChartView:
    title = "" if kind == "form" else "Opening figure"
    anchor = f"example-{number}"
    return ChartView(f"id-{number}", anchor, f"Example {number}", kind, title, drawing)


ACCOUNT = (BarAccount("Bar 1", ("E♭sus2 throughout.", "Voice: F5, a ninth.")),)
ENGRAVED = chart(
    1,
    Drawing(
        "engraved",
        NotationDrawing(
            svg("wide"),
            svg("narrow"),
            (LegendEntry("tension", "9", "tension, in italics"),),
            (GridBar(1, ("1", "&"), (GridRow("hi-hat", ("x", "o")),)),),
            Contour('<svg viewBox="0 0 9 9"></svg>', "Contour of the voice: it rises."),
        ),
        "Two bars of voice.",
        ACCOUNT,
    ),
)
ENGRAVED = replace(ENGRAVED, at=TimeLink("0:14", "watch/index.html#t=14", 14))
PROGRESSION = chart(
    2,
    Drawing(
        "progression",
        ProgressionDrawing(
            (
                ProgressionBar(
                    1,
                    (ProgressionCell(chord("Eb", "m7♭5", "Db"), Fraction(4), "ii∅7", ""),),
                    meter="4/4",
                    section="Verse",
                    repeat_start=True,
                ),
                ProgressionBar(2, (ProgressionCell(NoChord(), Fraction(4)),), same_as_before=True),
                ProgressionBar(
                    3,
                    (
                        ProgressionCell(chord("Eb"), Fraction(3), held=True),
                        ProgressionCell(chord("Ab"), Fraction(1), "IV", "up a fourth"),
                    ),
                    repeat_end=True,
                    double_bar=True,
                    ending="1.",
                    ending_opens=True,
                    ending_closes=True,
                ),
            ),
            "E♭ minor",
            "quarter = 96",
        ),
        "Three bars.",
        ACCOUNT,
    ),
    "changes",
)
ROW = {"href": "#verse", "bars": "16", "start": "0:20", "length": "40 s", "remark": "half time"}
TIMES = {"begin": 20, "end": 60.5, "share": 12.5}
PLAN = chart(
    3,
    Drawing(
        "plan",
        SimpleNamespace(
            svg=svg("plan"),
            narrow_svg=svg("plan-narrow"),
            rows=(
                SimpleNamespace(
                    letter="A",
                    name="Verse 1",
                    charts=(Link("Example 2", "#example-2"),),
                    **ROW,
                    **TIMES,
                ),
            ),
            notes=("The band pushes.",),
        ),
        "One section.",
        ACCOUNT,
    ),
    "form",
)
FRAMES = ('1:1: error: no chord is written "<i>H</i>"',)
FAULTY = replace(chart(4, None), frames=FRAMES)


@pytest.fixture(scope="session")
def theme() -> Theme:
    return load_theme(LINER, ".notation { fill: currentColor; }")


@pytest.fixture(scope="session")
def charts() -> dict[str, ChartView]:
    """Return one chart of every piece, by the piece's name."""
    return {"engraved": ENGRAVED, "progression": PROGRESSION, "plan": PLAN, "fault": FAULTY}


@pytest.fixture(scope="session")
def article(theme: Theme, charts: dict[str, ChartView]) -> ArticleView:
    """Return a write-up with everything that one can have."""
    text = '<h2 id="verse">The verse</h2><p>Listen.</p>'
    return ArticleView(
        site=SITE,
        slug="low-tide",
        front=FRONT,
        body=text + "".join(map(theme.render_chart, charts.values())),
        headings=(Heading(2, "The verse", "verse", SPAN), Heading(3, "A detail", "detail", SPAN)),
        charts=tuple(charts.values()),
        plan=PLAN,
        glyphs=('<g id="g-E0A4"><path d="M0 0h9"/></g>',),
        moments=(
            TimeLink("0:14", "watch/index.html#t=14", 14),
            TimeLink("1:00", "watch/index.html#t=60", 60),
        ),
        recording=RecordingView("video", "clip.webm", "", Link("example.org", "watch/index.html")),
        earlier=Link("A waltz", "../waltz/index.html"),
        later=Link("Nine counts", "../nine/index.html"),
        draft=True,
    )


@pytest.fixture(scope="session")
def bare_article() -> ArticleView:
    """Return a write-up of which nothing but its title and one sentence is known."""
    return ArticleView(BARE_SITE, "x", FrontMatter(title="Untold"), "<p>Text.</p>", (), ())


@pytest.fixture(scope="session")
def archive() -> ArchiveView:
    """Return an archive: a published write-up and a draft of which nothing is known."""
    entries = (
        ArchiveEntry("breakdowns/low-tide/index.html", FRONT, 5),
        ArchiveEntry("breakdowns/x/index.html", FrontMatter(title="Untold"), 1, draft=True),
    )
    return ArchiveView(SITE, "All write-ups", entries, "<p>Welcome.</p>")


@pytest.fixture(scope="session")
def page(theme: Theme) -> PageView:
    """Return a free page with a chart."""
    body = "<p>Text.</p>" + theme.render_chart(PROGRESSION)
    return PageView(SITE, "About", body, (PROGRESSION,))


@pytest.fixture(scope="session")
def pages(
    theme: Theme,
    article: ArticleView,
    bare_article: ArticleView,
    archive: ArchiveView,
    page: PageView,
) -> dict[str, str]:
    """Return every kind of page, full and bare, by name."""
    bare = PageView(BARE_SITE, "Gone", "")
    return {
        "article": theme.render_article(article),
        "bare article": theme.render_article(bare_article),
        "archive": theme.render_archive(archive),
        "empty archive": theme.render_archive(ArchiveView(BARE_SITE, "Notes", ())),
        "page": theme.render_page(page),
        "bare page": theme.render_page(bare),
        "missing": theme.render_missing(page),
        "bare missing": theme.render_missing(bare),
    }
