"""One article checked as the command line checks it, and what must never come of that."""

import signal
import traceback
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from types import FrameType

from sitegen.diagnostics import Diagnostic, as_record, draw_frame
from sitegen.kinds import KINDS
from sitegen.site.inspection import inspect

BOUND = 20.0
"""Seconds within which an article of some kilobytes must be told or let through.

It is no measure of speed: a sound article takes a small part of one second.
"""


class OverrunError(BaseException):
    """Work that took longer than its bound; no handler of failures takes it for one."""


@dataclass(frozen=True)
class Outcome:
    """What came of an article: the traces of failures, whether it hung, faults without a place."""

    traces: tuple[str, ...] = ()
    hung: bool = False
    lost: tuple[str, ...] = ()
    faults: int = 0
    errors: int = 0

    @property
    def is_well(self) -> bool:
        """True where the article was read, or was refused at places in it."""
        return not (self.traces or self.hung or self.lost)


def new_content(folder: Path) -> Path:
    """Make a content folder for one article and return where that stands."""
    path = folder / "breakdowns" / "example" / "article.md"
    path.parent.mkdir(parents=True)
    (folder / "site.toml").write_text('title = "Examples"\n', encoding="utf-8")
    return path


def check_article(path: Path, data: bytes, bound: float = BOUND) -> Outcome:
    """Return what comes of checking `data` as the article at `path` in a content folder."""
    path.write_bytes(data)
    try:
        with _bounded(bound):
            found = inspect([path.parents[2]], KINDS)
            for fault in found.diagnostics:
                draw_frame(fault).encode()
    except OverrunError:
        return Outcome(hung=True)
    except Exception:  # noqa: BLE001 - whatever is raised here is what is looked for
        return Outcome(traces=(traceback.format_exc(),))
    traces = tuple(bug.trace for bug in found.bugs)
    lost = tuple(draw_frame(fault) for fault in found.diagnostics if not has_place(fault))
    errors = sum(fault.is_error for fault in found.diagnostics)
    return Outcome(traces, lost=lost, faults=len(found.diagnostics), errors=errors)


def has_place(fault: Diagnostic) -> bool:
    """Return whether a fault names a line and columns that its file has."""
    record, lines = as_record(fault), fault.source.lines
    if not 1 <= record["line"] <= record["end_line"] <= len(lines):
        return False
    start, end = (record["line"], record["column"]), (record["end_line"], record["end_column"])
    within = record["column"] <= len(lines[start[0] - 1]) + 1
    return bool(record["code"]) and record["column"] >= 1 and within and start <= end


@contextmanager
def _bounded(seconds: float) -> Iterator[None]:
    """Raise OverrunError when the work inside takes longer."""

    def stop(_number: int, _frame: FrameType | None) -> None:
        raise OverrunError

    before = signal.signal(signal.SIGALRM, stop)
    signal.setitimer(signal.ITIMER_REAL, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)
