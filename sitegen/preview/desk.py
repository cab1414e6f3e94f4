"""What the server knows: the files, what they tell, the pages made of them and what has changed.

Nothing is read here but the settings and the names of files. Whether a page must be made again
is decided by comparing what it would be made of with what it was made of: its file's number of
saves, the site as it sees it, its neighbours, the theme. So nothing need be known of who depends
on whom.
"""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from sitegen.finding import Entry
from sitegen.preview.changes import Changes, Known
from sitegen.preview.jobs import Job, Made, PageJob, ThemeState, Told, TopJob, unpack
from sitegen.preview.remarks import Remark, of_bugs, of_faults
from sitegen.preview.shelf import Shelf, Slot
from sitegen.site.addresses import site_view
from sitegen.site.bug import Bug
from sitegen.site.content import Content, ContentFile, scan_content
from sitegen.site.listing import Listed, menu_of, neighbours, ordered_listing
from sitegen.site.pressing import Sheet
from sitegen.site.refusal import reason_of
from sitegen.site.settings import Settings
from sitegen.site.site_file import load_settings
from sitegen.site.theme_folder import find_theme

TOP = ""
"""The address of what stands at the top of the site."""

NEVER_MADE = "never made"
"""What stands for the state of a page that there never was."""


@dataclass(frozen=True)
class Page:
    """A page as it is shown: made of `key`, lying in `slot` (None where there never was one).

    `digest` stands for the state that is shown; `is_good` says that this state had no errors.
    """

    key: object
    slot: Slot | None = None
    attachments: Mapping[str, Path] = field(default_factory=dict)
    digest: str = NEVER_MADE
    remarks: tuple[Remark, ...] = ()
    is_good: bool = False


class Desk:
    """Keeps the state of one site; `theme` is the folder of the theme that the user asked for.

    `latest` are the pages by address, `failures` what failed when saves were taken in, `related`
    the lists of related write-ups by the address of each, as the top of the site last told them.
    """

    def __init__(self, content: Path, theme: Path | None) -> None:
        self._folder = content
        self._asked_theme = theme
        self._shelf = Shelf()
        # How often something happened to a file, to the theme and to the settings.
        self._numbers: Counter[str] = Counter()
        self._told: dict[str, Told] = {}
        self._listing: tuple[Listed, ...] | None = None
        self._places: dict[str, int] = {}
        self._menu: Mapping[str, str] = {}
        self._settings = Settings()
        self._had_settings = False
        self._theme_folder = theme or content
        self._about_settings: tuple[Remark, ...] = ()
        self._about_folders: tuple[Remark, ...] = ()
        self.failures: tuple[Bug, ...] = ()
        self.related: Mapping[str, bytes] = {}
        self.files: dict[str, ContentFile] = {}
        self.latest: dict[str, Page] = {}
        self.scan()

    @property
    def theme_folder(self) -> Path:
        """The folder of the theme in use."""
        return self._theme_folder

    def known(self) -> Known:
        """Return what is needed to make sense of changed paths."""
        return Known.of(self._folder, self._theme_folder, self.files.values())

    def scan(self) -> tuple[list[ContentFile], list[str]]:
        """Look for files and settings anew.

        Returns the files that are new, and the addresses of the pages that link to what has come
        or gone.
        """
        content = scan_content(self._folder)
        files = {file.address: file for file in (*content.articles, *content.pages)}
        new = [file for address, file in files.items() if address not in self.files]
        gone = self.files.keys() - files.keys()
        moved = {address.rstrip("/") for address in gone | {file.address for file in new}}
        self.files = files
        for address in gone:
            self._forget(address)
        linking = [one for one, told in self._told.items() if not moved.isdisjoint(told.linked)]
        self._numbers.update(linking)
        self._read_settings(content)
        self._listing = None
        return new, linking

    def note(self, changes: Changes) -> None:
        """Take in that something was saved, `files` apart."""
        for address in changes.addresses:
            self._numbers[address] += 1
        if changes.theme:
            self._numbers["*theme"] += 1
        if changes.settings and not changes.files:
            self._read_settings(scan_content(self._folder))

    def is_stale(self, address: str) -> bool:
        """Return whether a page would be made of something else than it was."""
        page = self.latest.get(address)
        return page is None or page.key != self.key(address)

    def key(self, address: str) -> object:
        """Return what a page would be made of now, to be compared only."""
        common = self._numbers["*settings"], self._theme()
        if address == TOP:
            return (*common, self._listed(), self._menu)
        file = self.files.get(address)
        return None if file is None else (*common, self._numbers[address], self._sheet(file))

    def job(self, address: str) -> Job | None:
        """Return what is to be done for a page; None where its file is gone."""
        theme = self._theme()
        if address == TOP:
            return TopJob(self._settings, self._listed(), self._menu, theme)
        file = self.files.get(address)
        if file is None:
            return None
        page = self.latest.get(address)
        return PageJob(self._sheet(file), theme, has_good=page is not None and page.is_good)

    def learn(self, address: str, told: Told) -> None:
        """Take in what a file tells; what could not be read tells nothing new."""
        before = self._told.get(address)
        if told.front is None or not told.front.title:
            front = before.front if before else None
            told = Told(front, told.charts, told.draft, told.linked)
        if before is not None and told.entry == Entry():
            # What has errors, or was only glanced at, is found by what it held before.
            told = replace(told, entry=before.entry)
        if address in self.files and told != before:
            self._told[address] = told
            self._listing = None

    def take(self, address: str, key: object, made: Iterable[Made], bugs: Iterable[Bug]) -> None:
        """Take in a page that was made of `key`; one with errors leaves the last good one."""
        one = next(iter(made), None)
        remarks = of_bugs(bugs, self._theme_folder)
        if address in self.files and one is not None:
            self.learn(address, one.told)
        if address not in self.files and address != TOP:
            return
        before = self.latest.get(address, Page(None))
        page = replace(before, key=key, remarks=remarks)
        if one is not None:
            page = replace(page, remarks=(*remarks, *one.remarks))
        if one is not None and address == TOP:
            self.related = one.related
        if one is not None and one.packed is not None and (one.is_good or not before.is_good):
            page = self._put(page, one, one.packed)
        self.latest[address] = page

    def _put(self, page: Page, made: Made, packed: bytes) -> Page:
        """Lay a made page on the shelf, in place of what is there."""
        try:
            slot = self._shelf.put(packed)
        except OSError as wrong:
            full = f"the page cannot be kept: {reason_of(wrong)}; make room on the disk"
            return replace(page, remarks=(Remark("error", full), *page.remarks))
        if page.slot is not None:
            self._shelf.drop(page.slot)
        page = replace(page, slot=slot, attachments=made.attachments)
        return replace(page, digest=made.digest, is_good=made.is_good)

    def open(self, page: Page) -> Mapping[str, bytes]:
        """Return the files of a page, by name; none for one that was never made."""
        return {} if page.slot is None else unpack(self._shelf.get(page.slot))

    def remarks(self, address: str) -> tuple[Remark, ...]:
        """Return what is to be said on a page: at the top of the site, everything."""
        page = self.latest.get(address)
        own = page.remarks if page else ()
        if address == TOP:
            pages = (self.latest[one] for one in sorted(self.latest) if one != TOP)
            own = (*own, *(remark for page in pages for remark in page.remarks))
        folders = () if address in self.files else self._about_folders
        failed = of_bugs(self.failures, self._theme_folder)
        return (*failed, *self._about_settings, *folders, *own)

    def close(self) -> None:
        """Give the made pages away."""
        self._shelf.close()

    def _theme(self) -> ThemeState:
        return ThemeState(self._theme_folder, self._numbers["*theme"])

    def _forget(self, address: str) -> None:
        page = self.latest.pop(address, None)
        if page is not None and page.slot is not None:
            self._shelf.drop(page.slot)
        self._told.pop(address, None)
        # Should it come back, it is another one.
        self._numbers[address] += 1

    def _read_settings(self, content: Content) -> None:
        file = load_settings(content)
        self._about_settings = of_faults(file.diagnostics)
        self._about_folders = of_faults(content.diagnostics)
        is_good = not any(found.is_error for found in file.diagnostics)
        if is_good or not self._had_settings:
            self._had_settings = is_good
            if self._settings != file.settings:
                self._settings = file.settings
                self._numbers["*settings"] += 1
                self._listing = None
        self._theme_folder = self._find_theme()

    def _find_theme(self) -> Path:
        """Return the theme's folder: a theme that is not there leaves the last one in use."""
        if self._asked_theme is not None:
            return self._asked_theme
        found = find_theme(self._settings.theme, self._folder)
        if found is None and self._theme_folder == self._folder:
            found = find_theme(Settings().theme, self._folder)
        return (found or self._theme_folder).resolve()

    def _listed(self) -> tuple[Listed, ...]:
        """Return the write-ups in their order, planned anew where something was learnt."""
        if self._listing is None:
            known = [
                Listed(
                    self.files[address],
                    told.front,
                    "",
                    told.charts,
                    draft=told.draft,
                    entry=told.entry,
                )
                for address, told in self._told.items()
                if told.front is not None
            ]
            self._listing = ordered_listing(one for one in known if not one.file.is_page)
            self._places = {one.address: place for place, one in enumerate(self._listing)}
            pages = sorted((one for one in known if one.file.is_page), key=lambda one: one.address)
            self._menu = menu_of(pages, self._settings)
        return self._listing

    def _sheet(self, file: ContentFile) -> Sheet:
        """Return what a page is made of; whether it is a draft is found when it is made."""
        listing = self._listed()
        place = self._places.get(file.address)
        earlier, later = (None, None) if place is None else neighbours(listing, place)
        return Sheet(file, site_view(self._settings, file.address, self._menu), earlier, later)
