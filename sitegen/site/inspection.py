"""All faults of some write-ups, pages and settings, without drawing anything."""

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from sitegen.diagnostics import Diagnostic, as_record, ordered, printable_json
from sitegen.kinds.kind import ChartKind
from sitegen.site.bug import Bug
from sitegen.site.moves import find_taken_moves, site_addresses
from sitegen.site.outward_links import OutwardLink
from sitegen.site.rights import Quoted, quoted_in, rights_record
from sitegen.site.selection import select
from sitegen.site.site_file import load_settings
from sitegen.site.study import Study, study_file
from sitegen.site.survey import survey_of
from sitegen.site.tally import counted, fault_words


@dataclass(frozen=True)
class Inspection:
    """What was found, and how much was looked at."""

    diagnostics: tuple[Diagnostic, ...]
    bugs: tuple[Bug, ...]
    articles: int
    charts: int
    studies: tuple[Study, ...] = ()

    def summary(self) -> str:
        """Return one line: "3 write-ups, 17 charts: no faults"."""
        looked_at = f"{counted(self.articles, 'write-up')}, {counted(self.charts, 'chart')}"
        return f"{looked_at}: {fault_words(self.diagnostics, len(self.bugs))}"

    def as_json(self) -> str:
        """Return the faults in their public form, a list."""
        return _as_json([as_record(diagnostic) for diagnostic in self.diagnostics])

    def rights(self) -> Iterator[tuple[str, Quoted]]:
        """Return what each write-up quotes, by the name of its file."""
        return ((study.name, quoted_in(study)) for study in self.studies if not study.file.is_page)

    def rights_as_json(self) -> str:
        """Return the same for other programs."""
        return _as_json([rights_record(name, quoted) for name, quoted in self.rights()])


def links_as_json(links: Iterable[OutwardLink]) -> str:
    """Return links for other programs."""
    return _as_json([link.as_record() for link in links])


def _as_json(records: Sequence[Mapping[str, object]]) -> str:
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
    studies = tuple(study_file(file, kinds) for file in files)
    for study in studies:
        found += survey_of(study, strict=False).diagnostics
    found += _taken_moves(studies)
    return Inspection(
        ordered(d.strict() if strict else d for d in found),
        tuple(bug for study in studies for bug in study.bugs),
        len(selection.articles),
        sum(len(study.charts) for study in studies),
        studies,
    )


def _taken_moves(studies: Iterable[Study]) -> tuple[Diagnostic, ...]:
    moved = [
        (study.file, study.article.front)
        for study in studies
        if study.article is not None and study.article.front.moved_from
    ]
    return find_taken_moves(moved, site_addresses(file for file, _ in moved)) if moved else ()
