"""The figures that prose can cite, each with where in the chart it is seen.

Paths: `bars`, `meter`, `key`, `tempo`, `length`, `chords`, `numerals`, and for each part, by
its name with hyphens, `<part>.notes`, `<part>.lowest`, `<part>.highest`, `<part>.range`.
"""

from collections.abc import Callable, Sequence

from sitegen.analysis.reading import ChartReading, ChordReading, Fact, NoteReading, Place
from sitegen.score.chart import Chart, Part
from sitegen.score.chord import Chord
from sitegen.score.interval import Interval

_SECONDS = 60
_NUMBERS = ("unison", "second", "third", "fourth", "fifth", "sixth", "seventh", "octave")
_QUALITIES = {"P": "perfect", "M": "major", "m": "minor", "A": "augmented", "d": "diminished"}
_OCTAVE = 7


def find_figures(reading: ChartReading) -> tuple[Fact, ...]:
    """Return the plain figures of a chart; one that has no meaning for it is left out."""
    facts = _chart_facts(reading.chart)
    facts += _chord_facts(reading.chords)
    for part in reading.chart.parts:
        mine = [note for note in reading.notes if note.part == part.name]
        facts += _part_facts(part, mine)
    return tuple(facts)


def _chart_facts(chart: Chart) -> list[Fact]:
    count = chart.bar_count
    facts = [
        Fact("bars", count, str(count), "bars"),
        Fact("meter", str(chart.bars[0].meter), str(chart.bars[0].meter)),
    ]
    if chart.key is not None:
        facts.append(Fact("key", str(chart.key), str(chart.key)))
    if chart.tempo is not None:
        bpm = chart.tempo.beats_per_minute
        facts.append(Fact("tempo", bpm, f"{float(bpm):g}", f"{chart.tempo.beat_name}s a minute"))
        seconds = chart.length / chart.tempo.quarters_per_minute * _SECONDS
        facts.append(Fact("length", seconds, f"{float(seconds):.1f}", "seconds"))
    return facts


def _chord_facts(chords: Sequence[ChordReading]) -> list[Fact]:
    sounding = [reading for reading in chords if isinstance(reading.chord, Chord)]
    if not sounding:
        return []
    first: dict[str, ChordReading] = {}
    for reading in sounding:
        first.setdefault(str(reading.chord), reading)
    evidence = tuple(Place(reading.bar, reading.beat) for reading in first.values())
    facts = [Fact("chords", len(first), str(len(first)), "different chords", evidence)]
    if all(reading.roman for reading in sounding):
        numerals = " ".join(reading.roman for reading in sounding)
        places = tuple(Place(reading.bar, reading.beat) for reading in sounding)
        facts.append(Fact("numerals", numerals, numerals, "", places))
    return facts


def _part_facts(part: Part, notes: Sequence[NoteReading]) -> list[Fact]:
    prefix = part.name.replace(" ", "-")
    facts = [Fact(f"{prefix}.notes", len(notes), str(len(notes)), "notes")]
    pitched = [reading for reading in notes if reading.note.pitch is not None]
    if pitched:
        facts += _range_facts(prefix, pitched)
    return facts


def _range_facts(prefix: str, notes: Sequence[NoteReading]) -> list[Fact]:
    low, high = (_extreme(notes, choose) for choose in (min, max))
    interval = Interval.between(low.note.pitch, high.note.pitch)  # type: ignore[arg-type]
    ends = (_place(low), _place(high))
    return [
        Fact(f"{prefix}.lowest", str(low.note.pitch), str(low.note.pitch), "", ends[:1]),
        Fact(f"{prefix}.highest", str(high.note.pitch), str(high.note.pitch), "", ends[1:]),
        Fact(f"{prefix}.range", interval.name, interval_words(interval), "", ends),
    ]


def _extreme(notes: Sequence[NoteReading], choose: Callable[..., NoteReading]) -> NoteReading:
    return choose(notes, key=lambda reading: reading.note.midi or 0)


def _place(reading: NoteReading) -> Place:
    return Place(reading.bar, reading.beat, (reading.id,))


def interval_words(interval: Interval) -> str:
    """Return a rising interval in words: "a minor sixth", "an octave and a major third".

    An interval that is spelled past its letters ("B♯ to C♭") is told in semitones.
    """
    octaves, step = divmod(interval.steps, _OCTAVE)
    rest = Interval(step, interval.semitones - 12 * octaves)
    if octaves and step == 0 and rest.semitones < 0:
        octaves, rest = octaves - 1, Interval(_OCTAVE, rest.semitones + 12)
    if interval.steps < 0 or rest.name[0] == "-" or rest.name[:2] in ("dd", "AA"):
        count = abs(interval.semitones)
        return "1 semitone" if count == 1 else f"{count} semitones"
    if rest == Interval(0, 0):
        return _octaves(octaves) if octaves else "a unison"
    simple = f"{_QUALITIES[rest.name[0]]} {_NUMBERS[rest.steps]}".removeprefix("perfect ")
    simple = f"an {simple}" if simple[0] in "aeiou" else f"a {simple}"
    return f"{_octaves(octaves)} and {simple}" if octaves else simple


def _octaves(count: int) -> str:
    return "an octave" if count == 1 else f"{count} octaves"
