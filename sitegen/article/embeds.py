"""How a host's own player is addressed: with places for the recording and for the moment."""

import re

from sitegen.article.front_values import read_web_address

SECONDS = "{seconds}"
"""Stands in an address for the moment to start from, in whole seconds."""
NAME = "{id}"
"""Stands in a site's pattern for what the host calls the recording."""

_NAME = re.compile(r"[A-Za-z0-9._~-]{1,200}")
_HOST_PART = 2


def read_embed(text: str) -> str:
    """Return what a frame shows: an address with `{seconds}`, or a name for the site's pattern.

    A name has the unreserved characters of an address (RFC 3986, 2.3). Raises ValueError with a
    sentence for the author.
    """
    if _NAME.fullmatch(text):
        return text
    return _read_address(text, (SECONDS,))


def read_pattern(text: str) -> str:
    """Return a site's address of its host's player, with `{id}` and `{seconds}`.

    Raises ValueError with a sentence for the author.
    """
    return _read_address(text, (NAME, SECONDS))


def is_name(embed: str) -> bool:
    """Return whether an embed is a name, and no address yet."""
    return bool(_NAME.fullmatch(embed))


def fill_seconds(embed: str, seconds: int) -> str:
    """Return the address of the player at a moment."""
    return embed.replace(SECONDS, str(seconds))


def _read_address(text: str, places: tuple[str, ...]) -> str:
    filled = text
    for place in places:
        filled = filled.replace(place, "0")
    try:
        read_web_address(filled)
    except ValueError:
        raise ValueError(f'"{text}" is neither an address nor a name') from None
    if not text.startswith("https://"):
        raise ValueError(f'"{text}" is not an https address; a frame shows nothing else')
    if "{" in text.split("/")[_HOST_PART]:
        raise ValueError(f'"{text}" leaves open which host it is')
    for place in places:
        if place not in text:
            raise ValueError(f'"{text}" has no {place}; {_HINTS[place]}')
    return text


_HINTS = {
    SECONDS: "write it where the host reads the start, or #t={seconds} at the end",
    NAME: "write it where the host has the recording's name",
}
