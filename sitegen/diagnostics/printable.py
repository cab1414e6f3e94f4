"""Text from a file as a terminal may show it.

A terminal obeys some characters where it should show them: it moves, erases what was told
before, or puts letters in another order. A file must not tell what faults it has.
"""

import re

_STAND_IN = "\ufffd"
# C0 controls but tab and line feed, DEL, C1 controls; what sets the direction of writing
# (UAX #9, 2) and other line ends; halves of a surrogate pair, as names of files may hold them.
_OBEYED = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff]"
)


def printable(text: str) -> str:
    """Return `text` with U+FFFD for each code point that a terminal would obey, not show."""
    return _OBEYED.sub(_STAND_IN, text)


def printable_json(text: str) -> str:
    """Return JSON text, which says just the same, with such code points written as numbers."""
    return _OBEYED.sub(lambda match: f"\\u{ord(match[0]):04x}", text)
