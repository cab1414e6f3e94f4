"""A system that refuses: commands without the rights that root has over any file, full disks.

Where a system cannot be had to refuse, the tests skip and say why; each way is tried out first, so
that no test passes because nothing was refused.
"""

import os
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

_RIGHTS = "-dac_override,-dac_read_search"
NO_RIGHTS = ("setpriv", f"--bounding-set={_RIGHTS}", f"--inh-caps={_RIGHTS}")


def bound_by_rights(folder: Path) -> tuple[str, ...]:
    """Return what a command line starts with to be bound by the rights of files.

    Skips where nothing makes it so.
    """
    prefix = NO_RIGHTS if os.geteuid() == 0 else ()
    if prefix and shutil.which(prefix[0]) is None:
        pytest.skip("root may read any file, and there is no setpriv to give that right up")
    probe = folder / "probe"
    probe.touch(mode=0o000)
    tried = subprocess.run([*prefix, "cat", probe], capture_output=True, check=False)
    probe.unlink()
    if tried.returncode == 0:
        pytest.skip("this system lets us read a file that nobody may read")
    return prefix


@contextmanager
def closed(path: Path, mode: int = 0o000) -> Iterator[None]:
    """Take the rights to a file or folder away for as long as the block runs."""
    before = path.stat().st_mode
    path.chmod(mode)
    try:
        yield
    finally:
        path.chmod(before)


def own_name_space(folder: Path) -> tuple[str, ...]:
    """Return what a command line starts with to mount disks that nobody else sees; else skips."""
    prefix = ("unshare", "-m")
    if shutil.which(prefix[0]) is None or shutil.which("mount") is None:
        pytest.skip("there is no unshare and mount to make a small disk with")
    mount = ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(folder)]
    tried = subprocess.run([*prefix, *mount], capture_output=True, check=False)
    if tried.returncode != 0:
        pytest.skip("a small disk is made by root only")
    return prefix
