"""What is said of a page while it is written: the frames of its faults, as in a terminal."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from sitegen.diagnostics import Diagnostic, draw_frame
from sitegen.site.bug import Bug
from sitegen.site.content import shown
from sitegen.site.tally import counted

MOST_SHOWN = 50
"""How many frames a page is sent; whoever has more mends these first."""

_IN_TRACE = re.compile(r'File "([^"]+)", line (\d+)')


class UnfitThemeError(Exception):
    """A file of the theme cannot be read; the message says which one, and why."""


@dataclass(frozen=True)
class Remark:
    """A fault told by its frame; `weight` is "error", "warning" or "note"."""

    weight: str
    frame: str


def of_faults(diagnostics: Iterable[Diagnostic]) -> tuple[Remark, ...]:
    """Return what is said of faults in the content."""
    return tuple(Remark(str(found.severity), draw_frame(found)) for found in diagnostics)


def of_bugs(bugs: Iterable[Bug], theme: Path) -> tuple[Remark, ...]:
    """Return what is said of failures: a theme's own with its line, any other as ours."""
    return tuple(_of_bug(bug, theme) for bug in bugs)


def _of_bug(bug: Bug, theme: Path) -> Remark:
    last = bug.trace.strip().rpartition("\n")[2]
    places = [(Path(path), int(line)) for path, line in _IN_TRACE.findall(bug.trace)]
    inside = [(path, line) for path, line in places if path.is_relative_to(theme)]
    name, _, message = last.partition(": ")
    if name.endswith(UnfitThemeError.__name__):
        return Remark("error", f"error: {message}")
    if inside:
        return Remark("error", _theme_frame(*inside[-1], last.partition(": ")[2] or last))
    if last.startswith("FileNotFoundError") and str(theme) in last:
        return Remark("error", f"{shown(theme)}: error: {last.partition(': ')[2]}")
    ours = "This is a fault of sitegen and not of yours. Please report it with the write-up."
    return Remark("error", f"sitegen failed while {bug.doing}: {last}\n{ours}")


def _theme_frame(path: Path, number: int, message: str) -> str:
    """Return the frame for a line of a theme; its language tells no column."""
    head = f"{shown(path)}:{number}: error: {message}"
    try:
        line = path.read_text(encoding="utf-8").split("\n")[number - 1]
    except (OSError, ValueError, IndexError):
        return head
    return f"{head}\n{' ' * len(str(number))} |\n{number} | {line}"


def as_state(page: str, remarks: Sequence[Remark]) -> dict[str, object]:
    """Return what an open page is told: which state it should have, and its frames.

    Warnings and notes are counted in words, since they are shown folded.
    """
    errors = [remark.frame for remark in remarks if remark.weight == "error"]
    others = [remark for remark in remarks if remark.weight != "error"]
    numbers = {name: sum(r.weight == name for r in others) for name in ("warning", "note")}
    return {
        "page": page,
        "faults": errors[:MOST_SHOWN],
        "more": max(0, len(errors) - MOST_SHOWN),
        "quiet": [remark.frame for remark in others][:MOST_SHOWN],
        "quietly": ", ".join(counted(n, name) for name, n in numbers.items() if n),
    }
