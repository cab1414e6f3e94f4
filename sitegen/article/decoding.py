"""From the bytes of a file to its text: UTF-8, line feeds, nothing that cannot be printed."""

import re
import unicodedata
from collections.abc import Iterable, Iterator

from sitegen.diagnostics import Diagnostic, fault
from sitegen.source import Source

MOST_TOLD = 50
"""How many places of one kind are told; a file that has more is no text at all."""

MOST_MARKS = 30
"""How many marks may stand on one letter: Stream-Safe Text Format, UAX #15, UAX15-D4.

More have no use in any script, and composing a long row of them takes time by its square.
"""

_BYTE_ORDER_MARK = b"\xef\xbb\xbf"
_WIDE_MARKS = (b"\xff\xfe", b"\xfe\xff")  # Unicode Standard, 23.8: the byte order mark in UTF-16
_STAND_IN = "\ufffd"
_BAD_BYTES = re.compile("[\udc80-\udcff]+")
_BYTE_BASE = 0xDC00
# C0 controls but tab and line feed, DEL, C1 controls but the next line of old mainframes, halves
# of a surrogate pair, and the overrides that show letters in another order than they are read in.
_UNPRINTABLE = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x84\x86-\x9f\u202d\u202e\ud800-\udfff]+")
_MAYBE_MARKS = re.compile(f"[^\x00-\u02ff]{{{MOST_MARKS + 1},}}")


def load_source(data: bytes, path: str) -> tuple[Source, tuple[Diagnostic, ...]]:
    """Return the text of a file with what is wrong in it replaced by U+FFFD, and the faults.

    A byte order mark is dropped; CRLF and CR become line feeds. `path` is the name that
    people are shown.
    """
    if data.startswith(_WIDE_MARKS):
        text = data.decode("utf-16", "replace")
        source, faults = without_controls(Source(path, _line_feeds(text)))
        return source, (_wide_fault(source), *faults)
    text = _line_feeds(data.removeprefix(_BYTE_ORDER_MARK).decode("utf-8", "surrogateescape"))
    text, bad_places = _without_bad_bytes(text)
    source, faults = without_controls(Source(path, text))
    return source, (*_told(_bytes_faults(source, bad_places)), *faults)


def without_controls(source: Source) -> tuple[Source, tuple[Diagnostic, ...]]:
    """Return the source with U+FFFD for what cannot be printed, and a fault for each stretch.

    Only the first faults are told where there are very many.
    """
    controls = list(_UNPRINTABLE.finditer(source.text))
    piles = [] if source.text.isascii() else list(_piles(source.text))
    if not controls and not piles:
        return source, ()
    clean = Source(source.path, _without(without_unprintable(source.text), piles))
    faults = [*_told(_control_fault(clean, match) for match in controls)]
    return clean, (*faults, *_told(_pile_fault(clean, *pile) for pile in piles))


def without_unprintable(text: str) -> str:
    """Return `text` with U+FFFD for each code point that cannot be printed."""
    return _UNPRINTABLE.sub(lambda match: _STAND_IN * len(match[0]), text)


def _without(text: str, piles: Iterable[tuple[int, int]]) -> str:
    pieces: list[str] = []
    last = 0
    for start, end in piles:
        pieces += text[last:start], _STAND_IN * (end - start)
        last = end
    return "".join((*pieces, text[last:]))


def _line_feeds(text: str) -> str:
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _without_bad_bytes(text: str) -> tuple[str, list[tuple[int, int]]]:
    """Return the text with one U+FFFD a stretch of bad bytes, their places and first bytes."""
    pieces: list[str] = []
    bad: list[tuple[int, int]] = []
    last = length = 0
    for match in _BAD_BYTES.finditer(text):
        pieces += text[last : match.start()], _STAND_IN
        length += match.start() - last
        bad.append((length, ord(match[0][0]) - _BYTE_BASE))
        length, last = length + 1, match.end()
    return "".join((*pieces, text[last:])), bad


def _piles(text: str) -> Iterator[tuple[int, int]]:
    """Yield where more marks than one letter can bear stand in a row: those too many."""
    for match in _MAYBE_MARKS.finditer(text):
        count = 0
        for at in range(match.start(), match.end() + 1):
            is_mark = at < match.end() and unicodedata.combining(text[at])
            if is_mark:
                count += 1
                continue
            if count > MOST_MARKS:
                yield at - count + MOST_MARKS, at
            count = 0


def _told(faults: Iterable[Diagnostic]) -> Iterator[Diagnostic]:
    for _, wrong in zip(range(MOST_TOLD), faults, strict=False):
        yield wrong


def _wide_fault(source: Source) -> Diagnostic:
    message = "the file is UTF-16, and not UTF-8"
    hint = "save the file as UTF-8 in your editor"
    return fault("text-bytes", source, source.line_span(1), message, hint=hint)


def _bytes_faults(source: Source, places: Iterable[tuple[int, int]]) -> Iterator[Diagnostic]:
    hint = "save the file as UTF-8 in your editor"
    for place, byte in places:
        message = f"the file is not UTF-8 here: byte {byte:02X}"
        yield fault("text-bytes", source, source.span(place, place + 1), message, hint=hint)


def _control_fault(source: Source, match: re.Match[str]) -> Diagnostic:
    return fault(
        "text-control",
        source,
        source.span(*match.span()),
        f"an invisible control character, U+{ord(match[0][0]):04X}, stands in the text",
        hint="delete it; it often comes along when text is pasted",
    )


def _pile_fault(source: Source, start: int, end: int) -> Diagnostic:
    message = f"more than {MOST_MARKS} accents and other marks stand on one letter"
    hint = "delete them; they often come along when text is pasted"
    return fault("text-marks", source, source.span(start, end), message, hint=hint)
