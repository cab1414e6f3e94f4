"""The words for modifiers: what each token after a chord's quality says."""

import re
from collections.abc import Iterator

from sitegen.harmony.chord_degree import ChordDegree
from sitegen.harmony.modifiers import ALTERABLE, OMITTED, SUSPENDED, Modifier

_NUMBER = "1[0-9]|[0-9]"
TOKEN = re.compile(
    rf"""
      (?:no|omit)\.?\ *(?P<omitted>{_NUMBER})(?:rd|th)?
    | add\.?\ *(?P<added_sign>[b\#+\-♮])?(?P<added>{_NUMBER})
    | sus(?P<suspended>2/?4|4/?2|[b\#]?[24](?![0-9])|[0-9]+)?
    | (?:maj|ma|M|Δ|\^)\ *(?P<raised>7|9|11|13)
    | (?P<sign>[b\#+\-♮])\ *(?P<altered>{_NUMBER})
    | (?P<augmented>\+|aug(?:5)?)
    | (?P<plain>{_NUMBER})
    """,
    re.VERBOSE,
)
"""One modifier in the plain signs of `signs.plain`; a number alone stands only in brackets."""

_SIGNS = {"b": -1, "-": -1, "#": 1, "+": 1, "♮": 0, "": 0}


def modifiers_of(match: re.Match[str]) -> Iterator[Modifier]:
    """Yield what one token says; nothing when no chord has such a degree."""
    if match["omitted"]:
        if int(match["omitted"]) in OMITTED:
            yield Modifier("omit", ChordDegree(int(match["omitted"])))
    elif match["added"]:
        yield from _known("add", _degree(match["added_sign"], match["added"]))
    elif match["raised"]:
        yield from _raised(int(match["raised"]))
    elif match["altered"]:
        yield from _known("alter", _degree(match["sign"], match["altered"]))
    elif match["augmented"]:
        yield Modifier("alter", ChordDegree(5, 1))
    elif match["plain"]:
        yield from _plain(int(match["plain"]))
    else:
        yield from _suspended(match["suspended"])


def _degree(sign: str | None, number: str) -> ChordDegree:
    return ChordDegree(int(number), _SIGNS[sign or ""])


def _known(kind: str, degree: ChordDegree) -> Iterator[Modifier]:
    if degree in ALTERABLE and (kind == "alter" or degree.number != 5):  # noqa: PLR2004
        yield Modifier("alter" if kind == "alter" else "add", degree)


def _plain(number: int) -> Iterator[Modifier]:
    if number == 7:  # noqa: PLR2004
        yield Modifier("raise", ChordDegree(7, -1))
    else:
        yield from _known("add", ChordDegree(number))


def _raised(top: int) -> Iterator[Modifier]:
    """Yield the major seventh and the thirds above it, as the table stacks them for minor."""
    yield Modifier("raise", ChordDegree(7))
    for number in range(9, top + 1, 2):
        yield Modifier("raise", ChordDegree(number))


def _suspended(text: str | None) -> Iterator[Modifier]:
    written = (text or "4").replace("/", "")
    parts = ["2", "4"] if sorted(written) == ["2", "4"] else [written]
    for part in parts:
        degree = _degree(part[:1] if part[0] in "b#" else "", part.lstrip("b#"))
        if degree in SUSPENDED:
            yield Modifier("suspend", degree)
