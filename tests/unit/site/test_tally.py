"""Counts are told in words."""

import pytest

from sitegen.diagnostics import Diagnostic, Severity
from sitegen.site.tally import counted, fault_words
from sitegen.source import Source, Span


def of(*severities: Severity) -> list[Diagnostic]:
    source, span = Source("a", ""), Span(1, 1, 1, 1)
    return [Diagnostic("x", severity, "", source, span) for severity in severities]


@pytest.mark.parametrize(("number", "words"), [(0, "0 charts"), (1, "1 chart"), (2, "2 charts")])
def test_one_has_no_plural(number: int, words: str) -> None:
    assert counted(number, "chart") == words


def test_faults_are_counted_by_weight() -> None:
    faults = of(Severity.WARNING, Severity.ERROR, Severity.NOTE, Severity.ERROR)

    assert fault_words(faults, 0) == "2 errors, 1 warning, 1 note"
    assert fault_words([], 0) == "no faults"
    assert fault_words([], 1) == "no faults, 1 failure of sitegen"
