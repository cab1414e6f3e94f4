"""All faults of some write-ups, pages and settings, without drawing anything."""

import json
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from sitegen.diagnostics import Diagnostic, as_record, ordered, printable_json
from sitegen.kinds.kind import ChartKind
from sitegen.site.bug import Bug
from sitegen.site.selection import select
from sitegen.site.site_file import load_settings
from sitegen.site.study import study_file
from sitegen.site.tally import counted, fault_words


@dataclass(frozen=True)
class Inspection:
    """What was found, and how much was looked at."""

    diagnostics: tuple[Diagnostic, ...]
    bugs: tuple[Bug, ...]
    articles: int
    charts: int

    def summary(self) -> str:
        """Return one line: "3 write-ups, 17 charts: no faults"."""
        looked_at = f"{counted(self.articles, 'write-up')}, {counted(self.charts, 'chart')}"
        return f"{looked_at}: {fault_words(self.diagnostics, len(self.bugs))}"

    def as_json(self) -> str:
        """Return the faults in their public form, a list."""
        records = [as_record(diagnostic) for diagnostic in self.diagnostics]
        return printable_json(json.dumps(records, ensure_ascii=False, indent=2))


def inspect(
    paths: Iterable[Path], kinds: tuple[ChartKind, ...], *, strict: bool = False
) -> Inspection:
    """Return all faults at the paths; with `strict`, warnings count as errors.

    Raises RefusedError for a path that stands for nothing.
    """
    selection = select(paths)
    found = list(selection.diagnostics)
    for content in selection.contents:
        found += load_settings(content).diagnostics
    files = (*selection.articles, *selection.pages)
    studies = [study_file(file, kinds) for file in files]
    for study in studies:
        found += study.diagnostics
    return Inspection(
        ordered(d.strict() if strict else d for d in found),
        tuple(bug for study in studies for bug in study.bugs),
        len(selection.articles),
        sum(len(study.charts) for study in studies),
    )
