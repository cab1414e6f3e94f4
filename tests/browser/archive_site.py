"""An archive of write-ups drawn by lot, made by the theme and served, its write-ups left out."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from browser.serving import served
from unit.finding.drawn_archive import draw_rows

from sitegen.article import FrontMatter
from sitegen.finding import Entry
from sitegen.pages.theme import load_theme
from sitegen.site.content import ContentFile
from sitegen.site.listing import Listed, ordered_listing
from sitegen.site.settings import Settings
from sitegen.site.top import make_top

THEME = Path(__file__).parents[2] / "themes/liner"


def drawn_archive(seed: int, count: int) -> tuple[Listed, ...]:
    """Return so many write-ups in the archive's order."""
    rows = draw_rows(seed, count)
    return ordered_listing(_listed(f"n{number}", *row) for number, row in enumerate(rows))


def _listed(slug: str, front: FrontMatter, entry: Entry) -> Listed:
    file = ContentFile(slug, Path(f"breakdowns/{slug}/article.md"))
    return Listed(file, front, "", len(entry.charts), entry=entry)


@contextmanager
def served_archive(folder: Path, articles: tuple[Listed, ...]) -> Iterator[str]:
    """Write the archive's pages into a folder and give the address under which it is served."""
    pages, assets = make_top(load_theme(THEME), Settings(title="Side Two"), articles, {})
    for name, data in {**pages, **assets}.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    with served(folder) as address:
        yield address
