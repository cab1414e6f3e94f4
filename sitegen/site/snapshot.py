"""The state of files: what a build was made from, and whether that is still so.

A file is read only where its size or its time is not the one that is known; a time so young that
a further change could bear it as well is not trusted.
"""

import hashlib
import os
import stat
import time
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple

YOUNG = 2_000_000_000
"""Nanoseconds within which two changes may bear the same time: the coarsest clock of a file
system in use, that of FAT."""

_DEEPEST = 32
_MOST_LINKS = 2
"""Links to folders that are followed inside one another: they may run in a circle."""
_LARGEST_READ = 100_000_000
"""Bytes of a file up to which it is read; of a larger one, size and time must tell."""


class Stamp(NamedTuple):
    """A file's size in bytes, its time in nanoseconds and the hash of what it holds.

    `time` is 0 where it cannot be trusted. What is no file that can be read has no hash.
    """

    size: int
    time: int
    hash: str


Snapshot = Mapping[str, Stamp]
"""Files by their path."""


def take_snapshot(places: Iterable[Path], known: Snapshot) -> dict[str, Stamp]:
    """Return the state of all files at and below some places; `known` saves reading them."""
    now = time.time_ns()
    files = (found for place in places for found in _files(os.fspath(place), 0))
    return {path: _stamp(path, info, known.get(path), now) for path, info in files}


def is_same(one: Snapshot, other: Snapshot) -> bool:
    """Return whether two snapshots tell of the same files with the same contents."""
    return one.keys() == other.keys() and all(
        one[path].hash == other[path].hash and one[path].size == other[path].size for path in one
    )


def hashes_below(folder: Path, snapshot: Snapshot) -> dict[str, str]:
    """Return one hash each for what stands directly in a folder, with all that lies below it."""
    start = os.path.join(folder, "")
    found: dict[str, Any] = {}
    for path in sorted(path for path in snapshot if path.startswith(start)):
        first, _, rest = path[len(start) :].partition(os.sep)
        stamp = snapshot[path]
        whole = found.setdefault(first, hashlib.blake2b(digest_size=20))
        whole.update(f"{rest}\0{stamp.size}\0{stamp.hash}\0".encode("utf-8", "surrogatepass"))
    return {first: whole.hexdigest() for first, whole in found.items()}


def _files(place: str, depth: int, links: int = 0) -> Iterator[tuple[str, os.stat_result | None]]:
    """Yield every file at or below a place with what the system knows of it."""
    try:
        with os.scandir(place) as entries:
            for entry in entries:
                inner = links + entry.is_symlink()
                if entry.is_dir() and depth < _DEEPEST and inner <= _MOST_LINKS:
                    yield from _files(entry.path, depth + 1, inner)
                else:
                    yield entry.path, _info(entry.path)
    except NotADirectoryError:
        yield place, _info(place)
    except OSError:
        yield place, None


def _info(path: str) -> os.stat_result | None:
    try:
        return os.stat(path)
    except OSError:
        return None


def _stamp(path: str, info: os.stat_result | None, known: Stamp | None, now: int) -> Stamp:
    if info is None or not stat.S_ISREG(info.st_mode):
        return Stamp(0, 0, "")
    if known is not None and known.time == info.st_mtime_ns and known.size == info.st_size:
        return known
    if info.st_size > _LARGEST_READ:
        return Stamp(info.st_size, info.st_mtime_ns, f"unread {info.st_mtime_ns}")
    trusted = info.st_mtime_ns if info.st_mtime_ns < now - YOUNG else 0
    try:
        with open(path, "rb") as file:
            whole = hashlib.file_digest(file, _blake2b)
    except OSError:
        return Stamp(info.st_size, 0, "")
    return Stamp(info.st_size, trusted, whole.hexdigest())


def _blake2b() -> Any:  # noqa: ANN401 - hashlib's own classes have no public type
    return hashlib.blake2b(digest_size=20)
