"""Bytes become text; what cannot be text is told with its place and replaced."""

import pytest

from sitegen.article import load_source
from sitegen.source import Span


def test_a_byte_order_mark_and_foreign_line_ends_leave_no_trace() -> None:
    source, faults = load_source(b"\xef\xbb\xbfone\r\ntwo\rthree\n", "a.md")

    assert source.text == "one\ntwo\nthree\n"
    assert source.path == "a.md"
    assert faults == ()


@pytest.mark.parametrize(
    ("data", "text", "columns"),
    [
        (b"caf\xe9 au", "caf\ufffd au", [4]),
        (b"\xff\xfea", "\ufffda", [1]),
        ("é".encode() + b"\x80x", "é\ufffdx", [2]),
        (b"a\xed\xa0\x80b", "a\ufffdb", [2]),  # a lone surrogate, which UTF-8 must not hold
        (b"a\xe2\x99", "a\ufffd", [2]),  # ♭ cut off at the end
        (b"\xe9\xe8 \xe7", "\ufffd \ufffd", [1, 3]),
        (b"\xe9\xe2\x99\xad", "\ufffd♭", [1]),
    ],
)
def test_bad_bytes_are_replaced_and_told(data: bytes, text: str, columns: list[int]) -> None:
    source, faults = load_source(b"first\n" + data, "a.md")

    assert source.text == "first\n" + text
    assert [fault.code for fault in faults] == ["text-bytes"] * len(columns)
    assert [fault.span for fault in faults] == [Span(2, c, 2, c + 1) for c in columns]


def test_the_first_bad_byte_is_named() -> None:
    _, faults = load_source(b"\xe9", "a.md")

    assert "E9" in faults[0].message


@pytest.mark.parametrize("control", ["\x00", "\x08", "\x1b", "\x7f", "\x0c"])
def test_control_characters_are_replaced_and_told(control: str) -> None:
    source, faults = load_source(f"a\n♭{control}b".encode(), "a.md")

    assert source.text == "a\n♭\ufffdb"
    assert [(fault.code, fault.span) for fault in faults] == [("text-control", Span(2, 2, 2, 3))]
    assert f"U+{ord(control):04X}" in faults[0].message


def test_tabs_and_signs_beyond_the_first_plane_are_text() -> None:
    source, faults = load_source("\t𝄪🎵é\n".encode(), "a.md")

    assert source.text == "\t𝄪🎵é\n"
    assert faults == ()
