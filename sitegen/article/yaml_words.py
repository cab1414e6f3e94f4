"""What is wrong with text that is no YAML, in words that need no YAML to be understood."""

import re
from dataclasses import dataclass

import yaml

_QUOTES = 'put a text that contains ": " or starts with a sign in quotes'


class BracketsError(yaml.YAMLError):
    """Text with so many brackets inside one another that it is not worth reading."""


@dataclass(frozen=True)
class SyntaxFault:
    """What is wrong in a text from code point `start` up to `end`, and a hint."""

    start: int
    end: int
    message: str
    hint: str


# Pattern of the library's own message; ours; a hint; whether the fault lies where the
# construct began rather than where the library gave up.
_TABLE = (
    (r"mapping values are not allowed", "a second colon makes this line two fields", _QUOTES, 0),
    (r"could not find expected ':'", "this line is not a field: it has no colon",
     "write a field as name: value", 1),
    (r"'\\t'", "a tab stands at the start of the text", "indent with spaces", 0),
    (r"expected <block end>", "this line is indented otherwise than the lines it belongs to",
     "fields that belong together start in the same column", 0),
    (r"quoted scalar", "a quote is opened and not closed", "close it on the same line", 1),
    (r"flow (sequence|mapping)|flow node", "a bracket is opened and not closed",
     "close it, or write one item a line, each after a hyphen", 1),
    (r"unknown escape", "a backslash stands before a letter that it cannot change",
     "use single quotes around the text", 0),
    (r"block scalar", "nothing but an indented text can follow | or >",
     "put the text on the next lines, indented", 0),
    (r"cannot start any token|tag|anchor|alias", "a text cannot start with this sign", _QUOTES, 0),
)  # fmt: skip


def explain_syntax(wrong: yaml.YAMLError, text: str) -> SyntaxFault:
    """Return what the library found wrong with `text`."""
    if isinstance(wrong, BracketsError):
        return _at(0, text, "too many brackets stand inside one another", _QUOTES)
    if not isinstance(wrong, yaml.MarkedYAMLError):
        place = getattr(wrong, "position", 0)
        return _at(place, text, "a character that cannot be printed stands here", "delete it")
    complaint = f"{wrong.context or ''}; {wrong.problem or ''}"
    for pattern, message, hint, at_start in _TABLE:
        if re.search(pattern, complaint):
            mark = (wrong.context_mark if at_start else None) or wrong.problem_mark
            return _at(place_of(mark), text, message, hint)
    return _at(place_of(wrong.problem_mark), text, "the front matter cannot be read here", _QUOTES)


def place_of(mark: object) -> int:
    """Return the code point at which a mark of the library stands; 0 for none."""
    return int(getattr(mark, "index", 0))


def _at(place: int, text: str, message: str, hint: str) -> SyntaxFault:
    """Return the fault for the rest of the line at `place`, or the last line that has text."""
    if not text[place:].strip():
        place = len(text.rstrip())
        place = max(text.rfind("\n", 0, place) + 1, 0)
    line_end = text.find("\n", place)
    line = text[place : line_end if line_end >= 0 else len(text)]
    start = place + len(line) - len(line.lstrip(" "))
    if text.startswith("\t", start):
        return SyntaxFault(start, start + 1, message, hint)
    return SyntaxFault(start, max(place + len(line.rstrip()), start + 1), message, hint)
