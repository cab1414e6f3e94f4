"""The intervals of a line: how it moves, its widest leap, and whether it turns back.

An interval goes from one note to the next, over rests as well. By its spelling it is a
repetition (the same pitch), a step (a second of any quality, or a chromatic semitone), a third
or a leap (a fourth or more).

Gap-fill: L. B. Meyer, "Explaining Music", 1973: after a leap a line tends to turn back and fill
what it skipped (from memory). Here: of the leaps of a fifth or more inside a phrase, those after
which the next other pitch of the phrase lies back in the direction the leap came from.
"""

from collections import Counter
from fractions import Fraction
from functools import lru_cache

from sitegen.analysis.facts import interval_words
from sitegen.analysis.melody.line import MelodicLine
from sitegen.analysis.melody.phrases import Phrase
from sitegen.analysis.places import bars_said, listed
from sitegen.analysis.reading import Fact
from sitegen.analysis.wording import capitalised, percent, the_part
from sitegen.score.interval import Interval

_KINDS = ("repeats", "steps", "thirds", "leaps")
_REPEAT, _STEP, _THIRD, _LEAP = range(4)
_WIDE = 4
_ENOUGH = 12
_HALF, _FEW = Fraction(1, 2), Fraction(1, 4)
_QUALITIES = {"P": "", "M": "major ", "m": "minor ", "A": "augmented ", "d": "diminished "}
_SIZES = (
    "unison second third fourth fifth sixth seventh octave ninth tenth eleventh twelfth "
    "thirteenth fourteenth fifteenth"
).split()


def interval_facts(line: MelodicLine, phrases: tuple[Phrase, ...]) -> list[Fact]:
    """Return the profile of the intervals, the share of each kind and the widest leap."""
    if len(line) < 2:  # noqa: PLR2004 - one note has no interval
        return []
    kinds = [*map(_kind, line.moves, line.semitones)]
    facts = [_profile(line)]
    facts += [_share(line, kinds, kind) for kind in range(len(_KINDS)) if kind in kinds]
    inside = {index for phrase in phrases for index in phrase[:-1]}
    return [*facts, *_widest(line, kinds, inside), *_turns(line, inside)]


def _kind(move: int, semitones: int) -> int:
    if semitones == 0:
        return _REPEAT
    size = abs(move)
    return _STEP if size <= 1 else _THIRD if size == 2 else _LEAP  # noqa: PLR2004


def _profile(line: MelodicLine) -> Fact:
    """Return how often each spelled interval comes, whichever its direction."""
    counts: Counter[Interval] = Counter()
    for move, count in Counter(zip(line.moves, line.semitones, strict=True)).items():
        counts[_rising(*move)] += count
    ordered = sorted(counts.items(), key=lambda item: (item[0].steps, item[0].semitones))
    named = [(*_names(interval), count) for interval, count in ordered]
    value = ", ".join(f"{short} {count}" for short, _, count in named)
    text = listed(f"{count} {word}{'s' if count > 1 else ''}" for _, word, count in named)
    return Fact(f"{line.prefix}.intervals", value, text)


@lru_cache(maxsize=512)
def _rising(move: int, semitones: int) -> Interval:
    falls = move < 0 or (move == 0 and semitones < 0)
    return Interval(-move, -semitones) if falls else Interval(move, semitones)


@lru_cache(maxsize=512)
def _names(interval: Interval) -> tuple[str, str]:
    """Return an interval's short name, and its name in words; the short one again if far out."""
    name = interval.name
    if interval.steps >= len(_SIZES) or name[1:2] not in "123456789" or name[0] not in _QUALITIES:
        return name, name
    return name, f"{_QUALITIES[name[0]]}{_SIZES[interval.steps]}"


def _share(line: MelodicLine, kinds: list[int], kind: int) -> Fact:
    found = [index for index, other in enumerate(kinds) if other == kind]
    share = Fraction(len(found), len(kinds))
    places = tuple(line.stretch(index, index + 2) for index in found)
    sentence = "" if line.is_bass else _share_sentence(line, kinds, kind, share)
    path = f"{line.prefix}.{_KINDS[kind]}-share"
    return Fact(path, share, percent(share), "of its intervals", places, sentence)


def _share_sentence(line: MelodicLine, kinds: list[int], kind: int, share: Fraction) -> str:
    """Return what is rare enough to tell: a line all of steps, one of thirds, one that stays."""
    if len(kinds) < _ENOUGH:
        return ""
    name, moving = the_part(line.part), len(kinds) - kinds.count(_REPEAT)
    if kind == _STEP and len(kinds) - kinds.count(_REPEAT) == kinds.count(_STEP) >= _ENOUGH:
        again = ", apart from repeated notes" if _REPEAT in kinds else ""
        return capitalised(f"{name} moves by step all the way{again}.")
    if kind == _THIRD and 2 * kinds.count(_THIRD) >= moving:
        return f"Of the {moving} intervals that {name} moves by, {kinds.count(_THIRD)} are thirds."
    if kind == _REPEAT and share > _HALF:
        return capitalised(f"{name} repeats its note more often than it leaves it.")
    return ""


def _widest(line: MelodicLine, kinds: list[int], inside: set[int]) -> list[Fact]:
    """Return the widest move of a third or more: the first, with all others like it."""
    sizes = [*map(abs, line.semitones)]
    skips = [index for index, kind in enumerate(kinds) if kind in (_THIRD, _LEAP)]
    if not skips:
        return []
    widest = max(skips, key=lambda index: (sizes[index], abs(line.moves[index])))
    move = (line.moves[widest], line.semitones[widest])
    alike = [i for i in skips if (line.moves[i], line.semitones[i]) == move]
    interval = _rising(*move)
    direction = "up" if line.semitones[widest] > 0 else "down"
    text = f"{direction} {interval_words(interval)}"
    value = interval.name if direction == "up" else f"-{interval.name}"
    places = tuple(place for i in alike for place in line.places((i, i + 1)))
    rivals = sum(1 for size in sizes if size == sizes[widest])
    sentence = ""
    joined = line.ends[widest] == line.starts[widest + 1]
    if rivals == 1 and joined and widest in inside and not line.is_bass:
        few = Fraction(kinds.count(_LEAP), len(kinds)) <= _FEW
        sentence = _leap_sentence(line, widest, text, inside) if few else ""
    return [Fact(f"{line.prefix}.largest-leap", value, text, "", places, sentence)]


def _leap_sentence(line: MelodicLine, index: int, text: str, inside: set[int]) -> str:
    """Say what a leap of a sixth or more does, in a line that leaps little."""
    if abs(line.moves[index]) <= _WIDE or len(line) <= _ENOUGH:
        return ""
    where = capitalised(bars_said([line.notes[index + 1].bar]))
    after = _move_after(line, index, inside)
    if after is None:
        return ""
    rises = line.semitones[index] > 0
    turns = (line.semitones[after] > 0) != rises
    steps = abs(line.moves[after]) <= 1
    back, on = ("down", "up") if rises else ("up", "down")
    goes = f"comes back {back}" if turns else f"goes on {on}"
    by_step = " by step" if steps else ""
    name = the_part(line.part)
    return f"{where}: {name} leaps {text}, its widest interval, and {goes}{by_step}."


def _move_after(line: MelodicLine, index: int, inside: set[int]) -> int | None:
    """Return where the line next leaves the pitch that a leap reached; None if its phrase ends."""
    at = index + 1
    while at in inside and line.semitones[at] == 0:
        at += 1
    return at if at in inside else None


def _turns(line: MelodicLine, inside: set[int]) -> list[Fact]:
    """Return how many leaps of a fifth or more are turned back from; all are its evidence."""
    leaps = [index for index in sorted(inside) if abs(line.moves[index]) >= _WIDE]
    answers = [(index, _move_after(line, index, inside)) for index in leaps]
    judged = [(index, after) for index, after in answers if after is not None]
    if not judged:
        return []
    rises = [(line.semitones[index] > 0, line.semitones[after] > 0) for index, after in judged]
    count, turned = len(judged), sum(leap != answer for leap, answer in rises)
    unit = "leap of a fifth or more" if count == 1 else "leaps of a fifth or more"
    places = tuple(line.stretch(index, after + 2) for index, after in judged)
    path, text = f"{line.prefix}.leaps-turned", f"{turned} of {count}"
    return [Fact(path, Fraction(turned, count), text, unit, places)]
