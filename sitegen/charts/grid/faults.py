"""A place to collect what is wrong in one block."""

from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.diagnostics import Diagnostic, fault
from sitegen.source import Source, Span


@dataclass
class Faults:
    """The faults of one block while it is read; readers add to it and go on.

    What follows from a fault is not reported as well: `lost` are the onsets of notes that could
    not be read and `lost_cells` their lines and columns; lines in `muted` have had a fault that
    explains all others in them, and so have the codes in `dropped` for the time being.
    """

    source: Source
    found: list[Diagnostic] = field(default_factory=list)
    lost: set[Fraction] = field(default_factory=set)
    lost_cells: set[tuple[int, int]] = field(default_factory=set)
    muted: set[int] = field(default_factory=set)
    dropped: frozenset[str] = frozenset()
    _slips: dict[int, int] = field(default_factory=dict)
    _slipped_lines: dict[int, Diagnostic] = field(default_factory=dict)

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
        """Add one fault; its weight is the catalogue's. A mere consequence is dropped."""
        if span.line in self.muted or code in self.dropped:
            return
        self.found.append(
            fault(code, self.source, span, message, label=label, hint=hint, related=related)
        )

    def add_bar_line(self, span: Span, message: str, hint: str, this: Span) -> None:
        """Add the fault of a bar line that stands in the wrong column."""
        before = len(self.found)
        self.add("bar-line", span, message, hint=hint, related=((this, "this one"),))
        if len(self.found) > before:
            self._slipped_lines[span.line] = self.found[-1]

    def is_behind_bar_line(self, span: Span) -> bool:
        """Tell whether a cell that slipped as far as its row's bar line stands behind that one.

        Where the cell stands before it, the cell is where the slip begins, and the fault of the
        bar line is withdrawn.
        """
        slipped = self._slipped_lines.get(span.line)
        if slipped is None:
            return False
        if slipped.span.column < span.column:
            return True
        self.found.remove(slipped)
        del self._slipped_lines[span.line]
        return False

    def slipped(self, line: int, by: int) -> bool:
        """Tell whether the cell before in `line` had slipped sideways by as many columns.

        `by` is 0 for a cell that stands in its place.
        """
        before = self._slips.get(line, 0)
        self._slips[line] = by
        return by != 0 and before == by
