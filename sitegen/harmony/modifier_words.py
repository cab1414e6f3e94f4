"""The words for modifiers: what each token after a chord's quality says."""

import re
from collections.abc import Iterator

from sitegen.harmony.chord_degree import ChordDegree
from sitegen.harmony.modifiers import ALTERABLE, OMITTED, SUSPENDED, Modifier

_NUMBER = "1[0-9]|[0-9]"
_BOTH = r"2\ *[/,]?\ *4|4\ *[/,]?\ *2"
TOKEN = re.compile(
    rf"""
      (?i:no|omit)\.?\ *(?P<omitted>{_NUMBER})(?:rd|th)?
    | (?:(?i:add)\.?\ *)?(?:maj|Maj|MAJ|ma|Ma|MA|M|Δ|\^)\.?\ *(?P<raised>7|9|11|13)
    | (?i:add)\.?\ *(?P<open>\(\ *)?(?P<added_sign>[b\#+\-♮])?(?P<added>{_NUMBER})
      (?:th)?(?(open)\ *\))
    | (?i:sus)
      (?:\ *(?P<around>\(\ *)?(?P<second_or_fourth>{_BOTH}|[24](?![0-9]))(?(around)\ *\))
        | (?P<suspended>[b\#][24](?![0-9])|[0-9]+))?
    | (?P<sign>[b\#+\-♮]|flat|sharp|dim(?=5)|aug(?=5|9|11))\ *(?P<altered>{_NUMBER})
    | (?P<augmented>\+|(?i:aug))
    | (?P<plain>{_NUMBER})
    """,
    re.VERBOSE,
)
"""One modifier in the plain signs of `signs.plain`; a number alone stands only in brackets."""

_SIGNS = {"b": -1, "-": -1, "#": 1, "+": 1, "♮": 0, "": 0}
_SIGNS |= {"flat": -1, "dim": -1, "sharp": 1, "aug": 1}
_THIRD, _SEVENTH = 3, 7
# Old songbooks write the tenth for what is a third or, lowered, a ♯9 (from memory).
_TENTHS = {ChordDegree(10): ChordDegree(3), ChordDegree(10, -1): ChordDegree(9, 1)}


def modifiers_of(match: re.Match[str]) -> Iterator[Modifier]:
    """Yield what one token says; nothing when no chord has such a degree."""
    if match["omitted"]:
        if int(match["omitted"]) in OMITTED:
            yield Modifier("omit", ChordDegree(int(match["omitted"])))
    elif match["raised"]:
        yield from _raised(int(match["raised"]))
    elif match["added"]:
        yield from _added(match["added_sign"] or "", int(match["added"]))
    elif match["altered"]:
        yield from _altered(match["sign"], int(match["altered"]))
    elif match["augmented"]:
        yield Modifier("alter", ChordDegree(5, 1))
    elif match["plain"]:
        yield from _added("", int(match["plain"]))
    else:
        yield from _suspended(match["second_or_fourth"] or match["suspended"] or "4")


def _added(sign: str, number: int) -> Iterator[Modifier]:
    """Yield an addition; a 7 without a sign is the minor seventh, as in a symbol's C7."""
    if number == _SEVENTH:
        yield Modifier("raise", ChordDegree(_SEVENTH, 0 if sign in {"#", "+", "♮"} else -1))
        return
    degree = ChordDegree(number, _SIGNS[sign])
    degree = _TENTHS.get(degree, degree)
    is_fifth = degree.number == 5  # noqa: PLR2004
    if degree == ChordDegree(_THIRD) or (degree in ALTERABLE and not is_fifth):
        yield Modifier("add", degree)


def _altered(sign: str, number: int) -> Iterator[Modifier]:
    """Yield an alteration; ♯7 and ♮7 are the major seventh of old minor chords, m(♯7)."""
    if number == _SEVENTH:
        yield from _added(sign, number)
        return
    degree = ChordDegree(number, _SIGNS[sign])
    degree = _TENTHS.get(degree, degree)
    if degree in ALTERABLE:
        yield Modifier("alter", degree)


def _raised(top: int) -> Iterator[Modifier]:
    """Yield the major seventh and the thirds above it, as the table stacks them for minor."""
    yield Modifier("raise", ChordDegree(7))
    for number in range(9, top + 1, 2):
        yield Modifier("raise", ChordDegree(number))


def _suspended(text: str) -> Iterator[Modifier]:
    written = text.strip("( ").replace(" ", "").replace("/", "").replace(",", "")
    parts = ["2", "4"] if sorted(written) == ["2", "4"] else [written]
    for part in parts:
        sign = part[:1] if part[0] in "b#" else ""
        degree = ChordDegree(int(part.lstrip("b#")), _SIGNS[sign])
        if degree in SUSPENDED:
            yield Modifier("suspend", degree)
