"""From the bytes of a file to its text: UTF-8, line feeds, nothing that cannot be printed."""

import re

from sitegen.diagnostics import Diagnostic, fault
from sitegen.source import Source

_BYTE_ORDER_MARK = b"\xef\xbb\xbf"
_STAND_IN = "\ufffd"
# C0 controls but tab and line feed, DEL, and halves of a surrogate pair.
_UNPRINTABLE = re.compile("[\x00-\x08\x0b-\x1f\x7f\ud800-\udfff]")


def load_source(data: bytes, path: str) -> tuple[Source, tuple[Diagnostic, ...]]:
    """Return the text of a file with what is wrong in it replaced by U+FFFD, and the faults.

    A byte order mark is dropped; CRLF and CR become line feeds. `path` is the name that
    people are shown.
    """
    text, bad_places = _decode(data.removeprefix(_BYTE_ORDER_MARK))
    source, faults = without_controls(Source(path, text))
    bytes_faults = (_bytes_fault(source, place, byte) for place, byte in bad_places)
    return source, (*bytes_faults, *faults)


def without_controls(source: Source) -> tuple[Source, tuple[Diagnostic, ...]]:
    """Return the source with U+FFFD for what cannot be printed, and a fault for each of them."""
    controls = [match.start() for match in _UNPRINTABLE.finditer(source.text)]
    if not controls:
        return source, ()
    clean = Source(source.path, _UNPRINTABLE.sub(_STAND_IN, source.text))
    faults = (_control_fault(clean, place, ord(source.text[place])) for place in controls)
    return clean, tuple(faults)


def _decode(data: bytes) -> tuple[str, list[tuple[int, int]]]:
    """Return the text and, for each stretch of bad bytes, its place there and its first byte."""
    pieces: list[str] = []
    bad: list[tuple[int, int]] = []
    length = start = 0
    data = re.sub(rb"\r\n?", b"\n", data)
    while start < len(data):
        piece, taken = _good_piece(data, start)
        length += len(piece)
        pieces.append(piece)
        start += taken
        if start < len(data):
            bad.append((length, data[start]))
            start = _after_bad_bytes(data, start)
            pieces.append(_STAND_IN)
            length += 1
    return "".join(pieces), bad


def _good_piece(data: bytes, start: int) -> tuple[str, int]:
    """Return the longest readable text at `start` and how many bytes it takes."""
    try:
        return data[start:].decode(), len(data) - start
    except UnicodeDecodeError as wrong:
        return data[start : start + wrong.start].decode(), wrong.start


def _after_bad_bytes(data: bytes, start: int) -> int:
    """Return where the run of bad bytes ends: at ASCII or at the next readable character."""
    end = start + 1
    while end < len(data) and data[end] >= 0x80 and not _opens_character(data, end):  # noqa: PLR2004
        end += 1
    return end


def _opens_character(data: bytes, start: int) -> bool:
    try:
        return bool(data[start : start + 4].decode())
    except UnicodeDecodeError as wrong:
        return wrong.start > 0


def _bytes_fault(source: Source, place: int, byte: int) -> Diagnostic:
    return fault(
        "text-bytes",
        source,
        source.span(place, place + 1),
        f"the file is not UTF-8 here: byte {byte:02X}",
        hint="save the file as UTF-8 in your editor",
    )


def _control_fault(source: Source, place: int, number: int) -> Diagnostic:
    return fault(
        "text-control",
        source,
        source.span(place, place + 1),
        f"an invisible control character, U+{number:04X}, stands in the text",
        hint="delete it; it often comes along when text is pasted",
    )
