"""The chart kinds; a new one is one file and one line here."""

from sitegen.kinds.changes import CHANGES
from sitegen.kinds.excerpt import EXCERPT
from sitegen.kinds.form import FORM
from sitegen.kinds.kind import ChartKind
from sitegen.kinds.notation import NOTATION

KINDS: tuple[ChartKind, ...] = (NOTATION, CHANGES, FORM, EXCERPT)
"""All kinds, in the order of the author's guide."""

__all__ = ["KINDS", "ChartKind"]
