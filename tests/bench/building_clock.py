"""A process timed: how long it ran and the most memory that it or a child of it held."""

import os
import subprocess
import sys
import time
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

_UNIT = 1 if sys.platform == "darwin" else 1024  # of ru_maxrss in getrusage(2), macOS and Linux


class FailedRunError(RuntimeError):
    """A process that was to be timed ended badly."""


@dataclass(frozen=True)
class Run:
    """How a process ran: when it `began`, its `seconds` by the clock on the wall, what it printed.

    `processor` is the processor time in seconds that it and its children took, `peak` in bytes
    the largest resident set of any one of these processes.
    """

    began: float
    seconds: float
    processor: float
    peak: int
    printed: str


def timed(command: Sequence[str], more: Mapping[str, str] | None = None) -> Run:
    """Run a command, with `more` in its environment, and return how it ran.

    Raises FailedRunError when its exit status is not 0.
    """
    environment = {**os.environ, **(more or {})}
    began = time.time()
    with subprocess.Popen(
        command, env=environment, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True
    ) as process:
        printed = process.stdout.read() if process.stdout else ""
        _, status, used = os.wait4(process.pid, 0)
        seconds = time.time() - began
        process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode:
        raise FailedRunError(f"{' '.join(command)} ended with {process.returncode}")
    processor = used.ru_utime + used.ru_stime
    return Run(began, seconds, processor, used.ru_maxrss * _UNIT, printed)


def timed_python(arguments: Sequence[str], root: Path, more: Mapping[str, str]) -> Run:
    """Run this Python on some arguments, with the modules of `root`."""
    return timed([sys.executable, *arguments], {"PYTHONPATH": os.fspath(root), **more})
