"""Where the phrases of a line end.

Books tell phrases by ear; this is the rule taken here, from rests and long notes (the proximity
rules of Lerdahl and Jackendoff, "A Generative Theory of Tonal Music", 1983, GPR 2; from memory)
with sizes of our own. The time from one note's start to the next one's is called a gap. A phrase
ends after a note

- where the line then rests for a whole bar;
- where it rests for a felt beat or more, and the gap is twice the line's median gap or more (so
  that a riff of short notes and rests is not cut into notes);
- where it rests, however short, after a syllable that ends with , ; : . ! or ?;
- where the gap is twice the median and half a bar or more, and no more than a quarter of the
  line's gaps are as long: the line stands still. Three notes have to be sung by then;
- where the author's `section` starts, unless a phrase starts in the half bar before it, which
  then leads into the section.

No phrase starts in the middle of a word of the first verse.
"""

from bisect import bisect_left
from dataclasses import dataclass

from sitegen.analysis.melody.line import MelodicLine
from sitegen.score.chart import Chart, Syllable

Phrase = range
"""A phrase is the range of its notes in the line."""

_STOPS = tuple(",;:.!?")
_CLOSING = "”’\"')»"
_LONG = 2
_FEWEST_NOTES = 3
_RARE = 4


def find_phrases(line: MelodicLine, chart: Chart) -> tuple[Phrase, ...]:
    """Return the phrases of a line, which together hold all its notes."""
    words = _Words.of(line)
    starts = {*_after_rests(line, words)} - words.inner
    starts |= set(_after_long_notes(line, starts, words))
    starts |= _at_sections(line, chart, starts) - words.inner
    ordered = [*sorted({0, *starts}), len(line)]
    return tuple(map(range, ordered[:-1], ordered[1:]))


@dataclass(frozen=True)
class _Words:
    """Notes of a line by what is sung: those that close a clause, those inside a word."""

    closing: frozenset[int]
    inner: frozenset[int]

    @classmethod
    def of(cls, line: MelodicLine) -> "_Words":
        """Return what the first verse has; a held syllable is inside its word."""
        sung = _first_verse(line)
        closing, inner, closes, joined = set(), set(), False, False
        for index, start in enumerate(line.starts):
            syllable = sung.get(start)
            if syllable is None:
                closes = joined = False
                continue
            if joined or syllable.held:
                inner.add(index)
            if not syllable.held:
                closes = syllable.text.rstrip(_CLOSING).endswith(_STOPS)
                joined = syllable.joined
            if closes:
                closing.add(index)
        return cls(frozenset(closing), frozenset(inner))


def _first_verse(line: MelodicLine) -> dict[int, Syllable]:
    """Return the syllables of the first verse by the tick they start at."""
    return {
        line.pulse.at(event.onset): syllable
        for voice in line.part.voices
        for event in voice
        for syllable in event.syllables
        if syllable.verse == 1
    }


def _after_rests(line: MelodicLine, words: _Words) -> list[int]:
    rests = [after - end for end, after in zip(line.ends, line.starts[1:], strict=False)]
    return [
        index + 1
        for index, rest in enumerate(rests)
        if rest > 0 and (index in words.closing or _is_long_rest(line, index, rest))
    ]


def _is_long_rest(line: MelodicLine, index: int, rest: int) -> bool:
    if rest >= line.pulse.wholes[line.bars[index]]:
        return True
    meter = line.pulse.written[line.bars[index]].meter
    beat = line.pulse.at(meter.beat) * min(meter.groups)
    return rest >= beat and line.gaps[index] >= _LONG * line.median_gap


def _after_long_notes(line: MelodicLine, starts: set[int], words: _Words) -> list[int]:
    """Return the phrase starts after long notes, where other `starts` are known."""
    long = _long_gap(line)
    found, begin = [], 0
    for index, gap in enumerate(line.gaps):
        if index in starts:
            begin = index
        if gap < long or index + 1 in words.inner or index + 1 - begin < _FEWEST_NOTES:
            continue
        if 2 * gap >= line.pulse.wholes[line.bars[index]]:
            found.append(index + 1)
            begin = index + 1
    return found


def _long_gap(line: MelodicLine) -> int:
    """Return the gap from which on a note is long: twice the median, no more than a quarter."""
    ordered = sorted(line.gaps)
    # The longest gap that is too usual: with it, more than a quarter of all are as long.
    usual = ordered[-(len(ordered) // _RARE) - 1] if ordered else 0
    return max(_LONG * line.median_gap, usual + 1)


def _at_sections(line: MelodicLine, chart: Chart, starts: set[int]) -> set[int]:
    found = set()
    for section in chart.sections:
        at = line.pulse.at(section.onset)
        index = bisect_left(line.starts, at)
        if 0 < index < len(line) and not _is_led_into(line, index, at, starts):
            found.add(index)
    return found


def _is_led_into(line: MelodicLine, index: int, at: int, starts: set[int]) -> bool:
    """Tell whether a phrase starts in the half bar before `at`, where note `index` follows."""
    whole, back = line.pulse.wholes[line.bars[index]], index - 1
    while back > 0 and 2 * (at - line.starts[back]) < whole:
        if back in starts:
            return True
        back -= 1
    return False
