"""The intervals of tunes against music21's count of them and its jSymbolic features.

Tunes: sopranos of Bach chorales and fiddle tunes from the corpus in music21's package.
"""

from collections import Counter
from fractions import Fraction
from functools import cache
from itertools import pairwise
from typing import Any

import pytest

from sitegen.analysis.melody import find_melody
from sitegen.analysis.naming import name_notes
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.score.chart import Bar, Chart, Event, Note, Part
from sitegen.score.instrument import Instrument
from sitegen.score.meter import Meter
from sitegen.score.pitch import Pitch
from sitegen.source import Span

SPAN = Span(1, 1, 1, 2)
CHORALES = ("bwv66.6", "bwv1.6", "bwv10.7", "bwv20.7", "bwv38.6", "bwv145.5", "bwv269", "bwv377")
FIDDLE_TUNES = ("7thRegimentReel", "AllAboardReel", "AlmacksHornpipe", "BanishMisfortune")
TUNES = (*CHORALES, *FIDDLE_TUNES)


@cache
def stream_of(name: str) -> Any:  # noqa: ANN401 - music21's classes are not typed
    """Return a tune as music21 has it: notes and rests of one part, ties joined, flat."""
    from music21 import corpus  # noqa: PLC0415 - slow to import

    if name.startswith("bwv"):
        part = corpus.parse(f"bach/{name}").parts[0]
    else:
        part = corpus.parse(f"ryansMammoth/{name}").parts[0]
    return part.stripTies().flatten()


def facts_of(name: str) -> dict[str, Fact]:
    """Return what we find in the tune."""
    chart = _chart(stream_of(name))
    return {fact.path: fact for fact in find_melody(ChartReading(chart, name_notes(chart), ()))}


def _chart(stream: Any) -> Chart:  # noqa: ANN401 - as above
    events = tuple(
        Event(
            Fraction(stream.elementOffset(note)),
            Fraction(note.quarterLength),
            (Note(SPAN, pitch=Pitch.read(note.pitch.nameWithOctave.replace("-", "b"))),),
            SPAN,
        )
        for note in stream.notes
    )
    meter, end = Meter.read("4/4"), max(event.end for event in events)
    count = -int(-end // meter.length)
    bars = tuple(
        Bar(number + 1, meter, number * meter.length, meter.length, SPAN)
        for number in range(count)
    )
    part = Part("voice", Instrument("voice"), (events,), ("staff",))
    return Chart("tune", "notation", SPAN, bars, parts=(part,))


@pytest.mark.filterwarnings("ignore")
@pytest.mark.parametrize("name", TUNES)
def test_spelled_intervals_are_those_of_music21(name: str) -> None:
    from music21 import interval  # noqa: PLC0415 - slow to import

    pairs = pairwise(note.pitch for note in stream_of(name).notes)
    theirs = Counter(interval.Interval(before, after).name for before, after in pairs)
    value = str(facts_of(name)["voice.intervals"].value)
    ours = {word.split()[0]: int(word.split()[1]) for word in value.split(", ")}
    assert ours == dict(theirs)


def _feature(name: str, feature: str) -> float:
    from music21.features import jSymbolic  # noqa: PLC0415 - slow to import

    return float(getattr(jSymbolic, feature)(stream_of(name)).extract().vector[0])


# The features count semitones: 0; 1 and 2; 3 and 4.
SHARES = {
    "repeats-share": "RepeatedNotesFeature",
    "steps-share": "StepwiseMotionFeature",
    "thirds-share": "MelodicThirdsFeature",
}
# By semitones these are of another size than by their letters.
MISSPELT = {"A2", "d3", "d4", "A3"}


@pytest.mark.filterwarnings("ignore")
@pytest.mark.parametrize("name", TUNES)
def test_shares_are_those_of_the_jsymbolic_features(name: str) -> None:
    found = facts_of(name)
    assert not MISSPELT & {*str(found["voice.intervals"].value).split()}
    for path, feature in SHARES.items():
        theirs = _feature(name, feature)
        fact = found.get(f"voice.{path}")
        ours = Fraction(0) if fact is None else Fraction(fact.value)
        assert float(ours) == pytest.approx(theirs)


@pytest.mark.filterwarnings("ignore")
@pytest.mark.parametrize("name", TUNES)
def test_rises_and_falls_of_the_parsons_code_are_those_of_jsymbolic(name: str) -> None:
    theirs = _feature(name, "DirectionOfMotionFeature")
    code = str(facts_of(name)["voice.parsons"].value)
    assert code.count("u") / (code.count("u") + code.count("d")) == pytest.approx(theirs)
