"""Times in a recording as they stand in a player's display: 1:23, 1:02:33."""

import re

_CLOCK = re.compile(r"(?:(\d{1,2}):)?(\d{1,3}):([0-5]\d)")


def read_clock(text: str) -> int:
    """Return the seconds of a time written as minutes:seconds or hours:minutes:seconds.

    Raises ValueError with a sentence for the author.
    """
    match = _CLOCK.fullmatch(text.strip())
    if match is None or not text.isascii():
        raise ValueError(f'"{text.strip()}" is not a time such as 1:23')
    hours, minutes, seconds = (int(group or 0) for group in match.groups())
    if match[1] and minutes > 59:  # noqa: PLR2004
        raise ValueError(f'"{text.strip()}" has more than 59 minutes beside its hours')
    return 3600 * hours + 60 * minutes + seconds


def clock_text(seconds: int) -> str:
    """Return `seconds` as 1:23, with hours from one hour on."""
    minutes, rest = divmod(seconds, 60)
    hours, minutes = divmod(minutes, 60)
    if hours:
        return f"{hours}:{minutes:02}:{rest:02}"
    return f"{minutes}:{rest:02}"
