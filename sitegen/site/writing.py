"""The files of a fresh folder: what is as it was keeps the time of the file that was published.

A sync to a host then sends only what changed. An unchanged file is the published one itself
under a second name where the system can do that; no file is ever written into, only replaced.
"""

import errno
import os
import shutil
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from typing import BinaryIO

from sitegen.site.file_reading import open_file, open_own, read_own
from sitegen.site.refusal import RefusedError, reason_of

_PIECE = 1 << 20

Written = tuple[str, int, int]
"""A file of a page: its path from the page's folder, its size in bytes and its time in ns."""


def put_bytes(path: Path, data: bytes, old: Path) -> None:
    """Write `data` to `path`; `old` is where the published folder has that file, if it has it.

    Raises RefusedError when the system refuses, for instance for want of room.
    """
    try:
        _clear(path)
        if _holds(old, data):
            carry_over(old, path)
        else:
            path.write_bytes(data)
    except OSError as wrong:
        raise refusal(path, wrong) from wrong


def put_copy(path: Path, source: Path, old: Path) -> None:
    """Copy the file `source`, its links followed, to `path` as `put_bytes` does; raises the same.

    A link that was put in its way meanwhile is not followed.
    """
    try:
        _clear(path)
        with open_file(source) as stream:
            if _is_copy(stream, old):
                carry_over(old, path)
                return
            stream.seek(0)
            with path.open("xb") as fresh:
                shutil.copyfileobj(stream, fresh)
    except OSError as wrong:
        raise refusal(path, wrong) from wrong


def carry_over(old: Path | str, path: Path | str) -> None:
    """Have the published file `old` at `path` as well, with its time; raises as `put_bytes`."""
    with suppress(OSError):  # a file system without second names
        os.link(old, path)
        return
    try:
        shutil.copy2(old, path)
    except OSError as wrong:
        raise refusal(Path(path), wrong) from wrong


def written_files(folder: Path) -> tuple[Written, ...]:
    """Return all files of a page with their sizes and times."""
    return tuple(sorted(_written(os.fspath(folder), "")))


def carry_page(old: Path, fresh: Path, files: tuple[Written, ...]) -> bool:
    """Have the published files of a page at `fresh` as well.

    False, and nothing is carried over, where they are no longer those that were written.
    """
    try:
        found = written_files(old)
    except OSError:
        return False
    if found != files:
        return False
    for folder in {os.path.dirname(name) for name, _, _ in files}:
        os.makedirs(os.path.join(fresh, folder), exist_ok=True)
    for name, _, _ in files:
        carry_over(os.path.join(old, name), os.path.join(fresh, name))
    return True


def _written(folder: str, below: str) -> Iterator[Written]:
    with os.scandir(folder) as entries:
        for entry in entries:
            if entry.is_dir(follow_symlinks=False):
                yield from _written(entry.path, f"{below}{entry.name}/")
            else:
                info = entry.stat(follow_symlinks=False)
                yield f"{below}{entry.name}", info.st_size, info.st_mtime_ns


def refusal(path: Path, wrong: OSError) -> RefusedError:
    """Return what to tell the user when the system does not let us write."""
    hint = _HINTS.get(wrong.errno or 0, "")
    return RefusedError(f"{path} cannot be written: {reason_of(wrong)}{hint}")


_HINTS = {
    errno.EACCES: ": choose another --out, or ask for the right to write there",
    errno.EDQUOT: ": make room on the disk and build again",
    errno.EFBIG: ": the system allows no file so large",
    errno.ENOSPC: ": make room on the disk and build again",
    errno.EPERM: ": choose another --out, or ask for the right to write there",
    errno.EROFS: ": choose another --out",
}


def _clear(path: Path) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.unlink(missing_ok=True)


def _is_copy(stream: BinaryIO, old: Path) -> bool:
    """Return whether the published file `old` holds just what `stream` does."""
    try:
        if old.stat().st_size != os.fstat(stream.fileno()).st_size:
            return False
        with open_own(old) as published:
            pieces = iter(lambda: stream.read(_PIECE), b"")
            return all(piece == published.read(_PIECE) for piece in pieces)
    except OSError:
        return False


def _holds(old: Path, data: bytes) -> bool:
    try:
        return old.stat().st_size == len(data) and read_own(old) == data
    except OSError:
        return False
