"""What is collected while the Markdown library goes over a body, and where it stands."""

from collections.abc import MutableMapping
from dataclasses import dataclass, field
from typing import Any, cast

from sitegen.article.places import PlacedText
from sitegen.article.reading import RoleUse
from sitegen.diagnostics import Diagnostic
from sitegen.source import Source, Span

_KEY = "tracker"
_NOWHERE = PlacedText("", ())


@dataclass
class Tracker:
    """Roles and faults found so far.

    `block` is the text that is gone over; `base` is how far into it the library has begun
    anew, as it does inside the description of a picture.
    """

    source: Source
    block: PlacedText = _NOWHERE
    base: int = 0
    roles: list[RoleUse] = field(default_factory=list)
    faults: list[Diagnostic] = field(default_factory=list)

    def span(self, start: int, end: int) -> Span:
        """Return the file's span for places in the text that the library sees."""
        return self.block.span(self.base + start, self.base + end)

    def report(self, *faults: Diagnostic) -> None:
        """Collect faults."""
        self.faults.extend(faults)


def with_tracker(tracker: Tracker) -> dict[str, Any]:
    """Return an environment for the library that carries `tracker`."""
    return {_KEY: tracker}


def tracker_of(env: MutableMapping[str, Any]) -> Tracker:
    """Return the tracker of an environment."""
    return cast("Tracker", env[_KEY])
