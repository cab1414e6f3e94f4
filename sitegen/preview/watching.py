"""The saves in some folders, told in moments; a folder that goes and comes again is followed."""

import asyncio
import os
from collections.abc import AsyncIterator, Callable, Collection, Iterable
from contextlib import suppress
from pathlib import Path

from watchfiles import awatch
from watchfiles._rust_notify import WatchfilesRustInternalError

STEP = 10
"""Milliseconds without a further change after which changes are told."""

_LONGEST = 200
_LOOK = 1000
"""Milliseconds after which the folders are looked for, since one that is moved away is silent."""


async def saves(folders: Callable[[], Collection[Path]]) -> AsyncIterator[Collection[Path]]:
    """Yield the paths that change below some folders, again and again.

    `folders` is asked anew each time; where one of them comes or goes, it is told itself.
    """
    before: dict[Path, int] = {}
    seen: dict[Path, tuple[int, int]] = {}
    while True:
        there = _marks(folders())
        if there != before and before:
            yield [path for path in {*there, *before} if there.get(path) != before.get(path)]
        before = there
        if not there:
            await asyncio.sleep(_LOOK / 1000)
            continue
        try:
            async for changes in awatch(
                *there, step=STEP, debounce=_LONGEST, rust_timeout=_LOOK, yield_on_timeout=True
            ):
                if changes:
                    yield [Path(path) for _, path in changes]
                if _marks(folders()) != there:
                    break
        except (OSError, WatchfilesRustInternalError):
            # There is a folder that we may not watch, or there are more than the system watches.
            last, seen = seen or _times(there), _times(there)
            if last != seen:
                yield [path for path in {*last, *seen} if last.get(path) != seen.get(path)]
            await asyncio.sleep(_LOOK / 1000)


def _marks(folders: Collection[Path]) -> dict[Path, int]:
    """Return the folders that are there with what tells one from another of the same name."""
    marks = {}
    for folder in folders:
        try:
            marks[folder] = folder.stat().st_ino
        except OSError:
            continue
    return marks


def _times(folders: Iterable[Path]) -> dict[Path, tuple[int, int]]:
    """Return the time and the size of all that lies below some folders."""
    times: dict[Path, tuple[int, int]] = {}
    for top in folders:
        for place, _, names in os.walk(top):
            for path in (Path(place), *(Path(place, name) for name in names)):
                with suppress(OSError):
                    info = path.stat()
                    times[path] = (info.st_mtime_ns, info.st_size)
    return times
