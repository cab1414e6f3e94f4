"""What is wrong with a chord symbol, and where in it."""

from collections.abc import Callable
from functools import cached_property


class ChordSymbolError(ValueError):
    """Text that is no chord symbol.

    `code` is a code of the catalogue; `message` names the fault and `hint` says what helps;
    `start` and `end` are code-point offsets of the faulty part within the text. A hint that takes
    a search may be given as a call: many a fault is caught and never told.
    """

    def __init__(
        self, code: str, message: str, start: int, end: int, hint: str | Callable[[], str] = ""
    ) -> None:
        super().__init__(message)
        self.code = code
        self.message = message
        self.start = start
        self.end = end
        self._hint = hint

    @cached_property
    def hint(self) -> str:
        """What helps; "" where nothing is known to."""
        return self._hint if isinstance(self._hint, str) else self._hint()
