"""What is said over the staves: tempo, sections, remarks, swells, damped stretches, chords."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from xml.etree.ElementTree import Element

from sitegen.engraving.musicxml.element import child, decimal, ticks
from sitegen.engraving.musicxml.harmonies import make_harmony
from sitegen.engraving.musicxml.reading import strings_text
from sitegen.score.chart import Chart, Part, StretchMark
from sitegen.score.interval import Interval
from sitegen.score.tempo import Tempo

_FEELS = {"swing": "Swing", "shuffle": "Shuffle"}
_TEXTS = {"palm mute": "P.M.", "let ring": "let ring"}
_MOST_NUMBERS = 16


@dataclass(frozen=True)
class Standing:
    """An element with the onset at which it stands; `ends` for what closes before that onset."""

    onset: Fraction
    element: Element
    ends: bool = False


def top_directions(chart: Chart, written: Interval) -> Iterator[Standing]:
    """Yield what stands over the top staff; `written` is how its part reads."""
    if chart.tempo is not None or chart.feel in _FEELS:
        yield Standing(Fraction(0), _tempo(chart))
    for section in chart.sections:
        yield Standing(section.onset, _direction("rehearsal", section.text))
    for remark in chart.remarks:
        yield Standing(remark.onset, _direction("words", remark.text))
    for event in chart.chords:
        yield Standing(event.onset, make_harmony(event.chord, written))


def part_directions(part: Part) -> Iterator[Standing]:
    """Yield how a part's strings are tuned, and the beginnings and ends of its stretches."""
    strings = strings_text(part.instrument.fretted) if part.instrument.fretted else ""
    if strings:
        yield Standing(Fraction(0), _direction("words", strings))
    for place, mark in enumerate(part.stretches):
        number = place % _MOST_NUMBERS + 1
        yield Standing(mark.onset, _begin(mark, number))
        yield Standing(mark.end, _end(mark, number), ends=True)


def stand(measure: Element, element: Element, offset: Fraction, divisions: int) -> None:
    """Append a direction or harmony that stands `offset` quarter notes after this place."""
    if offset:
        home = len([inner for inner in element if inner.tag != "sound"])
        moved = Element("offset")
        moved.text = str(ticks(offset, divisions))
        element.insert(home, moved)
    measure.append(element)


def _direction(kind: str, text: str, side: str = "above") -> Element:
    direction = Element("direction", {"placement": side})
    child(child(direction, "direction-type"), kind, text)
    return direction


def _tempo(chart: Chart) -> Element:
    """Return the tempo and the feel, for the eye and for a program that plays the file."""
    direction = Element("direction", {"placement": "above"})
    if chart.tempo is not None:
        _write_metronome(direction, chart.tempo)
    if chart.feel in _FEELS:
        child(child(direction, "direction-type"), "words", _FEELS[chart.feel])
    tempo = decimal(chart.tempo.quarters_per_minute) if chart.tempo else None
    sound = child(direction, "sound", tempo=tempo)
    if chart.feel in _FEELS:
        swing = child(sound, "swing")
        child(swing, "first", 2)
        child(swing, "second", 1)
        child(swing, "swing-type", "eighth")
    return direction


def _write_metronome(direction: Element, tempo: Tempo) -> None:
    metronome = child(child(direction, "direction-type"), "metronome")
    value = tempo.beat_name
    plain = value.removeprefix("dotted ")
    child(metronome, "beat-unit", "16th" if plain == "sixteenth" else plain)
    if plain != value:
        child(metronome, "beat-unit-dot")
    child(metronome, "per-minute", decimal(tempo.beats_per_minute))


def _begin(mark: StretchMark, number: int) -> Element:
    if mark.kind in _TEXTS:
        direction = _direction("words", _TEXTS[mark.kind])
        child(child(direction, "direction-type"), "dashes", type="start", number=number)
        return direction
    return _wedge(mark.kind, number)


def _end(mark: StretchMark, number: int) -> Element:
    if mark.kind in _TEXTS:
        direction = Element("direction", {"placement": "above"})
        child(child(direction, "direction-type"), "dashes", type="stop", number=number)
        return direction
    return _wedge("stop", number)


def _wedge(way: str, number: int) -> Element:
    direction = Element("direction", {"placement": "below"})
    child(child(direction, "direction-type"), "wedge", type=way, number=number)
    return direction
