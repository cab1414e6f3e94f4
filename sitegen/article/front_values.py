"""The values of front matter fields, each from the text that was typed.

Every reader raises ValueError with a sentence for the author.
"""

import re
from datetime import date
from urllib.parse import urlsplit

from sitegen.article.front import Status
from sitegen.diagnostics import did_you_mean
from sitegen.score.clock import read_clock
from sitegen.score.key import MODES, Key

FIRST_YEAR, LAST_YEAR = 1860, 2200
"""The first sound recording was made in 1860 (Scott de Martinville); from memory."""
_MOST_ACCIDENTALS = 7
_DATE = re.compile(r"(\d{4})-(\d{2})-(\d{2})", re.ASCII)
_SECONDS = re.compile(r"[0-9]{1,5}")
_UNUSABLE = re.compile(r"[\s\x00-\x1f<>\"\\^`{|}]")


def read_date(text: str) -> date:
    """Return the day written as 2026-05-04."""
    match = _DATE.fullmatch(text)
    try:
        return date(*(int(group) for group in match.groups()))  # type: ignore[union-attr]
    except (AttributeError, ValueError):
        raise ValueError(f'"{text}" is not a date such as 2026-05-04') from None


def read_year(text: str) -> int:
    """Return the year of a recording."""
    if not re.fullmatch(r"[0-9]{4}", text) or not FIRST_YEAR <= int(text) <= LAST_YEAR:
        raise ValueError(f'"{text}" is not the year of a recording')
    return int(text)


def read_length(text: str) -> int:
    """Return the seconds of a length written as 3:42 or as a number of seconds."""
    seconds = int(text) if _SECONDS.fullmatch(text) else read_clock(text)
    if seconds == 0:
        raise ValueError("a length is more than nothing")
    return seconds


def read_key(text: str) -> Key:
    """Return the key written as tonic and mode."""
    try:
        key = Key.read(text)
    except ValueError as wrong:
        words = text.split()
        is_mode = len(words) == 2  # noqa: PLR2004
        hint = did_you_mean(words[1], MODES) if is_mode else "write it as Eb minor"
        raise ValueError(f"{wrong}; {hint}") from None
    if abs(key.fifths) > _MOST_ACCIDENTALS:
        raise ValueError(f"{key} has no key signature of its own")
    return key


def read_status(text: str) -> Status:
    """Return "draft" or "published"."""
    if text == "draft":
        return "draft"
    if text == "published":
        return "published"
    raise ValueError(f'"{text}" is neither draft nor published')


def read_web_address(text: str) -> str:
    """Return an address of the web: http or https and a host."""
    try:
        parts = urlsplit(text)
        good = parts.scheme in ("http", "https") and bool(parts.hostname)
    except ValueError:
        good = False
    if not good or _UNUSABLE.search(text):
        raise ValueError(f'"{text}" is not an address such as https://example.org/watch')
    return text


def read_file_or_address(text: str) -> str:
    """Return an address of the web, or the path of a file beside the write-up."""
    if is_web_address(text):
        return read_web_address(text)
    if not is_path_below(text):
        raise ValueError(f'"{text}" is neither a file beside the text nor an address')
    return text


def is_web_address(text: str) -> bool:
    """Return whether `text` is meant as an address of the web, and no path."""
    return bool(re.match(r"https?:", text))


def read_old_address(text: str) -> str:
    """Return an old address: a path on the site, or a full address."""
    if is_web_address(text):
        return read_web_address(text)
    if not is_path_below(text.strip("/")) or "?" in text or "#" in text:
        raise ValueError(f'"{text}" is not an old address such as /notes/low-tide/')
    return text


def is_path_below(text: str) -> bool:
    """Return whether `text` is the path of something in the same folder or below it."""
    parts = text.split("/")
    elsewhere = text.startswith(("/", "#", "?")) or ":" in parts[0] or ".." in parts
    return bool(text) and not elsewhere and not any(char in text for char in "\\\x00\n")
