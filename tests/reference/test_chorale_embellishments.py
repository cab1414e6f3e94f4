"""Passing and neighbour tones of chorales against music21's definitions of them.

Scores and analyses are those in music21's corpus: J. S. Bach's chorales by Riemenschneider's
numbers and the numerals that Dmitri Tymoczko and others gave them, which say the chords. Where
a tone outside its chord stands alone between chord tones, music21's three-note segments tell
from the intervals what it could be.
"""

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from typing import Any

import pytest
from unit.analysis.lines_over_chords import named
from unit.engraving.building import SPAN

from sitegen.analysis.embellishments import name_embellishments
from sitegen.analysis.reading import NoteReading
from sitegen.harmony import read_chord, role
from sitegen.score.chart import Bar, Chart, ChordEvent, Event, Note, Part
from sitegen.score.chord import Chord, NoChord
from sitegen.score.instrument import Instrument
from sitegen.score.meter import Meter
from sitegen.score.pitch import Pitch
from sitegen.score.role import Role

pytestmark = pytest.mark.filterwarnings("ignore")

# Those of the first twenty whose analysis is as long as the score.
CHORALES = (1, 2, 6, 16, 18)
FEWEST_PASSING, FEWEST_NEIGHBOURS = 50, 10
_SUFFIXES = {
    "major triad": "",
    "minor triad": "m",
    "diminished triad": "dim",
    "augmented triad": "+",
    "dominant seventh chord": "7",
    "minor seventh chord": "m7",
    "major seventh chord": "maj7",
    "half-diminished seventh chord": "m7b5",
    "diminished seventh chord": "dim7",
}


@pytest.mark.parametrize("number", CHORALES)
def test_tones_between_chord_tones_have_the_names_that_the_library_gives(number: int) -> None:
    from music21.voiceLeading import ThreeNoteLinearSegment  # noqa: PLC0415 - slow to import

    for before, tone, after in lone_tones(number):
        names = map(_their_name, (before, tone, after))
        segment: Any = ThreeNoteLinearSegment(*names)  # type: ignore[no-untyped-call]
        theirs = {
            "passing": segment.couldBePassingTone(),
            "neighbour": segment.couldBeNeighborTone(),
        }
        ours = {name: tone.embellishment == name for name in theirs}
        assert ours == theirs, (tone.part, tone.bar, tone.beat)


def test_there_are_tones_to_compare() -> None:
    found = Counter(tone.embellishment for n in CHORALES for _, tone, _ in lone_tones(n))
    assert found["passing"] >= FEWEST_PASSING
    assert found["neighbour"] >= FEWEST_NEIGHBOURS


@cache
def lone_tones(number: int) -> tuple[tuple[NoteReading, NoteReading, NoteReading], ...]:
    """Return each tone outside its one chord, struck between two chord tones, with both."""
    chart = read_chorale(number)
    readings = name_embellishments(chart, named(chart).notes)
    parts = [[note for note in readings if note.part == part.name] for part in chart.parts]
    threes = (three for mine in parts for three in zip(mine, mine[1:], mine[2:], strict=False))
    return tuple(three for three in threes if _is_alone(chart, *three))


def _is_alone(chart: Chart, before: NoteReading, tone: NoteReading, after: NoteReading) -> bool:
    ends = [reading.onset + reading.duration for reading in (before, tone)]
    if ends != [tone.onset, after.onset] or tone.role in {None, Role.CHORD_TONE}:
        return False
    changes = [event.onset for event in chart.chords]
    if any(tone.onset < change < after.onset for change in changes):
        return False
    return _ends_as_chord_tone(chart, before) and after.role is Role.CHORD_TONE


def _ends_as_chord_tone(chart: Chart, reading: NoteReading) -> bool:
    end = reading.onset + reading.duration
    last = max(e.onset for e in chart.chords if e.onset < end)
    chord = chart.chord_at(last)
    return chord is not None and role(str(reading.note.pitch), chord) is Role.CHORD_TONE


def _their_name(reading: NoteReading) -> str:
    return str(reading.note.pitch).replace("♭", "-").replace("♯", "#")


def read_chorale(number: int) -> Chart:
    """Return a chorale as a chart of four parts over the chords of its analysis."""
    from music21 import corpus  # noqa: PLC0415 - slow to import
    from music21.corpus.chorales import ChoraleList  # noqa: PLC0415 - as above

    numbers: Any = ChoraleList()  # type: ignore[no-untyped-call]
    bwv = numbers.byRiemenschneider[number]["bwv"]
    score = corpus.parse(f"bach/bwv{bwv}")
    analysis = corpus.parse(f"bach/choraleAnalyses/riemenschneider{number:03d}")
    assert analysis.duration.quarterLength == score.duration.quarterLength
    return Chart(
        id="chorale",
        kind="notation",
        span=SPAN,
        bars=tuple(_bars(score.parts[0])),
        parts=tuple(_part(part) for part in score.parts),
        chords=tuple(_chords(analysis)),
    )


def _bars(part: Any) -> Iterator[Bar]:  # noqa: ANN401 - music21 has no types
    meter: Any = None
    for number, measure in enumerate(part.getElementsByClass("Measure"), 1):
        meter = measure.timeSignature or meter
        found, start = Meter.read(meter.ratioString), Fraction(measure.offset)
        length = Fraction(measure.duration.quarterLength)
        skipped = Fraction(measure.paddingLeft)
        yield Bar(number, found, start, length, SPAN, skipped=skipped)


def _part(part: Any) -> Part:  # noqa: ANN401 - as above
    events = tuple(
        Event(Fraction(item.offset), Fraction(item.quarterLength), _notes(item), SPAN)
        for item in part.stripTies().flatten().notesAndRests
    )
    return Part(part.partName or part.id, Instrument("voice"), (events,), ("staff",))


def _notes(item: Any) -> tuple[Note, ...]:  # noqa: ANN401 - as above
    names = [pitch.nameWithOctave.replace("-", "b") for pitch in item.pitches]
    return tuple(Note(SPAN, pitch=Pitch.read(name)) for name in names)


def _chords(analysis: Any) -> Iterator[ChordEvent]:  # noqa: ANN401 - as above
    for numeral in analysis.flatten().getElementsByClass("RomanNumeral"):
        onset, length = Fraction(numeral.offset), Fraction(numeral.quarterLength)
        yield ChordEvent(onset, length, _chord(numeral), SPAN)


def _chord(numeral: Any) -> Chord | NoChord:  # noqa: ANN401 - as above
    suffix = _SUFFIXES.get(numeral.commonName)
    root = numeral.root().name.replace("-", "b")
    return NoChord() if suffix is None else read_chord(f"{root}{suffix}")
