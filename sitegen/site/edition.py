"""The pages of one edition, made in a folder that is not yet published.

An edition goes two rounds over the write-ups. The first studies them all, so that it is known
which can be published before any page links to its neighbours. The second draws them. Should a
drawing fail, that write-up is treated as one with errors, and the pages beside it are made again.
"""

import shutil
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from pathlib import Path
from typing import TypeVar

from sitegen.article import FrontMatter, read_article, read_page
from sitegen.diagnostics import Diagnostic
from sitegen.site.addresses import INDEX, site_view
from sitegen.site.bug import Bug
from sitegen.site.content import Content, ContentFile
from sitegen.site.ledger import Ledger, Published, read_ledger, write_ledger
from sitegen.site.listing import Listed, menu_of, neighbours, ordered_listing
from sitegen.site.pressing import Press, Sheet, press_sheet
from sitegen.site.settings import Settings
from sitegen.site.survey import Survey, survey_file
from sitegen.site.top import write_top
from sitegen.site.workforce import Workforce
from sitegen.source import Source

Item = TypeVar("Item")
Result = TypeVar("Result")
Step = Callable[[str, int, int], None]
"""Told of progress: what is being done, how much of it is done, out of how much."""


class Edition:
    """Makes the pages of a site in `press.top`; `old` is the folder that is published now.

    After `make`, the attributes tell what came of it: `articles` and `pages` are on the site,
    `missing` the files that are not, `drafts` the number of drafts left out.
    """

    def __init__(
        self,
        content: Content,
        settings: Settings,
        press: Press,
        old: Path,
        work: Workforce,
        step: Step,
    ) -> None:
        self._files = (*content.articles, *content.pages)
        self._settings = settings
        self._press = press
        self._old = old
        self._work = work
        self._step = step
        self._ledger = read_ledger(old)
        self.articles: tuple[Listed, ...] = ()
        self.pages: tuple[Listed, ...] = ()
        self.missing: tuple[ContentFile, ...] = ()
        self.drafts = 0
        self.diagnostics: list[Diagnostic] = []
        self.bugs: list[Bug] = []

    def make(self, *, drafts: bool, strict: bool) -> None:
        """Make all pages, keep the last good ones of what has errors, and write the ledger."""
        surveys = self._survey(drafts=drafts, strict=strict)
        made: set[Sheet] = set()
        failed: set[ContentFile] = set()
        self._plan(surveys, failed)
        while sheets := [sheet for sheet in self._sheets() if sheet not in made]:
            task = partial(press_sheet, press=self._press)
            for sheet, bugs in zip(sheets, self._run("drawing", task, sheets), strict=True):
                made.add(sheet)
                if bugs:
                    failed.add(sheet.file)
                    self.bugs += bugs
            self._plan(surveys, failed)
        self._keep_pages()
        menu = menu_of(self.pages, self._settings)
        assets = write_top(self._press, self._settings, self.articles, menu)
        self._keep_assets(assets)
        listed = (*self.articles, *self.pages)
        published = {one.address: Published(one.front_text, one.charts) for one in listed}
        write_ledger(self._press.top, Ledger(published, tuple(assets)))

    def _survey(self, *, drafts: bool, strict: bool) -> list[Survey]:
        """Study everything; what is said of drafts that are left out is left out too."""
        task = partial(survey_file, kinds=self._press.kinds, strict=strict)
        surveys = list(self._run("reading", task, self._files))
        wanted = [survey for survey in surveys if drafts or not survey.is_draft]
        self.drafts = len(surveys) - len(wanted)
        for survey in wanted:
            self.diagnostics += survey.diagnostics
            self.bugs += survey.bugs
        return wanted

    def _run(
        self, doing: str, task: Callable[[Item], Result], items: Sequence[Item]
    ) -> Iterator[Result]:
        for number, result in enumerate(self._work(task, items), start=1):
            self._step(doing, number, len(items))
            yield result

    def _plan(self, surveys: Sequence[Survey], failed: set[ContentFile]) -> None:
        """Settle what will be on the site."""
        planned = {survey.file: self._list(survey, failed) for survey in surveys}
        listed = [one for one in planned.values() if one is not None]
        self.articles = ordered_listing(one for one in listed if not one.file.is_page)
        self.pages = tuple(one for one in listed if one.file.is_page)
        self.missing = tuple(file for file, one in planned.items() if one is None)

    def _list(self, survey: Survey, failed: set[ContentFile]) -> Listed | None:
        file = survey.file
        if survey.is_good and survey.front is not None and file not in failed:
            front, text = survey.front, survey.front_text
            return Listed(file, front, text, survey.charts, draft=survey.is_draft)
        before = self._ledger.pages.get(file.address)
        if before is None or not (self._old / file.address / INDEX).is_file():
            return None
        front = _read_front(file, before.front)
        return Listed(file, front, before.front, before.charts, is_kept=True)

    def _sheets(self) -> Iterator[Sheet]:
        menu = menu_of(self.pages, self._settings)
        for index, one in enumerate(self.articles):
            if not one.is_kept:
                earlier, later = neighbours(self.articles, index)
                site = site_view(self._settings, one.address, menu)
                yield Sheet(one.file, site, earlier, later, one.draft)
        for one in self.pages:
            if not one.is_kept:
                yield Sheet(one.file, site_view(self._settings, one.address, menu))

    def _keep_pages(self) -> None:
        """Copy the last good pages; whatever a failed drawing left is removed first."""
        for one in (*self.articles, *self.pages):
            if one.is_kept:
                place = self._press.top / one.address
                shutil.rmtree(place, ignore_errors=True)
                shutil.copytree(self._old / one.address, place, symlinks=True)
        for file in self.missing:
            shutil.rmtree(self._press.top / file.address, ignore_errors=True)

    def _keep_assets(self, assets: set[str]) -> None:
        """Keep the styles and fonts that kept pages were made with, and add them to `assets`."""
        if not any(one.is_kept for one in (*self.articles, *self.pages)):
            return
        for name in set(self._ledger.assets) - assets:
            if (self._old / name).is_file():
                shutil.copyfile(self._old / name, self._press.top / name)
                assets.add(name)


def _read_front(file: ContentFile, text: str) -> FrontMatter:
    """Return front matter that was good when it was published."""
    read = read_page if file.is_page else read_article
    article, _ = read(Source(file.address, f"---\n{text}\n---\n"), ())
    return article.front
