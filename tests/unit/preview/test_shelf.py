"""The shelf gives back what was put on it, and uses room again."""

from contextlib import closing

from sitegen.preview.shelf import Shelf


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
