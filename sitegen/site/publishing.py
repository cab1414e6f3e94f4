"""The published folder: filled in a fresh folder beside it and swapped in as a whole.

Killed at any moment, the published folder is the old site or the new one. Linux and macOS swap
two folders in one step; elsewhere two renames follow each other, and a kill between them leaves
the old site under its temporary name. What was written is on the disk before it is swapped in, so
that a loss of power does no harm either.
"""

import ctypes
import os
import shutil
import stat
import sys
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path

from sitegen.site.file_reading import holds_file
from sitegen.site.lock import only_build
from sitegen.site.refusal import RefusedError
from sitegen.site.writing import refusal

MARKER = ".sitegen"
"""The file that says that a folder was made by sitegen and may be replaced."""

_AT_FDCWD = -100
_RENAME_EXCHANGE = 2  # renameat2(2), Linux
_RENAME_SWAP = 2  # renamex_np(2), macOS


@contextmanager
def fresh_folder(target: Path, *, force: bool = False) -> Iterator[Path]:
    """Yield an empty folder that takes the place of `target` when the block ends well.

    With `force`, `target` may be a folder that somebody else made. Raises RefusedError when it is
    one and must not be, when another build is filling it, or when the system refuses.
    """
    target = Path(os.path.realpath(target))
    check_target(target, force=force)
    with ExitStack() as held:
        with _told(target):
            target.parent.mkdir(parents=True, exist_ok=True)
            held.enter_context(only_build(target.with_name(f".{target.name}.lock"), target))
            fresh = _make_fresh(target)
        held.callback(shutil.rmtree, fresh, ignore_errors=True)
        yield fresh
        with _told(target):
            _flush(fresh)
            _swap(fresh, target)


@contextmanager
def _told(target: Path) -> Iterator[None]:
    """Tell the user what the system refuses."""
    try:
        yield
    except OSError as wrong:
        raise refusal(target, wrong) from wrong


def check_target(target: Path, *, force: bool = False) -> None:
    """Raise RefusedError when `target` is neither free nor an output of sitegen."""
    with _told(target):
        kind = _kind_of(target)
        if kind is not None and not stat.S_ISDIR(kind):
            raise RefusedError(f"{target} is not a folder")
        ours = kind is None or holds_file(target / MARKER) or not any(target.iterdir())
    if not ours and not force:
        raise RefusedError(
            f"{target} was not made by sitegen and would be lost: choose another --out, or say "
            "--force"
        )


def _kind_of(path: Path) -> int | None:
    """Return what stands at a path as the system tells it, None for nothing; raises OSError."""
    try:
        return path.stat().st_mode
    except (FileNotFoundError, NotADirectoryError):
        return None


def _flush(folder: Path) -> None:
    """Have the system write to the disk what it holds back, all of the file system at once."""
    library = ctypes.CDLL(None) if sys.platform == "linux" else None
    if library is not None and hasattr(library, "syncfs"):
        opened = os.open(folder, os.O_RDONLY)
        try:
            library.syncfs(opened)
        finally:
            os.close(opened)
    elif hasattr(os, "sync"):
        os.sync()


def _make_fresh(target: Path) -> Path:
    """Make a folder beside `target`, named by our process; sweep away those of dead ones."""
    prefix = f".{target.name}.fresh-"
    for left in target.parent.glob(f"{prefix}*"):
        number = left.name.removeprefix(prefix)
        if number.isdigit() and not _is_running(int(number)):
            shutil.rmtree(left, ignore_errors=True)
    fresh = target.parent / f"{prefix}{os.getpid()}"
    fresh.mkdir()
    return fresh


def _is_running(process: int) -> bool:
    if process == os.getpid():
        return False
    if os.name != "posix":
        return True  # asking would end the process there
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except OSError:
        return True
    return True


def _swap(fresh: Path, target: Path) -> None:
    """Put `fresh` in the place of `target`; what was there stands at `fresh` afterwards."""
    if not target.exists():
        fresh.rename(target)
    elif not _exchange(fresh, target):
        old = fresh.with_name(f"{fresh.name}.old")
        target.rename(old)
        fresh.rename(target)
        old.rename(fresh)


def _exchange(first: Path, second: Path) -> bool:
    """Exchange two folders in one step; False where the system cannot."""
    names = os.fsencode(first), os.fsencode(second)
    if sys.platform not in {"linux", "darwin"}:
        return False
    library = ctypes.CDLL(None)
    if hasattr(library, "renameat2"):
        done = library.renameat2(_AT_FDCWD, names[0], _AT_FDCWD, names[1], _RENAME_EXCHANGE)
    elif hasattr(library, "renamex_np"):
        done = library.renamex_np(*names, _RENAME_SWAP)
    else:
        return False
    return bool(done == 0)
