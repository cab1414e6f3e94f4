"""What was found in one write-up's charts, for people and, as JSON, for other programs."""

import json
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from io import StringIO
from pathlib import Path
from textwrap import fill
from typing import TypeGuard

from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact
from sitegen.diagnostics import Diagnostic, as_record, printable, printable_json
from sitegen.kinds.kind import Analysis, ChartKind
from sitegen.score.chart import beat_text
from sitegen.site.bug import Bug
from sitegen.site.selection import select_article
from sitegen.site.study import StudiedChart, study_file

VERSION = 1
TEXT_WIDTH = 100


@dataclass(frozen=True)
class Explanation:
    """The charts that could be read, and all faults of the write-up."""

    charts: tuple[StudiedChart, ...]
    diagnostics: tuple[Diagnostic, ...]
    bugs: tuple[Bug, ...]

    def as_json(self) -> str:
        """Return the standing public form, version 1."""
        record = {
            "version": VERSION,
            "charts": [_record(chart) for chart in self.charts],
            "diagnostics": [as_record(diagnostic) for diagnostic in self.diagnostics],
        }
        return printable_json(json.dumps(record, ensure_ascii=False, indent=2, default=_exact))

    def as_text(self) -> str:
        """Return tables for a reader, a few a chart."""
        return printable("\n\n\n".join(_describe(chart) for chart in self.charts))


def explain_article(path: Path, kinds: tuple[ChartKind, ...]) -> Explanation:
    """Return what is found in the charts of the write-up at `path`.

    Raises RefusedError when `path` is no write-up.
    """
    study = study_file(select_article(path), kinds)
    readable = tuple(chart for chart in study.charts if chart.analysis is not None)
    return Explanation(readable, study.diagnostics, study.bugs)


def _record(chart: StudiedChart) -> dict[str, object]:
    analysis = _analysis(chart)
    named = chart.named
    own = {"id": named.id, "kind": named.chart.kind.name, "name": named.name}
    facts = {fact.path: _fact_record(fact) for fact in analysis.facts}
    return {**own, **analysis.record, **own, "facts": facts}


def _fact_record(fact: Fact) -> dict[str, object]:
    evidence = [
        {"bar": place.bar, "beat": beat_text(place.beat), "notes": place.notes}
        for place in fact.evidence
    ]
    return {
        "value": fact.value,
        "text": fact.text,
        "unit": fact.unit,
        "sentence": fact.sentence,
        "evidence": evidence,
    }


def _exact(value: object) -> object:
    """Return what JSON does not know in a form that it does: fractions as exact text."""
    if isinstance(value, Fraction):
        return str(value)
    if isinstance(value, Mapping):
        return dict(value)
    raise TypeError(f"no public form for {type(value).__name__}")


def _analysis(chart: StudiedChart) -> Analysis:
    if chart.analysis is None:
        raise ValueError("a chart that could not be read explains nothing")
    return chart.analysis


def _describe(chart: StudiedChart) -> str:
    """Return a heading, the plain values, what the notes say, then the lists as tables."""
    record = {k: v for k, v in _analysis(chart).record.items() if k not in {"id", "kind", "title"}}
    title = chart.named.chart.reading.title
    heading = f"{chart.named.name}{f': {title}' if title else ''}"
    about = f'{chart.named.chart.kind.name} "{chart.named.id}"'
    plain = {key: value for key, value in record.items() if not _is_table(value)}
    lines = [f"{heading} ({about})", *(f"  {key}: {_cell(v)}" for key, v in plain.items() if v)]
    lines += _sentences(_analysis(chart).facts)
    tables = [_table(key, value) for key, value in record.items() if _is_table(value)]
    tables.append(_table("facts", [_fact_row(fact) for fact in _analysis(chart).facts]))
    return "\n\n".join(["\n".join(lines), *(table for table in tables if table)])


def _sentences(facts: Sequence[Fact]) -> list[str]:
    """Return the facts that tell something by themselves, a line each, long ones folded."""
    told = [fact.sentence for fact in facts if fact.sentence]
    folded = [
        fill(text, TEXT_WIDTH, initial_indent="  - ", subsequent_indent="    ") for text in told
    ]
    return ["", "  what the notes say", *folded] if told else []


def _fact_row(fact: Fact) -> dict[str, object]:
    is_plain = re.fullmatch(r"[-−\d./ ]+", fact.text)
    value = f"{fact.text} {fact.unit}".rstrip() if is_plain else fact.text
    return {"fact": fact.path, "value": value, "seen in": bars_said(fact.evidence)}


def _is_table(value: object) -> TypeGuard[Sequence[Mapping[str, object]]]:
    return isinstance(value, list | tuple) and all(isinstance(row, Mapping) for row in value)


def _table(name: str, rows: Iterable[Mapping[str, object]]) -> str:
    """Return the rows under their keys; columns without any value are left out."""
    from rich.box import SIMPLE  # noqa: PLC0415 - only this form needs it
    from rich.console import Console  # noqa: PLC0415 - as above
    from rich.table import Table  # noqa: PLC0415 - as above

    rows = list(rows)
    columns = [
        key for key in (rows[0] if rows else ()) if any(_cell(row.get(key)) for row in rows)
    ]
    if not columns:
        return ""
    table = Table(box=SIMPLE, pad_edge=False, show_edge=False)
    for column in columns:
        table.add_column(column.replace("_", " "))
    for row in rows:
        table.add_row(*(_cell(row.get(column)) for column in columns))
    text = StringIO()
    Console(file=text, width=TEXT_WIDTH, markup=False, highlight=False).print(table)
    lines = [line.rstrip() for line in text.getvalue().splitlines()]
    return "\n".join([f"  {name}", *(f"  {line}" if line else "" for line in lines)])


def _cell(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, list | tuple):
        return " ".join(_cell(item) for item in value)
    return str(value)
