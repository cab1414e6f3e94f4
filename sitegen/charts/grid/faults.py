"""A place to collect what is wrong in one block."""

from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.diagnostics import Diagnostic, fault
from sitegen.source import Source, Span


@dataclass
class Faults:
    """The faults of one block while it is read; readers add to it and go on.

    `lost` are the onsets of notes that could not be read, so that nothing under them is reported
    as well.
    """

    source: Source
    found: list[Diagnostic] = field(default_factory=list)
    lost: set[Fraction] = field(default_factory=set)
    _slips: dict[int, int] = field(default_factory=dict)

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

    def slipped(self, line: int, by: int) -> bool:
        """Tell whether the cell before in `line` had slipped sideways by as many columns.

        `by` is 0 for a cell that stands in its place.
        """
        before = self._slips.get(line, 0)
        self._slips[line] = by
        return by != 0 and before == by
