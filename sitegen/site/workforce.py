"""The same task done for many write-ups, in this process or in several.

Engraving holds the interpreter lock, so that threads would gain nothing. New processes are
spawned, never forked: that is safe whatever threads and libraries the caller has running, and
the same on every system.
"""

import multiprocessing
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager
from typing import Protocol, TypeVar

Item = TypeVar("Item")
Result = TypeVar("Result")
WORTH_A_PROCESS = 8
"""How many write-ups outweigh the start of one more process (about a second, measured)."""


class Workforce(Protocol):
    """Does one task for every item; results come in the order of the items."""

    def __call__(self, task: Callable[[Item], Result], items: Sequence[Item]) -> Iterator[Result]:
        """Yield the results as they are ready."""
        ...


@contextmanager
def hire(jobs: int) -> Iterator[Workforce]:
    """Yield a workforce of `jobs` processes; one job is done in this process.

    With several jobs, task and items must be picklable.
    """
    if jobs <= 1:
        yield _alone
        return
    spawn = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(jobs, mp_context=spawn) as pool:

        def together(task: Callable[[Item], Result], items: Sequence[Item]) -> Iterator[Result]:
            return pool.map(task, items)

        yield together


def _alone(task: Callable[[Item], Result], items: Sequence[Item]) -> Iterator[Result]:
    return map(task, items)


def sensible_jobs(count: int, processors: int) -> int:
    """Return how many processes to use for `count` write-ups on so many processors."""
    return max(1, min(processors, count // WORTH_A_PROCESS))
