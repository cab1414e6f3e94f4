"""Roots and applied chords of analysed Bach chorales, against music21 and the analysts.

The chords are those of the first seven analyses in music21's corpus (bach/choraleAnalyses, by
Dmitri Tymoczko and others), one a quarter, passage by passage in the key that the analyst names.
music21 answers for the roots, the numerals' strokes for what is applied.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import cache
from itertools import groupby, pairwise
from typing import Any, NamedTuple

import pytest
from unit.engraving.building import SPAN, bars

from sitegen.analysis.chord_techniques import find_chord_techniques
from sitegen.analysis.naming import name_chords
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.analysis.roots import find_root_motions
from sitegen.harmony import name_chord
from sitegen.score.chart import Chart, ChordEvent
from sitegen.score.chord import Chord
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

_CHORALES = 7


class Passage(NamedTuple):
    """Numerals of one key as music21 has them, and our reading of their chords."""

    place: str
    numerals: Sequence[Any]
    reading: ChartReading


@cache
def passages() -> tuple[Passage, ...]:
    """Return the passages of the chorales."""
    return tuple(_read_passages())


def _read_passages() -> Iterator[Passage]:
    from music21 import common, converter  # noqa: PLC0415 - takes a second

    folder = common.getCorpusFilePath() / "bach/choraleAnalyses"
    for path in sorted(folder.glob("*.rntxt"))[:_CHORALES]:
        numerals = converter.parse(path).recurse().getElementsByClass("RomanNumeral")
        for name, found in groupby(numerals, key=lambda numeral: str(numeral.key)):
            line = list(found)
            place = f"{path.stem} bar {line[0].measureNumber} {name}"
            yield Passage(place, line, _read_line(line))


def _read_line(numerals: Sequence[Any]) -> ChartReading:
    key = Key(_name(numerals[0].key.tonic.name), numerals[0].key.mode)
    events = tuple(
        ChordEvent(Fraction(place), Fraction(1), _chord(numeral, key), SPAN)
        for place, numeral in enumerate(numerals)
    )
    made = bars("4/4", -(-len(events) // 4))
    chart = Chart("c", "changes", SPAN, made, key=key, chords=events)
    return ChartReading(chart, (), name_chords(chart))


def _chord(numeral: Any, key: Key) -> Chord:  # noqa: ANN401 - a value of music21
    """Return the chord of thirds that the numeral's notes spell."""
    names = list(dict.fromkeys(_name(pitch.name) for pitch in numeral.pitches))
    chords = [naming.chord for naming in name_chord(names, key) if naming.chord is not None]
    return next(c for c in chords if set(c.members) == set(names) and "6" not in c.degrees)


def _name(name: str) -> PitchName:
    return PitchName.read(name.replace("-", "b"))


def value_of(facts: Sequence[Fact], path: str) -> object:
    return next((fact.value for fact in facts if fact.path == path), 0)


def test_there_are_passages() -> None:
    assert len(passages()) > 30


@pytest.mark.parametrize(
    ("path", "semitones"),
    [("fifth-falls", 5), ("fourth-falls", 7), ("tritone-root-motions", 6)],
)
def test_root_motions_are_those_of_the_library(path: str, semitones: int) -> None:
    for passage in passages():
        roots = [root for root, _ in groupby(n.root().pitchClass for n in passage.numerals)]
        there = sum((after - before) % 12 == semitones for before, after in pairwise(roots))
        here = value_of(find_root_motions(passage.reading), path)
        assert here == there, passage.place


def test_applied_dominants_are_those_of_the_analysts() -> None:
    for passage in passages():
        goals = [_goal(numeral) for numeral in passage.numerals]
        there = sum(bool(goal) for goal, _ in groupby(goals))
        here = value_of(find_chord_techniques(passage.reading), "applied-dominants")
        assert here == there, passage.place


def _goal(numeral: Any) -> str:  # noqa: ANN401 - a value of music21
    """Return what a chord is V or vii° of, for chords that are applied."""
    goal = numeral.secondaryRomanNumeral
    return goal.figure if goal is not None and numeral.figure.lower().startswith("v") else ""
