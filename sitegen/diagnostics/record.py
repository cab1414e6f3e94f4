"""A diagnostic as a record for other programs: the form of `check --format json`."""

from typing import TypedDict

from sitegen.diagnostics.diagnostic import Diagnostic


class Record(TypedDict):
    """The public form of a diagnostic; lines and columns from 1, end column exclusive."""

    code: str
    severity: str
    message: str
    file: str
    line: int
    column: int
    end_line: int
    end_column: int
    hint: str


def as_record(diagnostic: Diagnostic) -> Record:
    """Return the diagnostic in its public form."""
    return Record(
        code=diagnostic.code,
        severity=str(diagnostic.severity),
        message=diagnostic.message,
        file=diagnostic.source.path,
        line=diagnostic.span.line,
        column=diagnostic.span.column,
        end_line=diagnostic.span.end_line,
        end_column=diagnostic.span.end_column,
        hint=diagnostic.hint,
    )
