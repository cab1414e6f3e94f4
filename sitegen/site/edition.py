"""The pages of one edition, made in a folder that is not yet published.

A first look at the front matter of every write-up plans the site, so that each page can link to
its neighbours; then each page is studied, drawn and written in one go. Should one prove to have
errors, or fail to be drawn, it keeps its last good page or is left out, and the pages beside it
are made again. What has not changed since the last edition is carried over.
"""

import shutil
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import TypeVar

from sitegen.diagnostics import Diagnostic
from sitegen.pages.entry_words import entry_words
from sitegen.site.addresses import INDEX, site_view
from sitegen.site.bug import Bug, attempt, lost_process
from sitegen.site.cache import key_of
from sitegen.site.content import Content, ContentFile, shown
from sitegen.site.ledger import Ledger, Published, ledger_text, read_ledger
from sitegen.site.listing import Listed, menu_of, neighbours, ordered_listing
from sitegen.site.materials import Materials
from sitegen.site.moves import find_taken_moves
from sitegen.site.pressing import Press, Pressed, Sheet, press_sheet
from sitegen.site.publications.gathering import make_publications
from sitegen.site.publishing import MARKER
from sitegen.site.records import Record, new_record
from sitegen.site.related import fill_related, index_of, related_views
from sitegen.site.settings import Settings
from sitegen.site.sharing_out import USUAL, draw_part, share_out
from sitegen.site.survey import Survey, look_at_front, read_front, survey_file
from sitegen.site.top import make_top
from sitegen.site.words_index import index_words
from sitegen.site.workforce import Workforce
from sitegen.site.writing import carry_over, carry_page, put_bytes, written_files
from sitegen.source import Source

Item = TypeVar("Item")
Result = TypeVar("Result")
Step = Callable[[str, int, int], None]
"""Told of progress: what is being done, how much of it is done, out of how much."""


class Edition:
    """Makes the pages of a site in `press.top`, of which `press.old` is published now.

    After `make`, the attributes tell what came of it: `articles` and `pages` are on the site,
    `missing` the files that are not, `drafts` the number of drafts left out, `records` what the
    next edition may want to know.
    """

    def __init__(
        self,
        content: Content,
        settings: Settings,
        press: Press,
        work: Workforce,
        step: Step,
        materials: Materials,
    ) -> None:
        self._files = (*content.articles, *content.pages)
        self._settings = settings
        self._press = press
        self._work = work
        self._step = step
        self._old_records = materials.records
        self._inputs = materials.inputs
        self._look = materials.look
        self._addresses = frozenset(file.address.rstrip("/") for file in self._files)
        self._ledger = read_ledger(press.old)
        self._surveys: dict[ContentFile, Survey] = {}
        self._failed: set[ContentFile] = set()
        self.records: dict[str, Record] = {}
        self.articles: tuple[Listed, ...] = ()
        self.pages: tuple[Listed, ...] = ()
        self.missing: tuple[ContentFile, ...] = ()
        self.drafts = 0
        self.diagnostics: list[Diagnostic] = []
        self.bugs: list[Bug] = []

    def make(self, *, drafts: bool) -> None:
        """Make all pages, keep the last good ones of what has errors, and write the ledger."""
        self._survey(drafts=drafts)
        self._plan()
        made: set[Sheet] = set()
        while sheets := [sheet for sheet in self._sheets() if sheet not in made]:
            self._press_all(sheets)
            made.update(sheets)
            self._plan()
        for survey in self._surveys.values():
            self.diagnostics += survey.diagnostics
            self.bugs += survey.bugs
        self._look_at_moves()
        self._keep_pages()
        self._fill_related()
        menu = menu_of(self.pages, self._settings)
        theme = self._press.load_theme()
        pages, shared = make_top(theme, self._settings, self.articles, menu)
        for name, data in {**pages, **shared}.items():
            put_bytes(self._press.top / name, data, self._press.old / name)
        self._publish(pages, shared)
        assets = set(shared)
        self._keep_assets(assets)
        listed = (*self.articles, *self.pages)
        doing = "making the index of words"
        addresses = [one.address for one in listed]
        before = self._ledger.words
        words = attempt(self.bugs, doing, index_words, self._press, addresses, before) or ""
        published = {one.address: Published(one.front_text, one.charts) for one in listed}
        text = ledger_text(Ledger(published, tuple(assets), words))
        put_bytes(self._press.top / MARKER, text.encode(), self._press.old / MARKER)

    def _survey(self, *, drafts: bool) -> None:
        """Learn what the plan needs of every file; a draft that is left out is not looked into."""
        known = {file: self._known(file) for file in self._files}
        new = [file for file in self._files if known[file] is None]
        looks = self._run("reading", look_at_front, new, _lost_survey)
        fronts = dict(zip(new, looks, strict=True))
        for file in self._files:
            record = known[file]
            if record is None:
                self._surveys[file] = fronts[file]
            else:
                self._surveys[file] = record.survey
                self.records[file.address] = record
        left_out = [] if drafts else [f for f in self._files if self._surveys[f].is_draft]
        self.drafts = len(left_out)
        for file in left_out:
            del self._surveys[file]
        bad = [file for file in new if file in self._surveys and not self._surveys[file].is_good]
        task = partial(survey_file, kinds=self._press.kinds, strict=self._press.strict)
        for file, survey in zip(bad, self._work(task, bad, _lost_survey), strict=True):
            self._learn(file, survey)

    def _known(self, file: ContentFile) -> Record | None:
        return self._old_records.find(file.address, self._inputs[file], self._addresses)

    def _learn(
        self, file: ContentFile, survey: Survey, sheet: str = "", pressed: Pressed | None = None
    ) -> None:
        self._surveys[file] = survey
        if not survey.bugs:
            files = () if pressed is None else pressed.files
            inputs = self._inputs[file]
            before = self._old_records.entry(file.address)
            record = new_record(survey, inputs, self._addresses, sheet, files, before)
            self.records[file.address] = record

    def _run(
        self,
        doing: str,
        task: Callable[[Item], Result],
        items: Sequence[Item],
        lost: Callable[[Item], Result],
        weight: int | None = None,
    ) -> Iterator[Result]:
        for number, result in enumerate(self._work(task, items, lost, weight), start=1):
            self._step(doing, number, len(items))
            yield result

    def _press_all(self, sheets: Iterable[Sheet]) -> None:
        """Carry over the pages that would be made just the same, and make the others."""
        new = [sheet for sheet in sheets if not self._carry_over(sheet)]
        sizes = {sheet: _size(sheet.file) for sheet in new}
        # The largest first, so that no process is left alone with one at the end.
        new.sort(key=lambda sheet: (-sizes[sheet], sheet.file.address))
        weight = max(len(new), sum(sizes.values()) // USUAL)
        self._draw_ahead(sizes, weight)
        task = partial(press_sheet, press=self._press)
        pages = self._run("drawing", task, new, _lost_page, weight)
        for sheet, pressed in zip(new, pages, strict=True):
            self._learn(sheet.file, pressed.survey, self._sheet_key(sheet), pressed)
            if pressed.bugs:
                self._failed.add(sheet.file)
                self.records.pop(sheet.file.address, None)
                self.bugs += pressed.bugs

    def _draw_ahead(self, sizes: Mapping[Sheet, int], weight: int) -> None:
        """Draw the charts of what would keep one process longer than all others."""
        if self._press.cache is None:
            return
        parts = share_out(sizes, self._work.jobs(weight))
        task = partial(draw_part, press=self._press)
        for _ in self._run("drawing long write-ups", task, parts, lambda _: None, weight):
            pass

    def _carry_over(self, sheet: Sheet) -> bool:
        """Have a page of the last edition in this one; False where it must be made."""
        record = self._known(sheet.file)
        if record is None or not record.sheet or record.sheet != self._sheet_key(sheet):
            return False
        address = sheet.file.address
        old, fresh = self._press.old / address, self._press.top / address
        if not carry_page(old, fresh, record.files):
            return False
        self.records[address] = record
        return True

    def _sheet_key(self, sheet: Sheet) -> str:
        return key_of(sheet, self._look)

    def _plan(self) -> None:
        """Settle what will be on the site."""
        planned = {file: self._list(survey) for file, survey in self._surveys.items()}
        listed = [one for one in planned.values() if one is not None]
        self.articles = ordered_listing(one for one in listed if not one.file.is_page)
        self.pages = tuple(one for one in listed if one.file.is_page)
        self.missing = tuple(file for file, one in planned.items() if one is None)

    def _list(self, survey: Survey) -> Listed | None:
        file = survey.file
        if survey.is_good and survey.front is not None and file not in self._failed:
            front, text = survey.front, survey.front_text
            draft, entry = survey.is_draft, survey.entry
            return Listed(file, front, text, survey.charts, draft=draft, entry=entry)
        before = self._ledger.pages.get(file.address)
        if before is None or not (self._press.old / file.address / INDEX).is_file():
            return None
        # It was good when it was published.
        front = read_front(file, Source(file.address, f"---\n{before.front}\n---\n")).front
        entry = self._old_records.entry(file.address)
        draft = front.status == "draft"
        return Listed(file, front, before.front, before.charts, draft, is_kept=True, entry=entry)

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

    def _look_at_moves(self) -> None:
        write_ups = [(one.file, one.front) for one in self.articles if not one.is_kept]
        addresses = {file.address for file in self._files}
        self.diagnostics += find_taken_moves(write_ups, addresses)

    def _keep_pages(self) -> None:
        """Carry over the last good pages; what was made and is not wanted is removed first."""
        for one in (*self.articles, *self.pages):
            if one.is_kept:
                shutil.rmtree(self._press.top / one.address, ignore_errors=True)
                _carry_folder(self._press.old / one.address, self._press.top / one.address)
        for file in self.missing:
            shutil.rmtree(self._press.top / file.address, ignore_errors=True)

    def _fill_related(self) -> None:
        """Fill in the related write-ups where they are not those that the page shows."""
        theme, top, old = self._press.load_theme(), self._press.top, self._press.old
        for address, views in related_views(self.articles).items():
            record = self.records.get(address)
            if record is not None and record.related == views:
                continue
            fill_related(index_of(top, address), views, theme, index_of(old, address))
            if record is not None and record.sheet:
                files = written_files(top / address)
                self.records[address] = replace(record, related=views, files=files)

    def _publish(self, pages: Collection[str], shared: Collection[str]) -> None:
        """Write what is published beside the pages."""
        listed = (*self.articles, *self.pages)
        taken = {*pages, *shared, *(f"{one.address}{INDEX}" for one in listed)}

        def read(one: Listed) -> str:
            return entry_words((self._press.top / one.address / INDEX).read_bytes())

        given = (self._settings, self.articles, self.pages, taken, read)
        doing = "making the feed and the lists"
        for name, data in (attempt(self.bugs, doing, make_publications, *given) or {}).items():
            put_bytes(self._press.top / name, data, self._press.old / name)

    def _keep_assets(self, assets: set[str]) -> None:
        """Keep the styles and fonts that kept pages were made with, and add them to `assets`."""
        if not any(one.is_kept for one in (*self.articles, *self.pages)):
            return
        for name in set(self._ledger.assets) - assets:
            if (self._press.old / name).is_file():
                (self._press.top / name).parent.mkdir(parents=True, exist_ok=True)
                carry_over(self._press.old / name, self._press.top / name)
                assets.add(name)


def _carry_folder(old: Path, fresh: Path) -> None:
    shutil.copytree(old, fresh, symlinks=True, copy_function=carry_over)


def _size(file: ContentFile) -> int:
    try:
        return file.path.stat().st_size
    except OSError:
        return 0


def _lost_survey(file: ContentFile) -> Survey:
    return Survey(file, None, "", bugs=(lost_process(f"making the page of {shown(file.path)}"),))


def _lost_page(sheet: Sheet) -> Pressed:
    return Pressed(_lost_survey(sheet.file))
