"""Whatever a player may do on strings or at the kit is drawn without a fault."""

from dataclasses import replace
from fractions import Fraction
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st
from unit.engraving.building import GUITAR, SPAN, bars, fretted_part, reading

from sitegen.engraving import engrave
from sitegen.engraving.toolkit import render
from sitegen.score.chart import Chart, Event, Note, StretchMark
from sitegen.score.pitch import Pitch, PitchName

_NAMES = ("C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B")
_LENGTHS = [Fraction(n, d) for n, d in ((1, 1), (1, 2), (1, 4), (3, 4), (3, 2), (2, 1), (1, 3))]
_CHANGES: list[dict[str, Any]] = [
    {},
    {},
    {"joins": "hammer-on"},
    {"joins": "pull-off"},
    {"joins": "slide"},
    {"joins": "bend", "bend": 2},
    {"bend": 1},
    {"vibrato": True},
    {"ghost": True},
    {"harmonic": True},
    {"slide_in": "up"},
    {"slide_out": "down"},
]


@st.composite
def stopped_notes(draw: st.DrawFn) -> tuple[Note, ...]:
    notes = []
    for string in draw(st.sets(st.integers(1, 6), max_size=4)):
        if draw(st.integers(0, 5)) == 0:
            notes.append(Note(SPAN, string=string, dead=True, vibrato=draw(st.booleans())))
            continue
        fret = draw(st.integers(0, 12))
        midi = GUITAR.sounding(string, fret)
        pitch = Pitch.of(PitchName.read(_NAMES[midi % 12]), midi)
        note = Note(SPAN, pitch=pitch, fingered=pitch, string=string, fret=fret)
        notes.append(replace(note, **draw(st.sampled_from(_CHANGES))))
    return tuple(notes)


@st.composite
def guitar_music(draw: st.DrawFn) -> tuple[Event, ...]:
    events = []
    onset, end = Fraction(0), Fraction(8)
    while onset < end:
        length = min(draw(st.sampled_from(_LENGTHS)), end - onset)
        events.append(Event(onset, length, draw(stopped_notes()), SPAN))
        onset += length
    return tuple(events)


@settings(deadline=None, max_examples=20)
@given(guitar_music(), st.booleans())
def test_any_guitar_part_is_drawn(events: tuple[Event, ...], with_staff: bool) -> None:
    stretches = (
        StretchMark("palm mute", Fraction(1), Fraction(3), SPAN),
        StretchMark("let ring", Fraction(3), Fraction(8), SPAN),
    )
    shows = ("staff", "tab") if with_staff else ("tab",)
    part = fretted_part(events, stretches=stretches, shows=shows)
    chart = Chart("any", "notation", SPAN, bars("4/4", 2), parts=(part,))
    drawn = engrave(reading(chart), "any")
    assert not render(drawn.mei, {}).remarks
    struck = [event for event in events if event.notes]
    assert drawn.wide.count('class="tabGrp"') >= len(struck)
