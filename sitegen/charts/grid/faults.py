"""A place to collect what is wrong in one block."""

from dataclasses import dataclass, field

from sitegen.diagnostics import Diagnostic, fault
from sitegen.source import Source, Span


@dataclass
class Faults:
    """The faults of one block while it is read; readers add to it and go on."""

    source: Source
    found: list[Diagnostic] = field(default_factory=list)

    def add(
        self,
        code: str,
        span: Span,
        message: str,
        *,
        label: str = "",
        hint: str = "",
        related: tuple[tuple[Span, str], ...] = (),
    ) -> None:
        """Add one fault; its weight is the catalogue's."""
        self.found.append(
            fault(code, self.source, span, message, label=label, hint=hint, related=related)
        )
