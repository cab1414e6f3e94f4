"""The site at work: saves are taken in, pages made, and whoever looks at one is told."""

import asyncio
from collections.abc import AsyncIterable, Collection, Mapping
from pathlib import Path

from sitegen.preview.changes import sort_changes
from sitegen.preview.crew import Crew, Urgency
from sitegen.preview.desk import NEVER_MADE, TOP, Desk, Page
from sitegen.preview.hands import Hire
from sitegen.preview.memory import Memory
from sitegen.preview.remarks import Remark, as_state
from sitegen.preview.streams import State, Streams
from sitegen.site.addresses import INDEX
from sitegen.site.bug import Bug, attempt
from sitegen.site.content import is_inside
from sitegen.site.related_place import with_related

FEW = 8
"""As many saves at once are somebody's own; more are a change of the whole folder."""

NOT_THERE = "not there"
"""What stands for the state of a page that no file stands for."""

_MOST_OPENED = 8
_MOST_ASSETS = 16


class Room:
    """Holds a desk, those who work on it and those who look at it."""

    def __init__(self, desk: Desk, hire: Hire, jobs: int) -> None:
        self._desk = desk
        self._crew = Crew(desk, hire, jobs, self._tell)
        self._opened = Memory[Mapping[str, bytes]](_MOST_OPENED)
        # A page that could not be made again still needs the styles that it was made with.
        self._tops = Memory[Mapping[str, bytes]](_MOST_ASSETS)
        self.streams = Streams(self._state_of)

    async def work(self, saves: AsyncIterable[Collection[Path]]) -> None:
        """Work until cancelled; `saves` are the paths that change."""
        files = list(self._desk.files.values())
        self._crew.read_fronts(files)
        self._crew.want(TOP, Urgency.SAVED)
        for file in files:
            self._crew.want(file.address, Urgency.BEHIND)
        try:
            async with asyncio.TaskGroup() as tasks:
                tasks.create_task(self._crew.run())
                tasks.create_task(self._follow(saves))
        finally:
            self.streams.end()

    async def page(self, address: str) -> Page | None:
        """Return a page as it should be now, made if need be; None where there is none."""
        await self._crew.wait_for(address)
        return self._desk.latest.get(address)

    def files(self, page: Page) -> Mapping[str, bytes]:
        """Return the files of a page by name."""
        return self._opened.recall(page.digest, lambda: self._desk.open(page))

    def index(self, address: str, page: Page) -> bytes | None:
        """Return the page itself, with the related write-ups as they are now.

        They come in later than the page, and whoever reads it is not disturbed for them.
        """
        html = self.files(page).get(INDEX)
        return None if html is None else with_related(html, self._desk.related.get(address, b""))

    async def asset(self, path: str) -> bytes | None:
        """Return a file at the top of the site, also one of an earlier state of the theme."""
        if (found := self._find_asset(path)) is None:
            await self.page(TOP)
            found = self._find_asset(path)
        return found

    def _find_asset(self, path: str) -> bytes | None:
        top = self._desk.latest.get(TOP)
        if top is not None and top.slot is not None:
            self._tops.put(top.digest, self.files(top))
        return next((files[path] for files in self._tops.values() if path in files), None)

    def attachment(self, address: str, name: str) -> Path | None:
        """Return a file that a page shows from beside its text, if it is still there."""
        page, file = self._desk.latest.get(address), self._desk.files.get(address)
        path = page.attachments.get(name) if page is not None else None
        if path is None or file is None or not is_inside(path, file.folder):
            return None
        return path if path.is_file() else None

    def remarks(self, address: str) -> tuple[Remark, ...]:
        """Return what is to be said on a page."""
        return self._desk.remarks(address)

    def is_known(self, address: str) -> bool:
        """Return whether a file stands for the address."""
        return address in self._desk.files

    def open(self, address: str) -> None:
        """Take in that somebody begins to look at a page."""
        self._crew.want(address, Urgency.ASKED)
        self._crew.want(address, Urgency.TO_COME)

    def save(self, paths: Collection[Path]) -> None:
        """Take in that files were saved, and have made again what somebody looks at."""
        changes = sort_changes(paths, self._desk.known())
        self._desk.note(changes)
        saved = set(changes.addresses)
        if changes.files:
            new, linking = self._desk.scan()
            self._crew.read_fronts(new)
            saved |= {file.address for file in new} | set(linking)
        self._order(saved)

    def _order(self, saved: Collection[str]) -> None:
        urgency = Urgency.SAVED if len(saved) <= FEW else Urgency.BEHIND
        for address in saved:
            self._crew.want(address, urgency)

    async def _follow(self, saves: AsyncIterable[Collection[Path]]) -> None:
        async for paths in saves:
            bugs: list[Bug] = []
            attempt(bugs, "taking in what was saved", self.save, paths)
            self._desk.failures = tuple(bugs)
            self._tell()

    def _tell(self) -> None:
        """Tell whoever looks at a page how it stands, and have it made where it is stale."""
        for address in self.streams.addresses():
            if address == TOP or self.is_known(address):
                self._crew.want(address, Urgency.ASKED)
        # What others lead to it by is found there: the list of all, related write-ups, indexes.
        self._crew.want(TOP, Urgency.BEHIND)
        self.streams.tell()

    def _state_of(self, address: str) -> State:
        page = self._desk.latest.get(address)
        if page is not None:
            return as_state(page.digest, self._desk.remarks(address))
        state = NEVER_MADE if self.is_known(address) or address == TOP else NOT_THERE
        return as_state(state, self._desk.remarks(address))
