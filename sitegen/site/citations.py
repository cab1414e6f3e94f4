"""What prose says of charts, `{see ...}` and `{fact ...}`, held against the charts."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from fractions import Fraction

from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact
from sitegen.article import RoleUse
from sitegen.diagnostics import Diagnostic, did_you_mean, fault
from sitegen.kinds.kind import Analysis
from sitegen.source import Source, Span

MOST_OFFERED = 12
_SIGNS = str.maketrans({"♭": "b", "♯": "#", "−": "-", "–": "-"})


@dataclass(frozen=True)
class Citable:
    """A chart as prose can speak of it; `analysis` is None when the chart could not be read."""

    anchor: str
    name: str
    analysis: Analysis | None


@dataclass(frozen=True)
class Citation:
    """What stands in the text for a role that speaks of a chart."""

    text: str
    href: str = ""


def resolve_citation(
    use: RoleUse, charts: Mapping[str, Citable], source: Source
) -> Citation | Diagnostic | None:
    """Return what the role prints or what is wrong with it.

    None for a role that speaks of no chart, and for a fact of a chart that could not be read:
    its own faults are told already.
    """
    if use.name not in {"see", "fact"}:
        return None
    chart = charts.get(use.target)
    if chart is None:
        return unknown_chart(use.target, use.target_span or use.span, charts, source)
    if use.name == "see":
        return Citation(chart.name, f"#{chart.anchor}")
    if chart.analysis is None:
        return None
    return _cite_fact(use, chart.name, chart.analysis.facts, source)


def unknown_chart(
    id_: str, span: Span, charts: Mapping[str, Citable], source: Source
) -> Diagnostic:
    """Return the fault of an id that no chart of the write-up has."""
    message = f'no chart of this write-up has the id "{id_}"'
    return fault("chart-unknown", source, span, message, hint=did_you_mean(id_, charts))


def _cite_fact(
    use: RoleUse, chart_name: str, facts: Sequence[Fact], source: Source
) -> Citation | Diagnostic:
    found = next((fact for fact in facts if fact.path == use.path), None)
    if found is None:
        message = f'{chart_name} has no fact "{use.path}"'
        hint = _near_facts(use.path, [fact.path for fact in facts])
        return fault("fact-unknown", source, use.path_span or use.span, message, hint=hint)
    if use.expected and not agrees(use.expected, found):
        message = f'the text says "{use.expected}", {chart_name} has {_told(found)}'
        hint = f"mend the text or the chart; what counts is {use.path} of {chart_name}"
        hint += f": {found.sentence}" if found.sentence else ""
        return fault("fact-differs", source, use.expected_span or use.span, message, hint=hint)
    return Citation(use.expected or found.text)


def _told(fact: Fact) -> str:
    """Return a fact with its unit and the bars where it is seen: "7 notes", in bars 1 and 2."""
    is_count = isinstance(fact.value, int | Fraction) and fact.unit and fact.unit not in fact.text
    value = f"{fact.text} {fact.unit}" if is_count else fact.text
    bars = bars_said(fact.evidence)
    return f'"{value}"' + (f", in {bars}" if bars else "")


def agrees(expected: str, fact: Fact) -> bool:
    """Return whether what the author wrote says the same as the computed fact.

    Accidentals may be typed either way; the unit may be said or left out.
    """
    same = {fact.text, str(fact.value)}
    same |= {f"{text} {fact.unit}" for text in tuple(same) if fact.unit}
    return _plain(expected) in {_plain(text) for text in same}


def _plain(text: str) -> str:
    return re.sub(r"\s+", " ", text.translate(_SIGNS)).strip()


def _near_facts(path: str, known: Sequence[str]) -> str:
    """Return a hint with the few facts most like `path`, or else of the same part, or else all."""
    near = get_close_matches(path, known, n=3, cutoff=0.6)
    part = path.partition(".")[0]
    siblings = [name for name in known if name.startswith(f"{part}.")]
    some = sorted(near or siblings or known)[:MOST_OFFERED]
    return f"there is: {', '.join(some)}" if some else "nothing can be cited of this chart"
