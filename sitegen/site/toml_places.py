"""Where the top keys of a TOML text stand, which the standard reader does not tell."""

import re
from dataclasses import dataclass

from sitegen.source import Source, Span

_OPAQUE = re.compile(
    r'"""(?:\\.|[^\\])*?"""'
    r"|'''.*?'''"
    r'|"(?:\\.|[^"\\\n])*"'
    r"|'[^'\n]*'"
    r"|\#[^\n]*",
    re.DOTALL,
)
_KEY = r"""(?:[A-Za-z0-9_-]+|"[^"\n]*"|'[^'\n]*')"""
_ENTRY = re.compile(
    rf"^[ \t]*(?:\[\[?[ \t]*(?P<table>{_KEY})[^\n]*"
    rf"|(?P<key>{_KEY})[ \t]*(?:\.[^=\n]*)?=[ \t]*(?P<value>[^\n]*))",
    re.MULTILINE,
)


@dataclass(frozen=True)
class KeyPlace:
    """The spans of a key and of its value's first line; `start` is the value's offset."""

    key: Span
    value: Span
    start: int


def find_keys(source: Source) -> dict[str, KeyPlace]:
    """Return the place of every top key and table of the TOML text, by name, first one first."""
    masked = _OPAQUE.sub(_mask, source.text)
    places: dict[str, KeyPlace] = {}
    inside_table = False
    for match in _ENTRY.finditer(masked):
        group = "table" if match["table"] else "key"
        if group == "key" and inside_table:
            continue
        inside_table = inside_table or group == "table"
        start, end = match.span(group)
        name = source.text[start:end].strip("\"'")
        places.setdefault(name, _place(source, match, group))
    return places


def find_item(source: Source, place: KeyPlace, text: str) -> Span:
    """Return the span of the quoted `text` in the value at `place`, or that value's span."""
    at = source.text.find(text, place.start) if text else -1
    return place.value if at < 0 else source.span(at, at + len(text))


def _place(source: Source, match: re.Match[str], group: str) -> KeyPlace:
    key = source.span(*match.span(group))
    if group == "table":
        return KeyPlace(key, key, match.end(group))
    start = match.start("value")
    end = start + max(1, len(match["value"].rstrip()))
    return KeyPlace(key, source.span(start, end), start)


def _mask(match: re.Match[str]) -> str:
    """Return the string or comment with all but its quotes and line feeds made harmless."""
    text = match[0]
    if text.startswith("#"):
        return " " * len(text)
    inner = re.sub(r"[^\n]", "x", text[1:-1])
    return text[0] + inner + text[-1]
