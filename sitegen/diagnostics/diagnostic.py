"""The value that names one fault."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum

from sitegen.diagnostics.catalogue import CATALOGUE
from sitegen.source import Source, Span

LONGEST_MESSAGE, LONGEST_HINT = 400, 1000
"""What is quoted in a message may be a whole file without a line end: nobody reads that."""


class Severity(StrEnum):
    """How much a fault weighs: an error keeps a page from being published, the others do not."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True)
class Diagnostic:
    """One fault: what it is, where it stands and what to do about it.

    `label` stands under the caret; `hint` is one sentence that helps to mend it;
    `related` are other places of the same file that belong to it, each with a word.
    """

    code: str
    severity: Severity
    message: str
    source: Source
    span: Span
    label: str = ""
    hint: str = ""
    related: tuple[tuple[Span, str], ...] = ()

    @property
    def is_error(self) -> bool:
        """True when the fault keeps its page from being published."""
        return self.severity is Severity.ERROR

    def strict(self) -> "Diagnostic":
        """Return the same fault with a warning counted as an error."""
        if self.severity is Severity.WARNING:
            return replace(self, severity=Severity.ERROR)
        return self


def fault(
    code: str,
    source: Source,
    span: Span,
    message: str,
    *,
    label: str = "",
    hint: str = "",
    related: tuple[tuple[Span, str], ...] = (),
) -> Diagnostic:
    """Return a diagnostic with the severity that the catalogue gives to `code`.

    An overlong message or hint loses what stands in its middle.
    Raises KeyError when the catalogue has no such code.
    """
    severity = Severity(CATALOGUE[code].severity)
    message, hint = _shortened(message, LONGEST_MESSAGE), _shortened(hint, LONGEST_HINT)
    return Diagnostic(code, severity, message, source, span, label, hint, related)


def _shortened(text: str, longest: int) -> str:
    half = longest // 2
    return text if len(text) <= longest else f"{text[:half]} … {text[-half:]}"


def ordered(diagnostics: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """Return the diagnostics without doubles, by file, place and code."""
    by_place = sorted(diagnostics, key=lambda d: (d.source.path, d.span, d.code, d.message))
    unique: dict[tuple[str, Span, str, str], Diagnostic] = {}
    for diagnostic in by_place:
        key = (diagnostic.source.path, diagnostic.span, diagnostic.code, diagnostic.message)
        unique.setdefault(key, diagnostic)
    return tuple(unique.values())
