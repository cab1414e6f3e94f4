"""Pedal basses: a bass that stays while the chords change.

It is the same bass under three chords or more on at least two different roots, with
two changes of root or more: C F/C C, Em D/E C/E. It is a pedal proper when one chord at least does
not contain the note ("dissonant with some of the harmonies above it": the pedal point of Kostka
and Payne, *Tonal Harmony*, the chapters on non-chord tones; from memory). On 1 it is a tonic
pedal, on 5 a dominant pedal.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from sitegen.analysis.bass.bass_line import BassLine, BassTone
from sitegen.analysis.places import listed
from sitegen.analysis.reading import Fact
from sitegen.analysis.roots.chord_line import HeldChord
from sitegen.analysis.roots.wording import chords_said, places_of, stretch_said
from sitegen.harmony import key_degree
from sitegen.score.key import Key

_FEWEST_CHORDS, _FEWEST_ROOT_CHANGES, _FEWEST_TOLD = 3, 2, 4
_KINDS = {"1": "tonic pedal", "5": "dominant pedal"}


def pedal_facts(line: BassLine, key: Key | None, *, told: bool) -> list[Fact]:
    """Return the longest pedal of a bass line: its chords, and those that lack the note."""
    pedals = [run for stretch in line.stretches for run in _pedals(stretch)]
    if not pedals:
        return []
    longest = max(pedals, key=len)
    chords = [tone.held for tone in longest]
    foreign = [held for held in chords if not held.holds(longest[0].sound)]
    is_telling = told and (foreign or len(chords) >= _FEWEST_TOLD)
    sentence = _told(line, longest, foreign, key) if is_telling else ""
    path = f"{line.prefix}pedal-bass"
    count = len(chords)
    facts = [Fact(path, count, str(count), "chords", places_of(chords), sentence)]
    if foreign:
        number = len(foreign)
        unit = "chords without the note"
        facts.append(Fact(f"{path}-foreign", number, str(number), unit, places_of(foreign)))
    return facts


def _pedals(stretch: Sequence[BassTone]) -> Iterator[Sequence[BassTone]]:
    start = 0
    for place in range(1, len(stretch) + 1):
        if place < len(stretch) and _goes_on(stretch[place - 1], stretch[place]):
            continue
        if is_pedal([tone.held for tone in stretch[start:place]]):
            yield stretch[start:place]
        start = place


def _goes_on(first: BassTone, second: BassTone) -> bool:
    return first.sound == second.sound and not second.held.after_silence


def is_pedal(chords: Sequence[HeldChord]) -> bool:
    """Tell whether chords over, or under, one note change often enough to make it a pedal."""
    if len(chords) < _FEWEST_CHORDS:
        return False
    changes = sum(first.root != second.root for first, second in pairwise(chords))
    return changes >= _FEWEST_ROOT_CHANGES


def _told(
    line: BassLine, run: Sequence[BassTone], foreign: Sequence[HeldChord], key: Key | None
) -> str:
    chords = [tone.held for tone in run]
    name = run[0].name
    kind = _KINDS.get(key_degree(name, key), "pedal") if key else "pedal"
    start = f"{stretch_said(chords)}{line.speaker}:"
    if not foreign:
        return f"{start} the bass stays on {name} under {chords_said(chords)}."
    without = listed(dict.fromkeys(_above(held) for held in foreign))
    verb = "have" if len(set(map(_above, foreign))) > 1 else "has"
    return f"{start} a {kind} on {name} under {chords_said(chords)}; {without} {verb} no {name}."


def _above(held: HeldChord) -> str:
    """Return the chord as it is named over the pedal, without its slash."""
    return f"{held.chord.root}{held.chord.quality}"
