"""What a chart may ask for of the folder that its write-up stands in."""

from typing import Protocol


class BesideError(Exception):
    """A file beside the text that cannot be had; the text says why, as a whole clause."""

    def __init__(self, message: str, hint: str = "") -> None:
        super().__init__(message)
        self.hint = hint


class Beside(Protocol):
    """Gives the bytes of files in a write-up's folder, and of no others."""

    def read(self, name: str, most: int) -> bytes:
        """Return what a file holds; raises BesideError, for more than `most` bytes too."""
