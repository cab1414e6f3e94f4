"""The shelf gives back what was put on it, and uses room again."""

import errno
import tempfile
from contextlib import closing
from pathlib import Path
from typing import IO

import pytest

from sitegen.preview.shelf import Shelf
from sitegen.site.refusal import RefusedError


def test_what_was_put_is_found() -> None:
    with closing(Shelf()) as shelf:
        slots = [shelf.put(data) for data in (b"one", b"", b"three")]

        assert [shelf.get(slot) for slot in slots] == [b"one", b"", b"three"]


def test_room_is_used_again() -> None:
    with closing(Shelf()) as shelf:
        first, second = shelf.put(b"long enough"), shelf.put(b"other")
        shelf.drop(first)
        third = shelf.put(b"short")
        shelf.drop(third)
        fourth = shelf.put(b"long enoug!")

        assert third.start == fourth.start == first.start
        assert shelf.get(second) == b"other"
        assert shelf.get(fourth) == b"long enoug!"


@pytest.mark.skipif(
    not Path("/dev/full").exists(), reason="there is no device that is always full"
)
def test_a_full_disk_is_told_at_once_and_spoils_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    with closing(Shelf()) as shelf:
        first = shelf.put(b"one")
        own = shelf._file  # noqa: SLF001 - to have the disk fill up for a while

        def open_full(*, prefix: str, buffering: int = -1) -> IO[bytes]:
            del prefix
            return Path("/dev/full").open("r+b", buffering)

        monkeypatch.setattr(tempfile, "TemporaryFile", open_full)
        with closing(Shelf()) as full:
            shelf._file = full._file  # noqa: SLF001 - as above
            with pytest.raises(OSError, match="No space left"):
                shelf.put(b"two")
            shelf._file = own  # noqa: SLF001 - as above
            second = shelf.put(b"two")

        assert [shelf.get(first), shelf.get(second)] == [b"one", b"two"]


def test_without_room_for_any_file_the_user_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(**_: object) -> None:
        raise FileNotFoundError(errno.ENOENT, "No usable temporary directory found")

    monkeypatch.setattr(tempfile, "TemporaryFile", refuse)

    with pytest.raises(RefusedError, match=r"no usable temporary directory found; .* TMPDIR"):
        Shelf()
