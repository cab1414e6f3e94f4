"""What the head of an `excerpt` asks for: a file, bars of it, parts of it."""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from sitegen.charts.head import Head, HeadField, UnfitValueError
from sitegen.diagnostics import did_you_mean
from sitegen.source import Span

_RANGE = re.compile(r"([0-9]{1,4})(?:\s*[-–]\s*([0-9]{1,4}))?")
_SHOWS = ("contour",)
OWN_FIELDS = ("file", "parts", "show")
"""The names of head lines that excerpts have and other charts have not, or read otherwise."""


@dataclass(frozen=True)
class Wanted:
    """What the head asks for; `parts` are names in the score, with the names they are to have."""

    file: HeadField
    bars: tuple[int, int] | None
    parts: Mapping[str, str]
    extras: tuple[str, ...]
    bars_span: Span


def read_wanted(head: Head) -> Wanted | None:
    """Return what is asked for, None where no file is named; faults are collected in `head`."""
    file = head.find("file")
    bars = head.take("bars", _read_range, None)
    no_parts: Mapping[str, str] = {}
    parts = head.take("parts", _read_names, no_parts)
    nothing: tuple[str, ...] = ()
    extras = head.take("show", _read_shows, nothing)
    if file is None:
        return None
    bars_field = head.find("bars") or file
    return Wanted(file, bars, parts, extras, bars_field.value_span)


def _read_range(text: str) -> tuple[int, int]:
    match = _RANGE.fullmatch(text.strip())
    if match is None:
        raise ValueError(f'"{text}" names no bars; write them as 5-8')
    first, last = int(match[1]), int(match[2] or match[1])
    if last < first:
        raise ValueError(f"bar {last} comes before bar {first}")
    return first, last


def _read_names(text: str) -> Mapping[str, str]:
    """Return the names of parts in a score, each with the name that it is to have here."""
    names: dict[str, str] = {}
    for item in text.split(","):
        name, _, other = " ".join(item.lower().split()).partition(" as ")
        if not name:
            continue
        if (other or name) in names.values() or name in names:
            raise UnfitValueError(f'"{other or name}" is named twice', word=name)
        names[name] = other or name
    return names


def _read_shows(text: str) -> tuple[str, ...]:
    words = tuple(word.strip().lower() for word in text.split(","))
    for word in words:
        if word not in ("staff", *_SHOWS):
            hint = did_you_mean(word, ("staff", *_SHOWS))
            raise UnfitValueError(f'an excerpt shows no "{word}"', word=word, hint=hint)
    return tuple(word for word in words if word in _SHOWS)
