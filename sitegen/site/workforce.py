"""The same task done for many write-ups, in this process or in several.

Engraving holds the interpreter lock, so that threads would gain nothing. New processes are
spawned, never forked: that is safe whatever threads and libraries the caller has running, and
the same on every system. They are started when there is work that is worth it, leave with the
process that started them, and one that is ended from outside costs one item at most.
"""

import gc
import multiprocessing
import os
import signal
import threading
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import CancelledError, Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from types import TracebackType
from typing import Self, TypeVar

Item = TypeVar("Item")
Result = TypeVar("Result")
WORTH_A_PROCESS = 8
"""How many write-ups outweigh the start of one more process (about a second, measured)."""


class Workforce:
    """Does one task for every item; results come in the order of the items.

    `jobs` is how many processes to use, None for as many as are worth their start; one job is
    done in this process. With several, task and items must be picklable. Used as a context: at
    its end the processes are ended, whatever they are doing.
    """

    def __init__(self, jobs: int | None = None) -> None:
        self._jobs = jobs
        self._pool: ProcessPoolExecutor | None = None

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        _kind: type[BaseException] | None,
        _wrong: BaseException | None,
        _trace: TracebackType | None,
    ) -> None:
        self._dismiss()

    def __call__(
        self,
        task: Callable[[Item], Result],
        items: Sequence[Item],
        lost: Callable[[Item], Result],
        weight: int | None = None,
    ) -> Iterator[Result]:
        """Yield the results as they are ready.

        `lost` gives the result of an item whose process is ended from outside twice. `weight` says
        how many usual write-ups the items outweigh, where they are none.
        """
        jobs = self.jobs(len(items) if weight is None else weight)
        if jobs <= 1 or not items:
            yield from map(task, items)
            return
        futures = [self._submit(task, item, jobs) for item in items]
        for place, item in enumerate(items):
            try:
                yield futures[place].result()
            except (BrokenProcessPool, CancelledError):
                yield self._alone(task, item, lost, jobs)
                futures[place + 1 :] = [
                    future if _is_done(future) else self._submit(task, later, jobs)
                    for future, later in zip(futures[place + 1 :], items[place + 1 :], strict=True)
                ]

    def jobs(self, weight: int) -> int:
        """Return how many processes are used for what outweighs so many write-ups."""
        return self._jobs or sensible_jobs(weight, os.cpu_count() or 1)

    def _alone(
        self,
        task: Callable[[Item], Result],
        item: Item,
        lost: Callable[[Item], Result],
        jobs: int,
    ) -> Result:
        """Do an item with no other beside it: if its process ends again, it was this one."""
        self._dismiss()
        self._pool = _hire(jobs)
        try:
            return self._pool.submit(task, item).result()
        except BrokenProcessPool:
            self._dismiss()
            return lost(item)

    def _submit(self, task: Callable[[Item], Result], item: Item, jobs: int) -> "Future[Result]":
        self._pool = self._pool or _hire(jobs)
        try:
            return self._pool.submit(task, item)
        except BrokenProcessPool as lost:
            failed: Future[Result] = Future()
            failed.set_exception(lost)
            return failed

    def _dismiss(self) -> None:
        if self._pool is not None:
            self._pool.shutdown(wait=False, cancel_futures=True)
            for process in multiprocessing.active_children():
                process.terminate()
                process.join()
            self._pool = None


def sensible_jobs(count: int, processors: int) -> int:
    """Return how many processes to use for `count` write-ups on so many processors."""
    return max(1, min(processors, count // WORTH_A_PROCESS))


def _is_done(future: "Future[Result]") -> bool:
    """Return whether a future has what its process made before any process was lost."""
    return future.done() and not future.cancelled() and future.exception() is None


def _hire(jobs: int) -> ProcessPoolExecutor:
    spawn = multiprocessing.get_context("spawn")
    return ProcessPoolExecutor(jobs, mp_context=spawn, initializer=_begin)


def ease_collection() -> None:
    """Look for cycles among values less often: a build makes millions of values, and few cycles.

    With the usual numbers a tenth of a build's time goes into looking.
    """
    gc.freeze()
    gc.set_threshold(50_000, 20, 50)


def _begin() -> None:
    """Leave Ctrl-C to the process that started this one, and end with it."""
    ease_collection()
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_follow, daemon=True).start()


def _follow() -> None:
    parent = multiprocessing.parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)
