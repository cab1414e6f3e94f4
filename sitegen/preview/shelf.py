"""Where made pages lie: a file without a name, which goes when its process does."""

import tempfile
from dataclasses import dataclass

from sitegen.site.refusal import RefusedError, reason_of

_CURE = "make room on the disk, or name another folder for such files in TMPDIR"


@dataclass(frozen=True)
class Slot:
    """A place on the shelf, in bytes; `room` is how much it could hold."""

    start: int
    size: int
    room: int


class Shelf:
    """Holds pieces of data outside the memory; the room of what is dropped is used again.

    Raises RefusedError where no file can be made for it.
    """

    def __init__(self) -> None:
        try:
            # What a full disk did not take must not wait here for the next try.
            self._file = tempfile.TemporaryFile(prefix="sitegen-", buffering=0)  # noqa: SIM115 - closed by `close`
        except OSError as wrong:
            raise RefusedError(
                f"made pages cannot be kept: {reason_of(wrong)}; {_CURE}"
            ) from wrong
        self._end = 0
        self._free: list[Slot] = []

    def put(self, data: bytes) -> Slot:
        """Keep a piece of data. Raises OSError when there is no room on the disk."""
        fit = next((slot for slot in self._free if slot.room >= len(data)), None)
        if fit is None:
            slot = Slot(self._end, len(data), len(data))
        else:
            slot = Slot(fit.start, len(data), fit.room)
        self._file.seek(slot.start)
        left = memoryview(data)
        while left:
            left = left[self._file.write(left) :]
        if fit is None:
            self._end += len(data)
        else:
            self._free.remove(fit)
        return slot

    def get(self, slot: Slot) -> bytes:
        """Return the data in a slot."""
        self._file.seek(slot.start)
        return self._file.read(slot.size)

    def drop(self, slot: Slot) -> None:
        """Give the room of a slot away."""
        self._free.append(slot)

    def close(self) -> None:
        """Give everything away."""
        self._file.close()
