"""Charts made of rhythms alone, for tests: a bar is a text, a sign a place of it."""

from fractions import Fraction

from sitegen.analysis.groove import find_groove
from sitegen.analysis.groove.grid import lay_grid
from sitegen.analysis.groove.line import Line, strike
from sitegen.analysis.naming import name_chords, name_notes
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.score.chart import Bar, Chart, Event, Feel, Note, Part
from sitegen.score.drums import KIT
from sitegen.score.instrument import Instrument
from sitegen.score.meter import Meter
from sitegen.score.pitch import Pitch
from sitegen.score.tempo import Tempo
from sitegen.source import Span

SPAN = Span(1, 1, 1, 2)
_PITCH = Pitch.read("C4")


def rhythm_chart(
    rows: dict[str, str],
    meters: str = "4/4",
    *,
    feel: Feel = "straight",
    tempo: int | None = None,
    pickup: int = 0,
) -> Chart:
    """Return a chart from rows such as `x--x--x-|x---`: bars, each divided evenly.

    `x` is an onset, `r` a rest, anything else goes on; a row named as in the drum kit takes the
    signs of drum rows. `meters` is one meter or one a bar, parted by `|`. With `pickup` the
    first bar holds only its last so many beats.
    """
    count = len(next(iter(rows.values())).split("|"))
    written = [Meter.read(text) for text in meters.split("|")]
    bars = _bars(written if len(written) == count else written * count, pickup)
    parts = []
    for name, row in rows.items():
        if name not in KIT:
            events = _events(bars, row)
            parts.append(Part(name, Instrument(name.split()[0]), (events,), ("staff",)))
    drums = {name: row for name, row in rows.items() if name in KIT}
    if drums:
        voices = tuple(_events(bars, row, name) for name, row in drums.items())
        parts.append(Part("drums", Instrument("drums"), voices, ("drums",)))
    speed = None if tempo is None else Tempo(Fraction(tempo))
    return Chart("x", "notation", SPAN, bars, feel=feel, tempo=speed, parts=tuple(parts))


def study(chart: Chart) -> ChartReading:
    """Return the chart with its notes and chords named."""
    return ChartReading(chart, name_notes(chart), name_chords(chart))


def facts_of(chart: Chart) -> dict[str, Fact]:
    """Return what is found in a chart, by path."""
    return {fact.path: fact for fact in find_groove(study(chart))}


def texts_of(chart: Chart) -> dict[str, str]:
    """Return the texts of what is found in a chart, by path."""
    return {path: fact.text for path, fact in facts_of(chart).items()}


def sentences_of(chart: Chart) -> list[str]:
    """Return the sentences of what is found in a chart."""
    return [fact.sentence for fact in find_groove(study(chart)) if fact.sentence]


def line_of(chart: Chart) -> Line:
    """Return the rhythm of a chart's only part."""
    reading = study(chart)
    grid = lay_grid(chart, [note.onset for note in reading.notes])
    return Line("the part", "part", grid, strike(reading.notes, grid.ticks))


def _bars(meters: list[Meter], pickup: int) -> tuple[Bar, ...]:
    bars: list[Bar] = []
    start = Fraction(0)
    for index, meter in enumerate(meters):
        length = pickup * meter.beat if pickup and not index else meter.length
        number = index + (0 if pickup else 1)
        bars.append(Bar(number, meter, start, length, SPAN, skipped=meter.length - length))
        start += length
    return tuple(bars)


def _events(bars: tuple[Bar, ...], row: str, drum: str = "") -> tuple[Event, ...]:
    signs = [
        (bar.start + bar.length * n / len(text), sign)
        for bar, text in zip(bars, row.replace(" ", "").split("|"), strict=True)
        for n, sign in enumerate(text)
        if sign in "xXoOgr"
    ]
    ends = [*[onset for onset, _ in signs][1:], bars[-1].end][: len(signs)]
    return tuple(
        Event(onset, end - onset, () if sign == "r" else (_note(sign, drum),), SPAN)
        for (onset, sign), end in zip(signs, ends, strict=True)
    )


def _note(sign: str, drum: str) -> Note:
    if not drum:
        return Note(SPAN, _PITCH)
    sound = KIT[drum]
    opened = sign in "oO" and sound.midi != sound.open_midi
    return Note(SPAN, drum=sound, accent=sign in "XO", ghost=sign == "g", opened=opened)
