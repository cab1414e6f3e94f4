"""Borrowed chords, the Neapolitan, augmented sixths.

Borrowed is a chord that none of the key's own scales holds and that is no applied chord, no
substitute, no augmented sixth and no Neapolitan, but lies in the parallel key: in major in the
natural or harmonic minor on the same tonic (iv, ♭III, ♭VI, ♭VII, ii half-diminished, vii°7, i, v),
in minor in the parallel major (I, iii, vi); in the other modes in either. A major chord on 5 is
the dominant of both. ♭VII and v in major may as well come from the mixolydian mode, as writers
on rock take them, and the sentence says so (`key: G mixolydian` makes them the key's own). A
major tonic that ends a chart in minor is the Picardy third and no borrowed chord. Kostka and
Payne, *Tonal Harmony*, the chapters on mode mixture, the Neapolitan and augmented sixth chords,
from memory.

The Neapolitan is the major triad (or major seventh) on ♭2 that goes on to the dominant, its
six-four, or the leading-tone chord of the dominant; without that ♭II is only itself.
"""

from collections.abc import Iterable, Mapping, Sequence

from sitegen.analysis.chord_techniques.functions import KeyedChord, KeyedLine
from sitegen.analysis.places import bars_said, listed
from sitegen.analysis.reading import Fact
from sitegen.analysis.roots.wording import count_fact
from sitegen.harmony.applied import is_dominant_seventh
from sitegen.harmony.resolution import acting_root, is_six_four, semitones_up
from sitegen.harmony.scales import is_diatonic, scales_of
from sitegen.score.chord import Chord
from sitegen.score.interval import Interval
from sitegen.score.key import Key

_MOST_TOLD = 4
_FLAT_SECOND, _SECOND, _FIFTH_DEGREE = 1, 2, 7
_NEAPOLITAN = ({"R", "3", "5"}, {"R", "3", "5", "7"})
_FIFTH = Interval(4, 7)
_SIXTHS = {"It6": "Italian", "Fr43": "French", "Ger65": "German"}


def mixture_facts(line: KeyedLine) -> list[Fact]:
    """Return the borrowed chords, Neapolitans, augmented sixths and the Picardy third."""
    neapolitans = [each for each in line.chords if _is_neapolitan(each, line.key)]
    sixths = [each for each in line.chords if each.function.sixth]
    picardy = [each for each in line.chords[-1:] if _is_picardy(each, line)]
    other = [*neapolitans, *picardy]
    sources = [(each, _source(each, line.key)) for each in line.chords if each not in other]
    borrowed = [(each, source) for each, source in sources if source]
    facts = []
    if borrowed:
        sentence = _told_borrowed(borrowed, line.key)
        facts.append(_fact("borrowed-chords", (each for each, _ in borrowed), sentence))
    if neapolitans:
        facts.append(_fact("neapolitan", neapolitans, _told_neapolitan(neapolitans[0])))
    if sixths:
        facts.append(_fact("augmented-sixths", sixths, _told_sixth(sixths[0])))
    if picardy:
        facts.append(_fact("picardy-third", picardy, _told_picardy(picardy[0])))
    return facts


def _fact(path: str, found: Iterable[KeyedChord], sentence: str) -> Fact:
    return count_fact(path, [each.held for each in found], sentence=sentence)


def _source(each: KeyedChord, key: Key) -> Key | None:
    """Return the parallel key that a chord is borrowed from; None for one that is not."""
    chord, function = each.chord, each.function
    if function.target or function.sixth or is_diatonic(chord, key) or _is_dominant(chord, key):
        return None
    if _is_two_of_four(chord, function.answer, key):
        return None
    modes = {"major": ("minor",), "minor": ("major",)}.get(key.mode, ("minor", "major"))
    parallel = (Key(key.tonic, mode) for mode in modes)
    return next((home for home in parallel if _holds(home, chord)), None)


def _holds(key: Key, chord: Chord) -> bool:
    """Tell whether the key's own scale, or harmonic minor, holds a chord; not melodic minor."""
    return any(scale.issuperset(chord.members) for scale in scales_of(key)[:2])


def _is_dominant(chord: Chord, key: Key) -> bool:
    return chord.root == _FIFTH.above_name(key.tonic) and "3" in chord.degrees


def _is_two_of_four(chord: Chord, answer: Chord | None, key: Key) -> bool:
    """Tell whether v7 goes to I7: the ii and V of IV, as jazz players hear it in a blues."""
    if answer is None or answer.root != key.tonic or not is_dominant_seventh(answer):
        return False
    return chord.root == _FIFTH.above_name(key.tonic) and {"♭3", "♭7"} <= set(chord.degrees)


def _is_neapolitan(each: KeyedChord, key: Key) -> bool:
    chord, answer = each.chord, each.function.answer
    is_flat_two = semitones_up(key.tonic, chord.root) == _FLAT_SECOND
    if not is_flat_two or set(chord.degrees) not in _NEAPOLITAN or is_diatonic(chord, key):
        return False
    return answer is not None and _is_dominant_side(answer, key)


def _is_dominant_side(answer: Chord, key: Key) -> bool:
    """Tell whether a chord is the dominant, its six-four, or leads to it as its vii°."""
    dominant = _FIFTH.above_name(key.tonic)
    if is_six_four(answer, dominant):
        return True
    root = acting_root(answer)
    is_leading_tone_chord = root != answer.root
    acts_as = semitones_up(key.tonic, root) in (_FIFTH_DEGREE, _SECOND)
    return acts_as and (is_leading_tone_chord or "3" in answer.degrees)


def _is_picardy(each: KeyedChord, line: KeyedLine) -> bool:
    """Tell whether the last chord is the tonic of a minor key with a major third."""
    chord = each.chord
    minor_before = any("♭3" in e.chord.degrees for e in line.chords if e.chord.root == chord.root)
    is_tonic = chord.root == chord.bass == line.key.tonic
    return (
        is_tonic and line.key.is_minor and set(chord.degrees) == {"R", "3", "5"} and minor_before
    )


def _told_borrowed(borrowed: Sequence[tuple[KeyedChord, Key]], key: Key) -> str:
    """Return what is borrowed from where; of chords that come again, all their bars."""
    bars: dict[str, dict[str, list[int]]] = {}
    for each, source in borrowed:
        name = f"{each.chord} ({each.function.numeral})"
        found = bars.setdefault(_source_name(each.chord, source, key), {})
        found.setdefault(name, []).append(each.held.home)
    return " ".join(
        f"Borrowed from {source}: {_told_chords(chords)}." for source, chords in bars.items()
    )


def _source_name(chord: Chord, source: Key, key: Key) -> str:
    mixolydian = Key(key.tonic, "mixolydian")
    if key.mode == "major" and _holds(mixolydian, chord):
        return f"{source} or mixolydian"
    return str(source)


def _told_chords(chords: Mapping[str, Sequence[int]]) -> str:
    told = [f"{name} in {bars_said(bars)}" for name, bars in chords.items()]
    more = [f"{len(told) - _MOST_TOLD} more"] if len(told) > _MOST_TOLD else []
    return listed([*told[:_MOST_TOLD], *more])


def _told_neapolitan(each: KeyedChord) -> str:
    return (
        f"{_bar(each)}: {each.chord}, the major chord on the lowered second degree, is a "
        f"Neapolitan on its way to {each.function.answer}."
    )


def _told_sixth(each: KeyedChord) -> str:
    kind = _SIXTHS[each.function.sixth]
    article = "an" if kind == "Italian" else "a"
    return (
        f"{_bar(each)}: {each.chord} before {each.function.answer} is {article} {kind} "
        f"augmented sixth."
    )


def _told_picardy(each: KeyedChord) -> str:
    return f"{_bar(each)}: the last chord, {each.chord}, is major, a Picardy third."


def _bar(each: KeyedChord) -> str:
    return bars_said([each.held.home]).capitalize()
