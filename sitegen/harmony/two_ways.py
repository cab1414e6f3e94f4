"""Chord symbols that two writers mean two ways: refused, or read in one way that is told."""

import re
from dataclasses import dataclass

from sitegen.harmony.signs import plain
from sitegen.harmony.symbol_fault import ChordSymbolError

_REFUSED = re.compile(r"[A-G](?:bb(?:5|9|13)|##(?:5|9|11))(?![0-9])|[A-G][b#]?-5(?![0-9])")
_PARTS = re.compile(r"([A-G](?:bb|##|b|#|♮|𝄫|𝄪)?) *(.*?) *(/ *[A-G](?:bb|##|b|#|♮|𝄫|𝄪)?)?")

# What stands behind the root: as it is read, and as others mean it. Common practice, no source,
# but for what the libraries of tests/reference/chord_classes.json read differently: C4, C+9, 7+9.
# The plus sign raises a degree, adds it or is the augmented triad; in Romance countries 7+ is the
# major seventh. Old charts write ° for dim7 and 11 for 9sus4.
_DOUBTS = tuple(
    (re.compile(pattern), ours, theirs)
    for pattern, ours, theirs in (
        ("2", "add2", "sus2"),
        ("4", "sus4", "add4"),
        ("sus9", "5add9", "9sus4"),
        ("11", "9add11", "9sus4"),
        ("°|o", "dim", "dim7"),
        ("-9", "m9", "(b9)"),
        (r"\+9", "9#5", "add9"),
        (r"7\+9|7\(\+9\)", "7#9", "9#5"),
        (r"7\+", "7#5", "maj7"),
        (r"m7\+", "m7#5", "m(maj7)"),
        (r"m\+7", "m(maj7)", "m7#5"),
        (r"7/4|7\(4\)", "7add4", "7sus4"),
        (r"9/6", "9add6", "6/9"),
        (r"(?:maj|Maj|MAJ|ma|Ma|MA|M)\(?#11\)?", "add#11", "maj7#11"),
        (r"(?:maj|Maj|MAJ|ma|Ma|MA|M)\(?[#+]5\)?", "+", "maj7#5"),
        (r"(?:maj|Maj|MAJ|ma|Ma|MA|M)\(?[b\-]5\)?", "(b5)", "maj7b5"),
    )
)
# A root that is hardly written, Cb9, may be a root and an alteration, C(b9).
_RARE_ROOT = re.compile("([CF])b(5|9|13)|([EB])#(5|9|11)")
_PLAINER = {"5": "(no3)", "9": "7(9)", "11": "9(11)", "13": "9(13)"}


@dataclass(frozen=True)
class TwoReadings:
    """What a symbol is read as, and what other writers mean by it; both as plain symbols."""

    ours: str
    theirs: str

    def say(self, written: str) -> tuple[str, str]:
        """Return a message about the symbol as it is written, and what would be plain."""
        message = f'"{written}" is read as "{self.ours}", and others mean "{self.theirs}" by it'
        return message, f'write "{self.ours}" or "{self.theirs}"'


def find_two_readings(text: str) -> TwoReadings | None:
    """Return the two readings of a chord symbol that writers use in two ways; None for others.

    `C2` is read as Cadd2 and meant as Csus2 by some, `C°` as the triad and Cdim7, `C11` with its
    third and C9sus4. Only symbols that `read_chord` reads are told of.
    """
    match = _PARTS.fullmatch(plain(text).strip())
    if match is None:
        return None
    root, suffix, slash = match[1], match[2], match[3] or ""
    rare = _RARE_ROOT.fullmatch(root + suffix)
    if rare is not None:
        number = rare[2] or rare[4]
        return TwoReadings(
            f"{root}{_PLAINER[number]}{slash}", f"{root[0]}({root[1]}{number}){slash}"
        )
    for pattern, ours, theirs in _DOUBTS:
        if pattern.fullmatch(suffix):
            return TwoReadings(f"{root}{ours}{slash}", f"{root}{theirs}{slash}")
    return None


def refuse_two_ways(text: str, symbol: str, start: int) -> None:
    """Refuse what two writers mean two ways; ♭♭ and ♯♯ typed as such are double signs."""
    match = _REFUSED.match(symbol, start)
    if match is None or text[start + 1 : start + 3] in {"♭♭", "♯♯"}:
        return
    stem, changed = _two_readings(match[0])
    message = f'"{text[match.start() : match.end()]}" can be read two ways'
    hint = f'write "{stem}" or "{changed}"'
    raise ChordSymbolError("chord-two-ways", message, match.start(), match.end(), hint)


def _two_readings(symbol: str) -> tuple[str, str]:
    """Return the two unmistakable spellings of a symbol that can be read two ways."""
    if "-5" in symbol:
        root = symbol.removesuffix("-5")
        return f"{root}(b5)", f"{root}m"
    root, sign, number = symbol[:2], symbol[1], symbol[3:]
    double = "♭♭" if sign == "b" else "♯♯"
    return f"{root}({sign}{number})", f"{root[0]}{double}{number}"
