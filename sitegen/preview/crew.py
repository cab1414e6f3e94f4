"""Who makes which page next: what somebody looks at first, what was saved then, then the rest.

One process is kept warm: it makes the pages that somebody looks at, so that it remembers their
charts when they are saved. Others make what nobody has asked for yet, and leave when that is done.
"""

import asyncio
from collections import deque
from collections.abc import Callable, Sequence
from enum import IntEnum

from sitegen.preview.desk import Desk
from sitegen.preview.hands import Hand, Hire
from sitegen.preview.jobs import FrontsJob
from sitegen.site.content import ContentFile

MOST_WARM = 24
"""How many write-ups the warm process is taken to remember, `memory.MOST_CHARTS` in mind."""

CHUNK = 64
"""How many front matters are read in one go; a site of one chunk is read before any page."""


class Urgency(IntEnum):
    """How much somebody waits for a page.

    A page TO_COME is as it should be, but looked at: the warm process makes it once for itself,
    so that it remembers the charts when they are saved.
    """

    ASKED = 0
    SAVED = 1
    TO_COME = 2
    BEHIND = 3


_WARM = (Urgency.ASKED, Urgency.SAVED, Urgency.TO_COME)


class Crew:
    """Makes the pages of a desk; `heard` is called after each.

    `jobs` is the number of processes beside the warm one.
    """

    def __init__(self, desk: Desk, hire: Hire, jobs: int, heard: Callable[[], None]) -> None:
        self._desk = desk
        self._hire = hire
        self._jobs = jobs
        self._heard = heard
        self._fronts: deque[tuple[ContentFile, ...]] = deque()
        self._queues: tuple[dict[str, None], ...] = tuple({} for _ in Urgency)
        self._waiting: dict[str, list[asyncio.Future[None]]] = {}
        self._busy: set[str] = set()
        self._again: dict[str, Urgency] = {}
        self._warmed: deque[str] = deque(maxlen=MOST_WARM)
        self._something = asyncio.Event()
        # The others do not slow the warm one down while it starts.
        self._has_begun = asyncio.Event()
        self._hands: set[Hand] = set()

    async def run(self) -> None:
        """Work until cancelled; then every process is ended at once."""
        try:
            async with asyncio.TaskGroup() as tasks:
                tasks.create_task(self._stay())
                for _ in range(self._jobs):
                    tasks.create_task(self._help())
        finally:
            for hand in self._hands:
                hand.end()
            for address in tuple(self._waiting):
                self._tell_waiting(address)

    def read_fronts(self, files: Sequence[ContentFile]) -> None:
        """Have the front matter of files read."""
        chunks = range(0, len(files), CHUNK)
        self._fronts.extend(tuple(files[start : start + CHUNK]) for start in chunks)
        if len(chunks) > 1:
            self._has_begun.set()
        self._something.set()

    def want(self, address: str, urgency: Urgency) -> None:
        """Have a page made; nothing happens where it is as it should be."""
        if address in self._busy:
            self._again[address] = min(urgency, self._again.get(address, urgency))
            return
        to_come = urgency is Urgency.TO_COME and address not in self._warmed
        if not to_come and not self._desk.is_stale(address):
            return
        if any(address in queue for queue in self._queues[: urgency + 1]):
            return
        for queue in self._queues:
            queue.pop(address, None)
        self._queues[urgency][address] = None
        self._something.set()

    async def wait_for(self, address: str) -> None:
        """Wait until a page has been made, unless it is as it should be."""
        if not self._desk.is_stale(address):
            return
        future = asyncio.get_running_loop().create_future()
        self._waiting.setdefault(address, []).append(future)
        self.want(address, Urgency.ASKED)
        await future

    async def _stay(self) -> None:
        """Be the warm one."""
        hand = self._take_on(behind=False)
        while True:
            if len(self._fronts) == 1:
                await self._read(hand)
            elif (address := self._next(*_WARM)) is not None:
                self._warmed.append(address)
                await self._make(hand, address)
            else:
                await self._pause()
                continue
            self._has_begun.set()

    async def _help(self) -> None:
        """Be one of the others: there as long as there is something to do behind."""
        await self._has_begun.wait()
        while True:
            if not (self._fronts or self._queues[Urgency.BEHIND]):
                await self._pause()
                continue
            hand = self._take_on(behind=True)
            while True:
                if self._fronts:
                    await self._read(hand)
                elif (address := self._next(Urgency.BEHIND)) is not None:
                    await self._make(hand, address)
                else:
                    break
            hand.end()
            self._hands.discard(hand)

    def _take_on(self, *, behind: bool) -> Hand:
        hand = self._hire(behind=behind)
        self._hands.add(hand)
        return hand

    async def _pause(self) -> None:
        self._something.clear()
        await self._something.wait()

    def _next(self, *urgencies: Urgency) -> str | None:
        for urgency in urgencies:
            for address in self._queues[urgency]:
                del self._queues[urgency][address]
                return address
        return None

    async def _read(self, hand: Hand) -> None:
        files = self._fronts.popleft()
        made, _ = await hand.do(FrontsJob(files))
        for file, one in zip(files, made, strict=False):
            self._desk.learn(file.address, one.told)
        self._heard()

    async def _make(self, hand: Hand, address: str) -> None:
        job, key = self._desk.job(address), self._desk.key(address)
        if job is not None:
            self._busy.add(address)
            made, bugs = await hand.do(job)
            self._busy.discard(address)
            self._desk.take(address, key, made, bugs)
        self._tell_waiting(address)
        if address in self._again:
            self.want(address, self._again.pop(address))
        self._heard()

    def _tell_waiting(self, address: str) -> None:
        for future in self._waiting.pop(address, ()):
            if not future.done():
                future.set_result(None)
