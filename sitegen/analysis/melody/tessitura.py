"""Where a line lies: its tessitura, the pitch it is most on, and its highest note.

Tessitura is the part of the range that a line mostly uses; books give no formula. Here it is the
middle half of the sounding time with the pitches in order of height: a quarter of the time lies
below its lower end at most, and a quarter above its upper end.

The climax is the highest note where the line reaches it in one place only; a note that is struck
again at once is still there.
"""

from collections import Counter
from fractions import Fraction

from sitegen.analysis.melody.line import MelodicLine
from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact
from sitegen.analysis.wording import capitalised, percent, the_part

_QUARTER = 4
_FEWEST_PITCHES = 3
_ENOUGH = 8
_FEWEST_BARS = 4


def tessitura_facts(line: MelodicLine) -> list[Fact]:
    """Return the middle of the range, the most heard pitch and the climax; none for one pitch."""
    times: Counter[int] = Counter()
    for midi, start, end in zip(line.midi, line.starts, line.ends, strict=True):
        times[midi] += end - start
    if len(times) == 1:
        return []
    return [_tessitura(line, times), *_most_heard(line, times), *_climax(line)]


def middle_half(times: Counter[int]) -> tuple[int, int]:
    """Return the lowest and highest pitch in the middle half of the time that each sounds."""
    total = sum(times.values())
    return _quarter(times, total), _quarter(times, total, falling=True)


def _quarter(times: Counter[int], total: int, *, falling: bool = False) -> int:
    """Return the first pitch from one side that more than a quarter of the time reaches."""
    passed = 0
    for midi in sorted(times, reverse=falling):
        passed += times[midi]
        if _QUARTER * passed > total:
            return midi
    raise AssertionError("some pitch sounds")


def _tessitura(line: MelodicLine, times: Counter[int]) -> Fact:
    low, high = middle_half(times)
    places = line.places(sorted({line.midi.index(low), line.midi.index(high)}))
    text = _name(line, low) if low == high else f"{_name(line, low)} to {_name(line, high)}"
    return Fact(f"{line.prefix}.tessitura", text, text, "", places)


def _name(line: MelodicLine, midi: int) -> str:
    return str(line.notes[line.midi.index(midi)].note.pitch)


def _most_heard(line: MelodicLine, times: Counter[int]) -> list[Fact]:
    """Return the pitch that sounds longest and its share of the time; none for a tie."""
    (midi, time), (_, second) = times.most_common(2)
    if time == second:
        return []
    places = line.places(index for index, other in enumerate(line.midi) if other == midi)
    share, name = Fraction(time, line.sounding), _name(line, midi)
    sentence = ""
    telling = len(times) >= _FEWEST_PITCHES and len(line) >= _ENOUGH and not line.is_bass
    if telling and 2 * share > 1:
        part = capitalised(the_part(line.part))
        sentence = f"{part} spends more than half of its sounding time on {name}."
    path = f"{line.prefix}.most-heard"
    return [
        Fact(path, name, name, "", places, sentence),
        Fact(f"{path}-share", share, percent(share), "of its sounding time", places),
    ]


def _climax(line: MelodicLine) -> list[Fact]:
    top = max(line.midi)
    first, count = line.midi.index(top), line.midi.count(top)
    if line.midi[first : first + count].count(top) < count:
        return []
    start, end = line.starts[0], line.ends[-1]
    way = Fraction(line.starts[first] - start, end - start)
    bar = line.notes[first].bar
    places = line.places(range(first, first + count))
    text, sentence = bars_said([bar]), ""
    long = line.pulse.written[-1].number >= _FEWEST_BARS and len(line) > _ENOUGH
    if long and _QUARTER * way >= 1 and not line.is_bass:
        name = capitalised(the_part(line.part))
        sentence = f"{name} reaches its highest note, {_name(line, top)}, only in {text}."
    return [
        Fact(f"{line.prefix}.climax", text, text, "", places, sentence),
        Fact(f"{line.prefix}.climax-position", way, percent(way), "of the way", places),
    ]
