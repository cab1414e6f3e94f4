"""A synthetic archive made ready to be asked, its notation left undrawn.

All of it is real but the engraving (`undrawn.py`): the write-ups of `archive.py` are read, studied
and set, and the archive, its indexes and the index of words are made of them.
"""

import tempfile
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from functools import cache
from pathlib import Path

from bench.archive import write_archive
from bench.undrawn import UNDRAWN

from sitegen.engraving.style import NOTATION_STYLE
from sitegen.figures.incipit import INCIPIT
from sitegen.pages.theme import Theme, load_theme
from sitegen.site.addresses import INDEX, site_view
from sitegen.site.content import ContentFile
from sitegen.site.listing import Listed, ordered_listing
from sitegen.site.pressing import Press, Sheet, make_page
from sitegen.site.settings import Settings
from sitegen.site.study import study_file
from sitegen.site.survey import survey_of
from sitegen.site.top import make_top
from sitegen.site.words_index import index_words

THEME = Path(__file__).parents[2] / "themes/liner"
SETTINGS = Settings(title="The Drawn Lot")
_PROCESSES, _AT_ONCE = 2, 25


def make_archive(top: Path, write_ups: int, seed: int) -> tuple[Listed, ...]:
    """Write the pages of so many write-ups and all indexes into `top`; return its listing."""
    with tempfile.TemporaryDirectory() as content:
        write_archive(Path(content), write_ups, seed)
        articles = sorted(Path(content, "breakdowns").glob("*/article.md"))
        with ProcessPoolExecutor(_PROCESSES) as processes:
            tops = [top] * len(articles)
            made = processes.map(_make_write_up, articles, tops, chunksize=_AT_ONCE)
            listing = ordered_listing(made)
    pages, assets = make_top(_theme(), SETTINGS, listing, {})
    for name, data in {**pages, **assets}.items():
        path = top / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    _index_words(top, listing)
    return listing


def _make_write_up(article: Path, top: Path) -> Listed:
    """Write the page of a write-up and its picture for the archive; return what is filed."""
    file = ContentFile(article.parent.name, article)
    study = study_file(file, UNDRAWN)
    survey = survey_of(study, strict=False)
    if study.article is None or not survey.is_good:
        message = f"{article} has faults: {study.diagnostics}"
        raise ValueError(message)
    page = make_page(Sheet(file, site_view(SETTINGS, file.address, {})), study, _theme())
    if page.bugs:
        message = f"{article} could not be set: {page.bugs[0]}"
        raise ValueError(message)
    folder = top / file.address
    folder.mkdir(parents=True)
    for name in (INDEX, INCIPIT):
        if page.files.get(name):
            (folder / name).write_bytes(page.files[name])
    return Listed(file, study.article.front, "", len(study.charts), entry=survey.entry)


@cache
def _theme() -> Theme:
    return load_theme(THEME, NOTATION_STYLE)


def _index_words(top: Path, listing: Sequence[Listed]) -> None:
    theme = _theme()
    with tempfile.TemporaryDirectory() as nothing:
        press = Press(top, Path(nothing), THEME, (theme.stylesheet, theme.script), UNDRAWN)
        index_words(press, [one.address for one in listing], "")
