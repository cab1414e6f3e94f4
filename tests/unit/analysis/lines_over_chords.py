"""Charts of lines over chords, written short, and charts of any notes over any chords."""

from fractions import Fraction

from hypothesis import strategies as st
from unit.engraving.building import SPAN, bars, melody, struck, voice_part

from sitegen.analysis.naming import name_chords, name_notes
from sitegen.analysis.reading import ChartReading
from sitegen.harmony import read_chord
from sitegen.score.chart import Chart, ChordEvent, Event, Part
from sitegen.score.instrument import Instrument
from sitegen.score.key import Key

_PITCHES = [
    f"{name}{octave}" for octave in (3, 4) for name in "C C# D Eb E F F# G Ab A Bb B".split()
]
_SYMBOLS = "C Dm7 G7 F A5 Asus2 Gsus4 Ebmaj7 C/E D/C Bm7b5 N.C.".split()
_LENGTHS = ["1", "1/2", "1/4", "3/2", "2", "1/3", "5"]
_METERS = ["4/4", "3/4", "6/8", "2+2+3/8", "5/4"]


def over(
    chords: str, line: str, *, meter: str = "4/4", part: str = "voice", pickup: str = "0"
) -> ChartReading:
    """Return a line over chords, named: `F:4 G:4` and `C5:2 r:1 B4:1`, lengths in quarters."""
    return named(chart_over(chords, voice_part(melody(line), part), meter=meter, pickup=pickup))


def chart_over(chords: str, *parts: Part, meter: str = "4/4", pickup: str = "0") -> Chart:
    """Return a chart in C major that is long enough for its parts and chords."""
    symbols = chord_events(chords)
    ends = [event.onset + event.duration for event in symbols]
    end = max([*ends, *(e.end for part in parts for e in part.events)], default=Fraction(0))
    length = bars(meter, 1)[0].length
    count = max(-(-(end - Fraction(pickup)) // length), 1)
    made = bars(meter, int(count), Fraction(pickup))
    return Chart("c", "notation", SPAN, made, key=Key.read("C major"), parts=parts, chords=symbols)


def chord_events(text: str) -> tuple[ChordEvent, ...]:
    """Return chord events from `F:4 N.C.:2 Asus2:2`."""
    events: list[ChordEvent] = []
    onset = Fraction(0)
    for item in text.split():
        symbol, length = item.rsplit(":", 1)
        events.append(ChordEvent(onset, Fraction(length), read_chord(symbol), SPAN))
        onset += Fraction(length)
    return tuple(events)


def named(chart: Chart) -> ChartReading:
    """Return the chart with its notes and chords named and nothing else found."""
    return ChartReading(chart, name_notes(chart), name_chords(chart))


@st.composite
def any_events(draw: st.DrawFn) -> tuple[Event, ...]:
    """Draw a line of single notes, stacks and rests."""
    names = st.lists(st.sampled_from(_PITCHES), min_size=1, max_size=3, unique=True)
    sounding = st.one_of(st.sampled_from(_PITCHES), names.map(",".join))
    item = st.tuples(st.one_of(sounding, sounding, st.just("r")), st.sampled_from(_LENGTHS))
    items = draw(st.lists(item, max_size=24))
    return melody(" ".join(f"{name}:{length}" for name, length in items))


@st.composite
def any_chart(draw: st.DrawFn) -> Chart:
    """Draw a chart of a voice, a bass and drums over chords, of which each may be missing."""
    symbol = st.tuples(st.sampled_from(_SYMBOLS), st.sampled_from(["1", "2", "3", "4", "3/2"]))
    chords = " ".join(f"{name}:{length}" for name, length in draw(st.lists(symbol, max_size=12)))
    parts = [voice_part(draw(any_events()), name) for name in draw(st.sets(_NAMES_OF_PARTS))]
    if draw(st.booleans()):
        drums = struck("HH,SD:1 r:1 BD:1/2")
        parts.append(Part("drums", Instrument("drums"), (drums,), ("drums",)))
    meter, pickup = draw(st.sampled_from(_METERS)), draw(st.sampled_from(["0", "1/2", "1"]))
    return chart_over(chords, *parts, meter=meter, pickup=pickup)


_NAMES_OF_PARTS = st.sampled_from(["voice", "bass", "lead guitar"])
