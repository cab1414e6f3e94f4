"""Files of the content folder read with care: whole ones of a sensible size, and no others.

A pipe would be waited for without end, a device never ends, and a file may be exchanged for a
link to somewhere else after it was looked at.
"""

import errno
import os
import stat
from pathlib import Path
from typing import BinaryIO

LARGEST_TEXT = 500_000
"""Bytes of a write-up, a page or the settings: more than a book has."""

_KILO = 1000
_PATIENTLY = getattr(os, "O_NONBLOCK", 0)
"""A pipe is not waited for."""
_CAREFULLY = os.O_RDONLY | _PATIENTLY | getattr(os, "O_NOFOLLOW", 0)
_BINARY = getattr(os, "O_BINARY", 0)


class UnfitFileError(OSError):
    """A file that is not to be read; `strerror` says why."""

    def __init__(self, reason: str) -> None:
        super().__init__(errno.EINVAL, reason)


def read_text_file(path: Path, root: Path | None = None) -> bytes:
    """Return the bytes of a text file; with `root`, only where it lies in that folder.

    Raises OSError, for a link that leads out of `root`, for what is no file, and for a file that
    is too large.
    """
    real = Path(os.path.realpath(path, strict=True))
    if root is not None and not real.is_relative_to(os.path.realpath(root)):
        raise UnfitFileError("it is a link to a place outside the content folder")
    with open_file(real) as stream:
        data = stream.read(LARGEST_TEXT + 1)
    if len(data) > LARGEST_TEXT:
        raise UnfitFileError(too_large(LARGEST_TEXT))
    return data


def open_file(path: Path) -> BinaryIO:
    """Return the open file at `path`, in which every link must have been followed already.

    Raises OSError, for what is no file, and where somebody has put a link in the way meanwhile.
    """
    number = os.open(path, _CAREFULLY | _BINARY)
    try:
        _check(path, os.fstat(number))
    except OSError:
        os.close(number)
        raise
    return os.fdopen(number, "rb")


def holds_file(path: Path) -> bool:
    """Return whether a file stands at `path`, links followed; False where we may not look."""
    return os.path.isfile(path)  # noqa: PTH113 - pathlib's raises for what we may not look at


def open_own(path: Path) -> BinaryIO:
    """Return an open file of our own folders, links followed; raises OSError for what is none."""
    number = os.open(path, os.O_RDONLY | _PATIENTLY | _BINARY)
    try:
        _check_kind(os.fstat(number))
    except OSError:
        os.close(number)
        raise
    return os.fdopen(number, "rb")


def read_own(path: Path) -> bytes:
    """Return what a file of our own folders holds, as `open_own` opens it."""
    with open_own(path) as stream:
        return stream.read()


def find_unfit(path: Path) -> str:
    """Return why what stands at `path` is no text to read, "" for a file or folder that may be."""
    try:
        info = path.stat()
    except OSError:
        return ""  # whoever reads it says why it cannot be read
    if stat.S_ISDIR(info.st_mode):
        return ""
    if not stat.S_ISREG(info.st_mode):
        return _NO_FILE
    return too_large(LARGEST_TEXT) if info.st_size > LARGEST_TEXT else ""


def too_large(most: int) -> str:
    """Return what is said of a file of more than `most` bytes."""
    return f"it has more than {most // _KILO} kB"


_NO_FILE = "it is a pipe or a device, and no file"


def _check(path: Path, opened: os.stat_result) -> None:
    _check_kind(opened)
    in_place = os.path.realpath(path) == os.fspath(path)
    if not (in_place and os.path.samestat(opened, os.lstat(path))):
        raise UnfitFileError("it was exchanged for another file while it was read")


def _check_kind(opened: os.stat_result) -> None:
    if stat.S_ISDIR(opened.st_mode):
        raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR))
    if not stat.S_ISREG(opened.st_mode):
        raise UnfitFileError(_NO_FILE)
