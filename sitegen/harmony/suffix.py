"""What stands between the root and the bass of a chord symbol: a quality and its modifiers."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import partial

from sitegen.diagnostics import did_you_mean
from sitegen.harmony.canonical import name_quality
from sitegen.harmony.chord_degree import ChordDegree
from sitegen.harmony.modifier_words import TOKEN, modifiers_of
from sitegen.harmony.modifiers import Modifier, UnfitModifierError, build_degrees
from sitegen.harmony.qualities import MAJOR_TRIAD, QUALITIES, SPELLINGS, Quality
from sitegen.harmony.signs import plain
from sitegen.harmony.symbol_fault import ChordSymbolError

# A point ends an abbreviation, maj. or sus., and nothing else.
_SEPARATOR = re.compile(r"(?:[ ,;/]|(?<=[A-Za-z]{2})\.)*")
_LOOSE = re.compile(r" |(?<=[A-Za-z]{2})\.")
_CHUNK = re.compile(r"[^ ,/()]+|.")
_ALTERATIONS = "b5 #5 b9 #9 9 11 #11 13 b13 b6 #4 add9 add11 add13 no3 no5 sus2 sus4".split()
_NAMES = [quality.name.replace("♭", "b").replace("♯", "#") for quality in QUALITIES]
_KNOWN = (*filter(None, _NAMES), *_ALTERATIONS, "7b5", "7b9", "7#9")


@dataclass(frozen=True)
class _Found:
    """One modifier and the part of the text that says it."""

    modifier: Modifier
    start: int
    end: int


@dataclass
class _Scan:
    """A walk over the modifiers of one symbol, from just after its quality.

    `text` is the symbol in plain signs, `written` the same as its writer typed it.
    """

    written: str
    text: str
    quality_start: int
    place: int
    end: int
    bracket: int | None = None
    found: list[_Found] = field(default_factory=list)

    def run(self) -> list[_Found]:
        """Return all modifiers; raises ChordSymbolError at the first that cannot be read."""
        while self.place < self.end:
            separated = self._pass_separators()
            if self.place < self.end:
                self._take(bare=separated or self.bracket is not None)
        if self.bracket is not None:
            place = self.bracket
            message, hint = "a bracket is never closed", "close it with ) in the same symbol"
            raise ChordSymbolError("chord-bracket", message, place, place + 1, hint)
        return self.found

    def _pass_separators(self) -> bool:
        start = self.place
        while self.place < self.end:
            self.place = min(_end_of(_SEPARATOR, self.text, self.place), self.end)
            sign = self.text[self.place : self.place + 1] if self.place < self.end else ""
            if sign == "(" and self.bracket is None:
                self.bracket = self.place
            elif sign == ")" and self.bracket is not None:
                self.bracket = None
            else:
                break
            self.place += 1
        return self.text[start : self.place].rstrip(" ().") != ""

    def _take(self, *, bare: bool) -> None:
        match = TOKEN.match(self.text, self.place, self.end)
        if match is None or (match["plain"] and not bare):
            raise self._unknown()
        for modifier in modifiers_of(match):
            self.found.append(_Found(modifier, match.start(), match.end()))
        if not self.found or self.found[-1].end != match.end():
            raise _no_alteration(self.written[match.start() : match.end()], match.start())
        self.place = match.end()

    def _unknown(self) -> ChordSymbolError:
        end = min(_end_of(_CHUNK, self.text, self.place), self.end)
        word = self.written[self.place : end]
        if word in {"(", ")"}:
            message = "a bracket opens or closes nothing"
            hint = "write one pair of brackets around what is altered or added: C7(b9)"
            return ChordSymbolError("chord-bracket", message, self.place, end, hint)
        if self.found or self.bracket is not None or self.text[self.place] in "b#+-♮":
            start = self.place
            if self.found and self.found[-1].end == start:
                start = self.found[-1].start
            return _no_alteration(self.written[start:end], start)
        return self._no_quality(end)

    def _no_quality(self, end: int) -> ChordSymbolError:
        word = self.written[self.quality_start : end]
        message = f'no chord quality is written "{word}"'
        hint = partial(_nearest, word, _KNOWN, "qualities are such as m, 7, maj7, m7b5, dim, sus4")
        return ChordSymbolError("chord-quality", message, self.quality_start, end, hint)


def _no_alteration(word: str, start: int) -> ChordSymbolError:
    message = f'no chord is altered by "{word}"'
    hint = partial(_nearest, word, _ALTERATIONS, "alterations are such as b5, b9, #11, add9, no3")
    return ChordSymbolError("chord-alteration", message, start, start + len(word), hint)


def _nearest(word: str, known: Sequence[str], examples: str) -> str:
    return did_you_mean(word, known) or examples


def read_suffix(written: str, start: int, end: int) -> frozenset[ChordDegree]:
    """Return the degrees that the part of a symbol from `start` to `end` stands for.

    The longest quality that leaves readable modifiers wins: `omit5` is no `o`. A quality may stand
    in brackets, C(m7). Raises ChordSymbolError with offsets into `written` at the fault of the
    reading that got furthest.
    """
    text = plain(written)
    try:
        return _read(written, text, start, end)
    except ChordSymbolError:
        opened = _without_first_bracket(text, start, end)
        if opened is None:
            raise
        try:
            return _read(written, opened, start, end)
        except ChordSymbolError:
            pass
        raise


def _read(written: str, text: str, start: int, end: int) -> frozenset[ChordDegree]:
    while text[start:end].startswith(" "):
        start += 1
    faults = []
    for quality, place in _qualities(text, start, end):
        try:
            return _build(quality, _Scan(written, text, start, place, end).run())
        except ChordSymbolError as wrong:
            faults.append(wrong)
    raise max(faults, key=lambda wrong: wrong.end)


def _without_first_bracket(text: str, start: int, end: int) -> str | None:
    """Return the text with blanks for the pair of brackets that the suffix opens with."""
    suffix = text[start:end]
    blanks = len(suffix) - len(suffix.lstrip())
    close = suffix.find(")")
    if suffix[blanks : blanks + 1] != "(" or close < 0:
        return None
    opened = f"{suffix[:blanks]} {suffix[blanks + 1 : close]} {suffix[close + 1 :]}"
    return text[:start] + opened + text[end:]


def _qualities(text: str, start: int, end: int) -> Iterator[tuple[Quality, int]]:
    """Yield the qualities with which the text may open, the longest spelling first.

    Blanks and points within a spelling are passed over, and so are brackets around a seventh
    that belongs to the word before it: maj. 7, maj(7).
    """
    for stop in range(min(end, start + _LONGEST + _BLANKS), start, -1):
        if text[stop - 1] in " .":
            continue
        spelling = _LOOSE.sub("", text[start:stop]).replace("(7)", "7")
        quality = SPELLINGS.get(spelling)
        if quality is not None:
            yield quality, stop
    yield MAJOR_TRIAD, start


_LONGEST, _BLANKS = max(map(len, SPELLINGS)), 3


def _build(quality: Quality, found: list[_Found]) -> frozenset[ChordDegree]:
    try:
        degrees = build_degrees(quality.degrees, [each.modifier for each in found])
    except UnfitModifierError as unfit:
        place = next(each for each in found if each.modifier == unfit.modifier)
        raise ChordSymbolError("chord-alteration", str(unfit), place.start, place.end) from None
    name_quality(degrees)
    return degrees


def _end_of(pattern: re.Pattern[str], text: str, place: int) -> int:
    match = pattern.match(text, place)
    return match.end() if match else place
