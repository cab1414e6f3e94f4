"""Chord symbols as writers write them, read into spelled chords."""

import re
from functools import lru_cache

from sitegen.diagnostics import did_you_mean
from sitegen.harmony.canonical import make_chord
from sitegen.harmony.signs import plain
from sitegen.harmony.suffix import read_suffix
from sitegen.harmony.symbol_fault import ChordSymbolError
from sitegen.score.chord import Chord, NoChord
from sitegen.score.pitch import PitchName

_NO_CHORD = re.compile(r"n\.?c\.?", re.IGNORECASE)
_ROOT = re.compile(r"([A-G])(bb|##|b|#|♮|𝄫|𝄪)?")
# After a slash: an added degree (6/9, 7/b9) or a seventh (m/maj7) is no bass.
_NO_BASS = re.compile(r"[b#+\-]?[0-9]|(?:maj|Maj|ma|M|Δ|\^|j)[0-9]")
_TWO_WAYS = re.compile(r"[A-G](?:bb(?:5|9|13)|##(?:5|9|11))(?![0-9])|[A-G][b#]?-5(?![0-9])")


def read_chord(text: str) -> Chord | NoChord:
    """Return the chord that `text` is the symbol of.

    `N.C.`, in any case and with or without its points, is no chord. All usual spellings are
    read (see `sitegen.harmony.qualities`), alterations in any order, with or without brackets
    and commas, in ASCII or with ♭ ♯ ♮ and U+2212. The chord's members are spelled as degrees of
    the root; equal meanings are equal chords, and `read_chord(str(chord)) == chord`. `C#5` and
    `Eb9` are chords on C♯ and E♭: an accidental belongs to the root as long as it can. What two
    writers mean two ways is refused: `Bbb5`, `C-5`.

    Raises ChordSymbolError, which says what is wrong and exactly where.
    """
    return _read(text)


@lru_cache(maxsize=4096)
def _read(text: str) -> Chord | NoChord:
    symbol = plain(text)
    start = len(symbol) - len(symbol.lstrip())
    end = max(len(symbol.rstrip()), start)
    if _NO_CHORD.fullmatch(symbol, start, end):
        return NoChord(text)
    _refuse_two_ways(text, symbol, start)
    root, place = _read_root(text, start, end)
    slash = _find_slash(symbol, place, end)
    bass = _read_bass(text, slash, end) if slash < end else None
    return make_chord(root, read_suffix(text, place, slash), bass, text)


def _read_root(text: str, start: int, end: int) -> tuple[PitchName, int]:
    match = _ROOT.match(plain(text), start, end)
    if match is not None:
        return _name(match), match.end()
    if start == end:
        hint = "a chord starts with its root, A to G"
        raise ChordSymbolError("chord-root", "there is no chord symbol here", start, end, hint)
    message = f'no chord starts with "{text[start]}"'
    raise ChordSymbolError("chord-root", message, start, start + 1, _root_hint(text[start:end]))


def _root_hint(symbol: str) -> str:
    if symbol[0] in "abcdefg":
        return f'did you mean "{symbol[0].upper()}{symbol[1:]}"?'
    if symbol[0] in "Hh":
        return "the German H is written B here"
    return "a chord starts with its root, A to G"


def _find_slash(symbol: str, start: int, end: int) -> int:
    """Return the place of the slash before the bass, `end` without one."""
    slash = symbol.rfind("/", start, end)
    if slash < 0 or _NO_BASS.match(symbol, slash + 1, end) or _in_bracket(symbol, slash, end):
        return end
    return slash


def _in_bracket(symbol: str, slash: int, end: int) -> bool:
    return symbol.count(")", slash, end) > symbol.count("(", slash, end)


def _read_bass(text: str, slash: int, end: int) -> PitchName:
    start = end - len(text[slash + 1 : end].lstrip())
    match = _ROOT.fullmatch(plain(text), start, end)
    if match is not None:
        return _name(match)
    word = text[start:end]
    if not word:
        message = "the slash is followed by no bass note"
        hint = "name the bass, C/E, or leave the slash out"
        raise ChordSymbolError("chord-bass", message, slash, slash + 1, hint)
    notes = [letter + sign for letter in "ABCDEFG" for sign in ("", "b", "#")]
    message = f'"{word}" is no bass note'
    hint = did_you_mean(word, notes) or "after the slash comes the bass, A to G: C/E"
    raise ChordSymbolError("chord-bass", message, start, end, hint)


def _refuse_two_ways(text: str, symbol: str, start: int) -> None:
    """Refuse what two writers mean two ways; ♭♭ and ♯♯ typed as such are double signs."""
    match = _TWO_WAYS.match(symbol, start)
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


def _name(match: re.Match[str]) -> PitchName:
    return PitchName.read(match[1] + (match[2] or ""))
