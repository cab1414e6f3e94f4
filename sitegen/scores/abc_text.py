"""ABC as music21 can read it, and what it passes over without a word.

Fields inside a tune are those of the ABC standard 2.1, section 3.
"""

import re

_KEY_LINE = re.compile(r"^K:", re.MULTILINE)
_INLINE = re.compile(r"\[([KMQLV]:[^\]\n]*)\]")
_FIELD = re.compile(r"[A-Za-z]:")
_CHANGE = re.compile(r"\s*[KMQ]:")
_AFTER_BAR = re.compile(r"(?:[|\]]:?|:\|?|::|\|[12])\s*$")
_WORDS = re.compile(r"^w:", re.MULTILINE)
_OTHER_ENDING = re.compile(r"(?:\||\[)(?:[3-9]|[1-9][,-][1-9])")
_QUOTED = re.compile(r'"\s*\(?\s*[A-GN][^"\n]*"')
_COMMENT = re.compile(r"(?<!\\)%.*$", re.MULTILINE)


class AbcChangeError(ValueError):
    """A change of key, meter or tempo that stands inside a bar."""


def prepare(text: str) -> str:
    """Return a tune in which changes stand where music21 sees them: alone, before a bar line.

    Raises AbcChangeError for one inside a bar.
    """
    head, body = split(text)
    made: list[str] = []
    music, changes = "", False
    for line in _INLINE.sub(r"\n\1\n", _COMMENT.sub("", body)).splitlines():
        if _CHANGE.match(line):
            if music and not _AFTER_BAR.search(music):
                raise AbcChangeError(f"{line.strip()[:20]} stands inside a bar")
            changes = bool(music)
            made.append(line.strip())
        elif _FIELD.match(line):
            music = "" if line.startswith("V:") else music
            made.append(line)
        elif line.strip():
            music = line
            made.append(f"|{line}" if changes else line)
            changes = False
    return head + "\n".join(made) + "\n"


def find_unread(text: str, chords: int) -> list[str]:
    """Return in words what music21 passes over; `chords` is how many symbols it found."""
    _, body = split(text)
    music = "\n".join(line for line in body.splitlines() if not _FIELD.match(line))
    found = {
        "words (w:)": _WORDS.search(body),
        "endings after the second": _OTHER_ENDING.search(music),
        "chord symbols that cannot be read": len(_QUOTED.findall(music)) > chords,
    }
    return [what for what, is_there in found.items() if is_there]


def split(text: str) -> tuple[str, str]:
    """Return the head of a tune, which ends with its key, and what follows."""
    key = _KEY_LINE.search(text)
    if key is None:
        return text, ""
    end = text.find("\n", key.start())
    end = len(text) if end < 0 else end + 1
    return text[:end], text[end:]
