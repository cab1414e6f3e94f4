"""Addresses of the values that write-ups are filed under: plain ASCII, each its own for ever."""

import hashlib
import re
import unicodedata

_SAID = {"♯": "sharp", "♭": "flat", "+": "plus"}
_EXACT = re.compile(r"[a-z0-9]+(?: [a-z0-9]+)*")
_WORD = re.compile(r"[a-z0-9]+")
_MOST = 60
_DIGITS = 8
# Windows: names of devices ("Naming Files, Paths, and Namespaces").
_DEVICE = re.compile(r"con|prn|aux|nul|com[0-9]|lpt[0-9]")
# What the word of a sign could stand for as well.
_SAID_WORDS = frozenset(_SAID.values())


def identity(words: str) -> str:
    """Return a text that is the same for words that differ in capitals, blanks or Unicode form."""
    folded = unicodedata.normalize("NFC", " ".join(words.split())).casefold()
    return unicodedata.normalize("NFC", folded)


def address_of(words: str, *, is_own: bool = False) -> str:
    """Return the last part of the address of a value, from what it is called.

    "drop C♯" is `drop-c-sharp`. Words that cannot be told again from such a name get a mark of
    their own behind it, `o-hara_1f0c66a2`, whatever other values there are, so that no value ever
    takes another's address. `is_own` says that the words are out of a list of our own, in which no
    two share a name.
    """
    same = identity(words)
    said = _spaced(same)
    name = "-".join(_WORD.findall(_without_marks(said)))
    exact = said if not _SAID_WORDS & set(same.split()) else ""
    whole = is_own or _EXACT.fullmatch(exact) is not None
    if whole and name and len(name) <= _MOST and not _DEVICE.fullmatch(name):
        return name
    mark = hashlib.blake2b(same.encode("utf-8", "surrogatepass"), digest_size=_DIGITS // 2)
    return f"{name[:_MOST].rstrip('-')}_{mark.hexdigest()}"


def _spaced(text: str) -> str:
    """Return a text with its signs in words, each apart from the letters around it."""
    for sign, word in _SAID.items():
        text = text.replace(sign, f" {word} ")
    return " ".join(text.split())


def _without_marks(text: str) -> str:
    letters = unicodedata.normalize("NFKD", text)
    return "".join(letter for letter in letters if not unicodedata.combining(letter))
