"""What a reader hands on."""

from dataclasses import dataclass
from typing import Any

from sitegen.diagnostics import Diagnostic


@dataclass(frozen=True)
class Reading:
    """What a reader made of a fence: the chart (None when nothing can be saved) and all faults.

    `id` and `title` are the head's, "" when it has none; they are given even when the chart is
    lost, so that references to it are not reported as well. `uses` stands for the contents of the
    files that it was made of, "" where there are none.
    """

    id: str
    title: str
    chart: Any | None
    diagnostics: tuple[Diagnostic, ...]
    uses: str = ""
