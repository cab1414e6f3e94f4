"""Triads whose roots lie a third apart: diatonic, chromatic and doubly chromatic mediants.

Told by the triads in the chords (sevenths and colours do not matter; a chord without a third, or
without a perfect fifth, has none) and by sound, C to D♯ like C to E♭:

- chromatic: both major or both minor; they share one note. C and A♭, Am and Cm.
- doubly chromatic: a major and a minor one that share no note. C and E♭m.
- diatonic: a major and a minor one that share two notes. C and Em.

Chords whose sevenths or sixths tie them closer are no chromatic mediants: Fm7 and A♭m6 have three
notes in common, A7 and Cm6 two.

Definitions: Kostka and Payne, *Tonal Harmony*, the chapter on mediants in late Romantic harmony,
and D. Kopp, *Chromatic Transformations in Nineteenth-Century Music* (2002), from memory. A chord
that is heard as a dominant of the one after it is no mediant (C E7 Am): one that is applied and
resolves, or without a key a dominant seventh, or a major triad before a minor chord, whose root
falls a fifth. Nor are two chords that the key's own scales hold, ♭III and V in minor.
"""

from collections.abc import Sequence
from itertools import pairwise
from typing import Literal

from sitegen.analysis.reading import ChartReading, Fact
from sitegen.analysis.roots.chord_line import HeldChord, Passage
from sitegen.analysis.roots.wording import count_fact, stretch_said
from sitegen.harmony import ChordFunction, function_line
from sitegen.harmony.applied import is_dominant_seventh
from sitegen.harmony.resolution import semitones_up
from sitegen.harmony.scales import is_diatonic
from sitegen.score.chord import Chord
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

Kind = Literal["chromatic-mediants", "doubly-chromatic-mediants", "diatonic-thirds"]
_THIRDS = {3: "minor", 4: "major", 8: "major", 9: "minor"}
_UP_A_FOURTH = 5
_MOST_TOLD, _MOST_IN_COMMON = 2, 2

Pair = tuple[HeldChord, HeldChord]
"""Two chords that follow each other."""


def mediant_facts(reading: ChartReading, passages: Sequence[Passage]) -> list[Fact]:
    """Return how many of each kind there are; the chromatic ones in a sentence."""
    found: dict[Kind, list[Pair]] = {}
    functions: tuple[ChordFunction | None, ...] | None = None
    for passage in passages:
        for place, pair in enumerate(pairwise(passage)):
            kind = _kind(pair)
            if kind is None:
                continue
            if kind != "diatonic-thirds":
                if functions is None:
                    functions = _functions(reading)
                if _is_of_the_key(reading.chart.key, functions, passage, place):
                    continue
            found.setdefault(kind, []).append(pair)
    return [
        count_fact(kind, [second for _, second in pairs], sentence=_sentence(kind, pairs))
        for kind, pairs in found.items()
    ]


def _functions(reading: ChartReading) -> tuple[ChordFunction | None, ...]:
    """Return what each chord is in the key; nothing for a chart without one."""
    key = reading.chart.key
    return function_line([symbol.chord for symbol in reading.chords], key) if key else ()


def _kind(pair: Pair) -> Kind | None:
    first, second = pair
    if (second.root - first.root) % 12 not in _THIRDS:
        return None
    qualities = _triad(first), _triad(second)
    if not all(qualities):
        return None
    in_common = (first.tones & second.tones).bit_count()
    if qualities[0] == qualities[1]:
        return "chromatic-mediants" if in_common <= _MOST_IN_COMMON else None
    if _shared(pair):
        return "diatonic-thirds"
    return "doubly-chromatic-mediants" if in_common < _MOST_IN_COMMON else None


def _triad(held: HeldChord) -> str:
    """Return "major" or "minor" for the triad in a chord, "" where there is none."""
    degrees = held.chord.degrees
    if "5" not in degrees:
        return ""
    return "major" if "3" in degrees else "minor" if "♭3" in degrees else ""


def _shared(pair: Pair) -> list[str]:
    """Return the notes that two triads share, as the first one spells them."""
    first, second = (_triad_notes(held.chord) for held in pair)
    sounding = {name.pitch_class for name in second}
    return [str(name) for name in first if name.pitch_class in sounding]


def _triad_notes(chord: Chord) -> list[PitchName]:
    """Return root, third and fifth; an added second stands between them among the members."""
    notes = zip(chord.degrees, chord.members, strict=True)
    return [name for degree, name in notes if degree in {"R", "3", "♭3", "5"}]


def _is_of_the_key(
    key: Key | None, functions: Sequence[ChordFunction | None], passage: Passage, place: int
) -> bool:
    """Tell whether the key, or the chord that follows, explains two chords otherwise."""
    first, second = passage[place : place + 2]
    if key is not None and is_diatonic(first.chord, key) and is_diatonic(second.chord, key):
        return True
    if functions and _is_resolving(functions[second.number]):
        return True
    return any(_is_dominant(second, after) for after in passage[place + 2 : place + 3])


def _is_resolving(found: ChordFunction | None) -> bool:
    if found is None or found.target is None or found.answer is None:
        return False
    return semitones_up(found.target.name, found.answer.root) == 0


def _is_dominant(held: HeldChord, after: HeldChord) -> bool:
    if (after.root - held.root) % 12 != _UP_A_FOURTH:
        return False
    is_minor_next = _triad(held) == "major" and _triad(after) == "minor"
    return is_dominant_seventh(held.chord) or is_minor_next


def _sentence(kind: Kind, pairs: Sequence[Pair]) -> str:
    if kind == "diatonic-thirds":
        return ""
    different = {(str(a.chord), str(b.chord)): (a, b) for a, b in reversed(pairs)}
    told = list(reversed(different.values()))[:_MOST_TOLD]
    return " ".join(_told(kind, pair) for pair in told)


def _told(kind: Kind, pair: Pair) -> str:
    first, second = pair
    third = _THIRDS[(second.root - first.root) % 12]
    start = f"{stretch_said([second])}: {first.chord} to {second.chord}"
    if kind == "doubly-chromatic-mediants":
        return f"{start}, a doubly chromatic mediant: the two triads share no note."
    return (
        f"{start}, a chromatic mediant: two {_triad(first)} triads a {third} third apart "
        f"with one note in common, {_shared(pair)[0]}."
    )
