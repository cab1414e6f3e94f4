"""Where the phrases of a line start against the bar, and how long they are.

A phrase starts on the bar; early, less than half a bar before the next bar line, which it goes on
across (an upbeat); or late, anywhere else after the start of its bar, half a bar before the next
one included. It lasts until the next phrase starts; the last one, and one that a rest of more than
a bar follows, until the end of the bar that it ends in.
"""

from fractions import Fraction

from sitegen.analysis.melody.line import MelodicLine
from sitegen.analysis.melody.phrases import Phrase
from sitegen.analysis.places import listed
from sitegen.analysis.reading import Fact
from sitegen.analysis.wording import capitalised, number_word, the_part

_FEWEST_ALIKE = 3
_MOST_LISTED = 8
# Lengths that phrases mostly have, in bars: not worth a sentence.
_USUAL_LENGTHS = frozenset({1, 2, 4, 8})
_SIDES = ("early", "on", "late")


def phrase_facts(line: MelodicLine, phrases: tuple[Phrase, ...]) -> list[Fact]:
    """Return how many phrases there are, where they start and how long they are."""
    places = line.places(phrase[0] for phrase in phrases)
    count = len(phrases)
    unit = "phrase" if count == 1 else "phrases"
    facts = [Fact(f"{line.prefix}.phrases", count, str(count), unit, places)]
    sides = [phrase_start(line, phrase) for phrase in phrases]
    counts = [f"{sides.count(side)} {side}" for side in _SIDES if side in sides]
    text = ", ".join(counts)
    sentence = _starts_sentence(line, sides)
    facts.append(Fact(f"{line.prefix}.phrase-starts", text, text, "", places, sentence))
    lengths = phrase_lengths(line, phrases)
    value = " ".join(map(str, lengths))
    said, unit = _lengths_text(lengths)
    sentence = _lengths_sentence(line, lengths)
    return [*facts, Fact(f"{line.prefix}.phrase-lengths", value, said, unit, places, sentence)]


def phrase_start(line: MelodicLine, phrase: Phrase) -> str:
    """Return where a phrase starts against the bar: "early", "on" or "late"."""
    if line.offsets[phrase[0]] == 0:
        return "on"
    start, bar = line.starts[phrase[0]], line.bars[phrase[0]]
    end = line.pulse.bars[bar + 1]
    crosses = line.ends[phrase[-1]] > end
    return "early" if crosses and 2 * (end - start) < line.pulse.wholes[bar] else "late"


def phrase_lengths(line: MelodicLine, phrases: tuple[Phrase, ...]) -> list[Fraction]:
    """Return the length of each phrase in bars."""
    lengths = []
    for phrase, following in zip(phrases, (*phrases[1:], None), strict=True):
        bar = line.pulse.bar_index(line.ends[phrase[-1]] - 1)
        end, whole = line.pulse.bars[bar + 1], line.pulse.wholes[bar]
        if following is not None and line.starts[following[0]] <= end + whole:
            until = _in_bars(line, line.bars[following[0]], line.starts[following[0]])
        else:
            until = _in_bars(line, bar, end)
        lengths.append(until - _in_bars(line, line.bars[phrase[0]], line.starts[phrase[0]]))
    return lengths


def _in_bars(line: MelodicLine, bar: int, tick: int) -> Fraction:
    """Return a time in a written bar counted in bars: 2 1/2 is the middle of bar 2."""
    pulse = line.pulse
    whole, into = pulse.wholes[bar], tick - pulse.bars[bar] + pulse.skips[bar]
    return Fraction(pulse.written[bar].number * whole + into, whole)


def _starts_sentence(line: MelodicLine, sides: list[str]) -> str:
    """Return a sentence where all of three phrases or more start off the downbeat."""
    if line.is_bass or len(sides) < _FEWEST_ALIKE or len({*sides}) > 1 or sides[0] == "on":
        return ""
    count, name = number_word(len(sides)), the_part(line.part)
    if sides[0] == "early":
        return f"All {count} phrases of {name} start ahead of the bar line."
    return f"All {count} phrases of {name} start after the downbeat."


def _lengths_text(lengths: list[Fraction]) -> tuple[str, str]:
    """Return lengths to the nearest half bar: ("2", "bars each"), ("2, 2 and 4", "bars")."""
    said = [_halves(length) for length in lengths]
    if len(said) == 1:
        return said[0], "bar" if said[0] in ("1", "1/2") else "bars"
    if len({*said}) == 1:
        return said[0], "bar each" if said[0] in ("1", "1/2") else "bars each"
    if len(said) > _MOST_LISTED:
        return f"{_halves(min(lengths))} to {_halves(max(lengths))}", "bars"
    return listed(said), "bars"


def _halves(length: Fraction) -> str:
    whole, half = divmod(max((4 * length + 1) // 2, 1), 2)
    return f"{whole} 1/2" if whole and half else "1/2" if half else str(whole)


def _lengths_sentence(line: MelodicLine, lengths: list[Fraction]) -> str:
    """Return a sentence where phrases agree on a length that is not a usual one."""
    same = {_halves(length) for length in lengths}
    if line.is_bass or len(lengths) < _FEWEST_ALIKE or len(same) > 1:
        return ""
    length = same.pop()
    if not length.isdigit() or int(length) in _USUAL_LENGTHS:
        return ""
    number = number_word(int(length))
    return capitalised(f"{the_part(line.part)}'s phrases are {number} bars long.")
