"""The processes that make pages: started anew when they are killed, ended in an instant.

Engraving holds the interpreter lock, and a library may bring its process down. So the server
draws nothing itself. The processes are spawned, never forked.
"""

import asyncio
import multiprocessing
import os
import signal
import threading
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Protocol

from sitegen.kinds.kind import ChartKind
from sitegen.preview.jobs import Job, Made
from sitegen.site.bug import Bug, attempt, lost_process

_TRIES = 2
Answer = tuple[tuple[Made, ...], list[Bug]]
"""What came of a job, and what failed; nothing came of one that failed."""


class Hand(Protocol):
    """Somebody who does one job after the other."""

    async def do(self, job: Job) -> Answer:
        """Do a job."""
        ...

    def end(self) -> None:
        """Stop at once, whatever is being done."""
        ...


class Hire(Protocol):
    """Takes somebody on."""

    def __call__(self, *, behind: bool) -> Hand:
        """Return a hand; one that works `behind` gives way to whoever is waited for."""
        ...


BEHIND = 10
"""By how much a process gives way that makes what nobody has asked for (POSIX, nice)."""


class WorkerHand:
    """A process of its own that remembers what it made."""

    def __init__(
        self, kinds: tuple[ChartKind, ...], cache: Path | None, *, behind: bool = False
    ) -> None:
        self._given = (kinds, cache, BEHIND if behind else 0)
        self._thread = ThreadPoolExecutor(1, thread_name_prefix="hand")
        self._lock = threading.Lock()
        self._has_ended = False
        self._start()

    async def do(self, job: Job) -> Answer:
        """Do a job; a process that is killed over it gets a second try, then a bug tells so."""
        loop = asyncio.get_running_loop()
        return await loop.run_in_executor(self._thread, self._ask, job)

    def end(self) -> None:
        """Kill the process."""
        with self._lock:
            self._has_ended = True
            self._process.kill()
        self._thread.shutdown(wait=False, cancel_futures=True)

    def _ask(self, job: Job) -> Answer:
        for _ in range(_TRIES):
            try:
                self._pipe.send(job)
                answer: Answer = self._pipe.recv()
            except (EOFError, OSError):
                if not self._start():
                    break
            else:
                return answer
        return (), [lost_process("making a page")]

    def _start(self) -> bool:
        """Start a process in place of the last one; False after the end."""
        spawn = multiprocessing.get_context("spawn")
        with self._lock:
            if self._has_ended:
                return False
            self._pipe, theirs = spawn.Pipe()
            given = (theirs, *self._given)
            self._process = spawn.Process(target=work, args=given, daemon=True)
            self._process.start()
            theirs.close()
            return True


def work(
    pipe: Connection, kinds: tuple[ChartKind, ...], cache: Path | None, gives_way: int
) -> None:
    """Do the jobs that come through a pipe until its other end is closed."""
    if hasattr(os, "nice"):
        os.nice(gives_way)
    # Ctrl-C reaches every process of a terminal; the server ends this one.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    from sitegen.preview.making import Maker  # noqa: PLC0415 - the server needs none of it

    maker = Maker(kinds, cache)
    with suppress(EOFError, OSError):
        while True:
            pipe.send(answer_of(maker.do, pipe.recv()))


def answer_of(do: Callable[[Job], tuple[Made, ...]], job: Job) -> Answer:
    """Return what came of a job, and what failed."""
    bugs: list[Bug] = []
    return attempt(bugs, "making a page", do, job) or (), bugs
