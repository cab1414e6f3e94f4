"""Chord symbols as writers write them, read into spelled chords."""

import re
from functools import lru_cache

from sitegen.diagnostics import did_you_mean
from sitegen.harmony.canonical import make_chord
from sitegen.harmony.signs import plain
from sitegen.harmony.suffix import read_suffix
from sitegen.harmony.symbol_fault import ChordSymbolError
from sitegen.harmony.two_ways import refuse_two_ways
from sitegen.score.chord import Chord, NoChord
from sitegen.score.pitch import PitchName

_NO_CHORD = re.compile(r"(\()?n\.?[ /]?c\.?(?(1)\))|no chord", re.IGNORECASE)
_ROOT = re.compile(r"([A-G])(bb|##|b|#|♮|𝄫|𝄪)?")
# After a slash: an added degree (6/9, 7/b9, 6/add9) or a seventh (m/maj7) is no bass.
_NO_BASS = re.compile(r"[b#+\-]?[0-9]|(?:maj|Maj|ma|M|Δ|\^|j)[0-9]|(?:add|no|omit|sus)[0-9b#]")
# Names of other languages, which are no chord here: Es is no E, but Esus is.
_GERMAN = re.compile(r"([CDFGA])is(?!us)|([CDG])es(?!us)|([EA])s(?!us)")
_SYLLABLES = {"Re": "D", "Mi": "E", "Sol": "G", "La": "A", "Si": "B"}


def read_chord(text: str) -> Chord | NoChord:
    """Return the chord that `text` is the symbol of.

    `N.C.` is no chord, in any case, with or without its points or in words. All usual spellings
    are read (see `sitegen.harmony.qualities`), alterations in any order, with or without
    brackets and commas, in ASCII or with ♭ ♯ ♮ and U+2212. The chord's members are spelled as
    degrees of the root; equal meanings are equal chords, and `read_chord(str(chord)) == chord`.
    `C#5` and `Eb9` are chords on C♯ and E♭: an accidental belongs to the root as long as it can.
    What two writers mean two ways is refused, `Bbb5` and `C-5`, or read in the way that
    `sitegen.harmony.two_ways` tells.

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
    refuse_two_ways(text, symbol, start)
    _refuse_german(symbol, start)
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


def _refuse_german(symbol: str, start: int) -> None:
    match = _GERMAN.match(symbol, start)
    if match is None:
        return
    letter = next(filter(None, match.groups()))
    sign = "#" if match[1] else "b"
    message = f'no chord starts with "{match[0]}"'
    hint = f"the German {match[0]} is written {letter}{sign} here"
    raise ChordSymbolError("chord-root", message, match.start(), match.end(), hint)


def _root_hint(symbol: str) -> str:
    if symbol[0] in "abcdefg":
        return f'did you mean "{symbol[0].upper()}{symbol[1:]}"?'
    if symbol[0] in "Hh":
        return "the German H is written B here"
    for syllable, letter in _SYLLABLES.items():
        if symbol.startswith(syllable):
            return f"roots are letters here: {syllable} is {letter}"
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
    if _is_chord(text, start, end):
        message = f'"{word}" after the slash is a chord and no bass note'
        hint = (
            "a chord over a chord is written as one, such as C7(9,#11,13), or with its bass alone"
        )
        raise ChordSymbolError("chord-bass", message, start, end, hint)
    notes = [letter + sign for letter in "ABCDEFG" for sign in ("", "b", "#")]
    message = f'"{word}" is no bass note'
    hint = did_you_mean(word, notes) or "after the slash comes the bass, A to G: C/E"
    raise ChordSymbolError("chord-bass", message, start, end, hint)


def _is_chord(text: str, start: int, end: int) -> bool:
    try:
        _, place = _read_root(text, start, end)
        read_suffix(text, place, end)
    except ChordSymbolError:
        return False
    return True


def _name(match: re.Match[str]) -> PitchName:
    return PitchName.read(match[1] + (match[2] or ""))
