"""What must hold for the findings on any line."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import accumulate

from hypothesis import given
from hypothesis import strategies as st
from unit.analysis.melody.tunes import AMAZING_GRACE, ODE_TO_JOY, TWINKLE, chart, reading_of
from unit.analysis.transposing import transpose_chart

from sitegen.analysis.melody import find_lines, find_melody
from sitegen.score.chart import Bar, Chart, Event, Note, Part
from sitegen.score.instrument import Instrument
from sitegen.score.interval import Interval
from sitegen.score.key import Key
from sitegen.score.meter import Meter
from sitegen.score.pitch import Pitch, PitchName
from sitegen.score.tempo import Tempo
from sitegen.source import Span

SPAN = Span(1, 1, 1, 2)
NAMES = [PitchName.read(name) for name in "C C# D Eb E F F# G Ab A Bb B".split()]
LENGTHS = [Fraction(n, d) for n, d in ((1, 1), (1, 2), (1, 4), (3, 2), (2, 1), (1, 3), (5, 1))]
METERS = [Meter.read(text) for text in ("4/4", "3/4", "6/8", "2+2+3/8", "5/4")]
INTERVALS = [Interval(1, 2), Interval(-2, -3), Interval(3, 5), Interval(0, 1), Interval(-7, -12)]
# What names pitches or a key: the rest does not change with the key.
NAMED = ("tessitura", "most-heard", "scale")
# One event: its notes, None for a dead one, and its length.
Played = tuple[list[tuple[int, int] | None], Fraction]


def played() -> st.SearchStrategy[list[Played]]:
    """Rests, notes, dead notes and chords of notes."""
    sounding = st.none() | st.tuples(st.integers(0, 11), st.integers(2, 5))
    return st.lists(
        st.tuples(st.lists(sounding, max_size=3), st.sampled_from(LENGTHS)),
        min_size=1,
        max_size=40,
    )


def built(events: Sequence[Played], meter: Meter, skipped: Fraction, key: Key | None) -> Chart:
    """Return a chart of one part with a pickup where `skipped` leaves one."""
    ends = list(accumulate((length for _, length in events), initial=Fraction(0)))
    voice = tuple(
        Event(start, length, tuple(map(note, notes)), SPAN)
        for start, (notes, length) in zip(ends, events, strict=False)
    )
    bars = [Bar(0 if skipped else 1, meter, Fraction(0), meter.length - skipped, SPAN, skipped)]
    while bars[-1].end < ends[-1]:
        bars.append(Bar(bars[-1].number + 1, meter, bars[-1].end, meter.length, SPAN))
    part = Part("voice", Instrument("voice"), (voice,), ("staff",))
    return Chart(
        "c", "notation", SPAN, tuple(bars), key=key, tempo=Tempo(Fraction(90)), parts=(part,)
    )


def note(pitch: tuple[int, int] | None) -> Note:
    if pitch is None:
        return Note(SPAN, dead=True)
    return Note(SPAN, pitch=Pitch(NAMES[pitch[0]], pitch[1]))


def charts() -> st.SearchStrategy[Chart]:
    """Charts of one line, with and without a pickup and a key."""
    keys = st.none() | st.sampled_from(
        [Key.read(text) for text in ("C major", "A minor", "D dorian")]
    )
    skipped = st.sampled_from([Fraction(0), Fraction(1, 2), Fraction(1)])
    return st.builds(built, played(), st.sampled_from(METERS), skipped, keys)


@given(charts())
def test_any_chart_is_read_and_every_figure_has_its_place(chart: Chart) -> None:
    reading = reading_of(chart)
    numbers = {bar.number for bar in chart.bars}
    facts = find_melody(reading)
    ids = {note.id for note in reading.notes}
    assert len({fact.path for fact in facts}) == len(facts)
    for fact in facts:
        assert fact.text
        assert {place.bar for place in fact.evidence} <= numbers
        assert {note for place in fact.evidence for note in place.notes} <= ids
        order = [(place.bar, place.beat) for place in fact.evidence]
        assert order == sorted(order)
        assert fact.sentence == "" or fact.sentence[-1] == "."


@given(charts(), st.sampled_from(INTERVALS))
def test_in_another_key_only_names_of_pitches_change(chart: Chart, interval: Interval) -> None:
    here = find_melody(reading_of(chart))
    there = find_melody(reading_of(transpose_chart(chart, interval)))
    assert [fact.path for fact in here] == [fact.path for fact in there]
    for one, other in zip(here, there, strict=True):
        if one.path.rpartition(".")[2] not in NAMED:
            assert (one.value, one.text, one.unit) == (other.value, other.text, other.unit)
            assert one.evidence == other.evidence


@given(charts())
def test_shares_of_intervals_add_up_to_one(chart: Chart) -> None:
    facts = {fact.path: fact.value for fact in find_melody(reading_of(chart))}
    paths = [f"voice.{kind}-share" for kind in ("repeats", "steps", "thirds", "leaps")]
    shares = [Fraction(facts[path]) for path in paths if path in facts]
    for line in find_lines(reading_of(chart)):
        assert sum(shares) == (1 if len(line) > 1 else 0)
        assert len(str(facts.get("voice.parsons", "*rr"))) == max(len(line), 3)


def test_the_findings_on_a_tune_are_the_same_each_time() -> None:
    for tune in (TWINKLE, ODE_TO_JOY, AMAZING_GRACE):
        assert find_melody(reading_of(chart(tune))) == find_melody(reading_of(chart(tune)))
