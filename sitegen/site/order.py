"""What somebody asks of a build."""

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sitegen.kinds.kind import ChartKind


@dataclass(frozen=True)
class Order:
    """What to build and how; `theme` and `jobs` are None where the user leaves them to us.

    `cache` is the folder for what a later build need not make again, None for no such help;
    `force` takes `out` away whoever made it.
    """

    content: Path
    out: Path
    kinds: "tuple[ChartKind, ...]"
    theme: str | None = None
    jobs: int | None = None
    drafts: bool = False
    strict: bool = False
    cache: Path | None = None
    force: bool = False
