"""Applied dominants, and tritone substitutes.

What counts as applied is decided by `sitegen.harmony.goals`: V or vii° of another degree than the
tonic (Kostka and Payne, *Tonal Harmony*, the chapters on secondary functions, from memory). The
ii of an applied dominant is none itself, and V7sus4/ii V7/ii is one. It resolves when the next
chord on another root stands on its goal, or delays it as the six-four over it. A tritone
substitute is a dominant seventh that falls a semitone to where the dominant a tritone away would
fall by fifth, as jazz teaching has it: M. Levine, *The Jazz Theory Book* (1995), from memory.
"""

from collections.abc import Sequence
from itertools import groupby

from sitegen.analysis.chord_techniques.functions import KeyedChord, KeyedLine
from sitegen.analysis.places import bars_said, listed
from sitegen.analysis.reading import Fact
from sitegen.analysis.roots.wording import count_fact
from sitegen.harmony.applied import Target
from sitegen.harmony.resolution import is_six_four, semitones_up
from sitegen.score.chord import Chord
from sitegen.score.interval import Interval

_MOST_TOLD = 4
_APPLIED = ("V", "vii")
_SUBSTITUTE = "subV"
_AUGMENTED_FOURTH = Interval(3, 6)


def applied_facts(line: KeyedLine) -> list[Fact]:
    """Return the applied dominants, those that resolve, and the substitutes for dominants."""
    applied = [group[-1] for group in _groups(line) if _numeral(group[-1]) in _APPLIED]
    substitutes = [each for each in line.chords if _numeral(each) == _SUBSTITUTE]
    resolved = [each for each in applied if _resolves(each)]
    facts = []
    if applied:
        facts.append(_fact("applied-dominants", applied, _told_applied(applied)))
    if resolved:
        facts.append(_fact("applied-dominants-resolved", resolved))
    if substitutes:
        facts.append(_fact("tritone-substitutes", substitutes, _told_substitute(substitutes[0])))
    return facts


def _groups(line: KeyedLine) -> list[tuple[KeyedChord, ...]]:
    """Return neighbours that are the same numeral of one degree together."""
    return [tuple(same) for _, same in groupby(line.chords, key=_target)]


def _target(each: KeyedChord) -> tuple[str, Target | None, int]:
    """Return what makes neighbours one: their goal, or for other chords their place."""
    target = each.function.target
    return _numeral(each), target, -1 if target else each.held.number


def _numeral(each: KeyedChord) -> str:
    """Return V, vii, ii or subV for a chord that is applied, "" for the others."""
    if each.function.sixth or each.function.target is None:
        return ""
    return each.function.target.numeral


def _resolves(each: KeyedChord) -> bool:
    target, answer = each.function.target, each.function.answer
    if target is None or answer is None:
        return False
    return semitones_up(target.name, answer.root) == 0 or is_six_four(answer, target.name)


def _fact(path: str, found: Sequence[KeyedChord], sentence: str = "") -> Fact:
    return count_fact(path, [each.held for each in found], sentence=sentence)


def _told_applied(applied: Sequence[KeyedChord]) -> str:
    """Return where applied dominants lead; of chords that come again, the first."""
    first: dict[tuple[str, str], KeyedChord] = {}
    for each in applied:
        first.setdefault((str(each.chord), str(each.function.answer)), each)
    led = [_led(each) for each in first.values() if _resolves(each) or not each.function.answer]
    astray = [_astray(each) for each in first.values() if each.function.answer]
    more = [f"{len(led) - _MOST_TOLD} more"] if len(led) > _MOST_TOLD else []
    word = "Applied dominants" if len(led) > 1 else "Applied dominant"
    told = [f"{word}: {listed([*led[:_MOST_TOLD], *more])}."] if led else []
    return " ".join([*told, *filter(None, astray)][:_MOST_TOLD])


def _led(each: KeyedChord) -> str:
    goal = f" to {each.function.answer}" if each.function.answer else ""
    return f"{_named(each)}{goal} in {_bar(each)}"


def _astray(each: KeyedChord) -> str:
    """Return how a chord misses its goal, "" for one that does not."""
    target = each.function.target
    if target is None or _resolves(each):
        return ""
    way = f"goes to {each.function.answer} and not to {target.name}"
    return f"{_bar(each).capitalize()}: {_named(each)} {way}."


def _named(each: KeyedChord) -> str:
    return f"{each.chord} ({each.function.numeral})"


def _told_substitute(each: KeyedChord) -> str:
    root = _AUGMENTED_FOURTH.above_name(each.chord.root)
    goal = each.function.answer
    to = f" to {goal}" if isinstance(goal, Chord) else ""
    where = _bar(each).capitalize()
    return (
        f"{where}: {each.chord} is a tritone substitute. It stands for {root}7 and falls a "
        f"semitone{to}."
    )


def _bar(each: KeyedChord) -> str:
    return bars_said([each.held.home])
