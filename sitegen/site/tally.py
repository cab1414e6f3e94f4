"""Counts in words, for the line at the end of a command."""

from collections.abc import Iterable

from sitegen.diagnostics import Diagnostic, Severity


def counted(number: int, noun: str) -> str:
    """Return a number with its noun: "1 chart", "3 charts"."""
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"


def fault_words(diagnostics: Iterable[Diagnostic], failures: int) -> str:
    """Return how many errors and warnings there are: "2 errors, 1 warning", "no faults".

    `failures` are those of the program itself; they are told only where there are some.
    """
    weights = [diagnostic.severity for diagnostic in diagnostics]
    parts = [
        counted(weights.count(severity), str(severity))
        for severity in Severity
        if severity in weights
    ]
    parts = parts or ["no faults"]
    if failures:
        parts.append(f"{counted(failures, 'failure')} of sitegen")
    return ", ".join(parts)
