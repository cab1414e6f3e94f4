"""Write-ups as the site lists them, made for tests."""

from datetime import date
from pathlib import Path

from sitegen.article import FrontMatter
from sitegen.article.front import Correction, Song, SourceNote
from sitegen.finding import ChartEntry, Entry
from sitegen.finding import Section as Part
from sitegen.site.content import ContentFile
from sitegen.site.listing import Listed
from sitegen.site.settings import Settings

SETTINGS = Settings(
    "Side Two", "Songs, taken apart", "Corin Haldwell", address="https://side.example/music/"
)
SONG = Song(
    "Low Tide",
    "The Harbour Lamps",
    2019,
    writers=("Ada Brandt",),
    producers=("Halla Wick",),
    performers=("Ada Brandt, voice and guitar", "Ilo Venn"),
    studio="Herring Loft",
)


def listed(
    slug: str, front: FrontMatter, *, draft: bool = False, entry: Entry | None = None
) -> Listed:
    path = Path("content/breakdowns") / slug / "article.md"
    file = ContentFile(slug, path)
    return Listed(file, front, "", 1, draft=draft, entry=entry or Entry())


TIDE = listed(
    "low-tide",
    FrontMatter(
        "Low Tide: a riff & its <shadow>",
        "What the tide leaves.",
        published=date(2026, 5, 4),
        updated=date(2026, 6, 1),
        song=SONG,
        topics=("pedal notes",),
        sources=(SourceNote("Ada Brandt", "told me the tuning"),),
        corrections=(Correction(date(2026, 6, 1), "The bass is C♯."),),
        moved_from=("/notes/low-tide/", "https://old.example/tide.html"),
    ),
    entry=Entry(
        (ChartEntry("chart-riff", "Example 1", "The riff", "notation", "4/4", bars=4, id="riff"),),
        (Part("Verse", "A", 16, 10.5),),
    ),
)
COAT = listed(
    "the-coat",
    FrontMatter(
        "The Coat",
        published=date(2026, 7, 1),
        song=Song("The Coat", writers=("Ada Brandt",)),
        corrections=(Correction(date(2026, 7, 9), "Seven bars, not eight."),),
    ),
)
UNDATED = listed("undated", FrontMatter("Undated"))
DRAFT = listed(
    "draft", FrontMatter("Draft", status="draft", published=date(2026, 8, 1)), draft=True
)
ALL = (DRAFT, COAT, TIDE, UNDATED)
