"""One build at a time: whoever finds another one at work on the same folder is told so."""

import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from filelock import FileLock, Timeout

from sitegen.site.refusal import RefusedError


@contextmanager
def only_build(path: Path, target: Path) -> Iterator[None]:
    """Hold the lock at `path` for the block; the system frees it when the process ends.

    Raises RefusedError while another process holds it to fill `target`.
    """
    while True:
        lock = FileLock(path, thread_local=False)
        try:
            lock.acquire(blocking=False)
        except Timeout as held:
            raise RefusedError(
                f"another build is filling {target} at this moment: wait until it has ended"
            ) from held
        if _is_at(lock, path):
            break
        lock.release()  # the build before us took the file away between our two steps
    try:
        yield
    finally:
        with suppress(OSError):  # Windows keeps a file that is open
            path.unlink()
        lock.release()


def _is_at(lock: FileLock, path: Path) -> bool:
    """Return whether the file that is locked is the one that others will find at `path`."""
    held = lock._context.lock_file_fd  # noqa: SLF001 - the library has no public way to ask
    try:
        return held is not None and os.path.samestat(os.fstat(held), path.stat())
    except OSError:
        return False
