"""From a chart to what is heard."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from sitegen.performance.performance import Performance, PlayedBar, Player, Sound, Stroke
from sitegen.performance.strokes import Neighbours, Place, find_neighbours, strokes_of
from sitegen.performance.swing import swung
from sitegen.performance.voicing import voice_chord
from sitegen.score.chart import Bar, Chart, Event, Part
from sitegen.score.chord import Chord
from sitegen.score.ids import event_ids
from sitegen.score.playing_order import bars_as_played

USUAL_TEMPO = Fraction(90)
"""Quarters a minute where a chart has no tempo."""
_SOUNDS: dict[str, Sound] = {
    "voice": "voice",
    "guitar": "guitar",
    "ukulele": "guitar",
    "mandolin": "guitar",
    "banjo": "guitar",
    "bass": "bass",
    "keys": "keys",
    "piano": "keys",
    "drums": "drums",
}
_CHORD_LOUDNESS = 0.4
_STACKED = 3


@dataclass(frozen=True)
class Passage:
    """A run of bars played as they stand: `shift` leads from written to played time."""

    start: Fraction
    end: Fraction
    shift: Fraction


EventIds = Mapping[str, Sequence[Sequence[str]]]
"""The ids of events by the part's name, voice by voice."""


def perform(chart: Chart, ids: EventIds | None = None) -> Performance:
    """Return how a chart sounds, repeats and endings followed, swing as its feel asks for.

    Where there is a chord row its symbols are a player of their own, "chords", which is silent
    at first where another part plays chords already. `ids` are those of the chart's events, where
    somebody has them.
    """
    ids = _ids_of(chart) if ids is None else ids
    order = bars_as_played(chart.bars)
    bars = tuple(_played_bars(chart, order))
    passages = tuple(_passages(chart.bars, order))
    players = [_player(chart, part, passages, ids[part.name]) for part in chart.parts]
    if any(isinstance(event.chord, Chord) for event in chart.chords):
        strokes = tuple(_chord_strokes(chart, order, bars))
        players.append(Player("chords", "chords", strokes, at_first=not _has_chords(chart)))
    tempo = chart.tempo.quarters_per_minute if chart.tempo else USUAL_TEMPO
    return Performance(tuple(players), bars, tempo, tempo_is_given=chart.tempo is not None)


def _played_bars(chart: Chart, order: Sequence[int]) -> Iterator[PlayedBar]:
    start = Fraction(0)
    for place in order:
        bar = chart.bars[place]
        clicks = tuple(
            start + click - bar.skipped
            for click in bar.meter.group_starts
            if bar.skipped <= click < bar.skipped + bar.length
        )
        yield PlayedBar(bar.number, start, bar.length, clicks)
        start += bar.length


def _passages(bars: Sequence[Bar], order: Sequence[int]) -> Iterator[Passage]:
    """Yield the stretches of written time that are played without a jump."""
    if not order:
        return
    breaks = [at for at, (a, b) in enumerate(pairwise(order), start=1) if b != a + 1]
    played = Fraction(0)
    for first, last in pairwise([0, *breaks, len(order)]):
        start, end = bars[order[first]].start, bars[order[last - 1]].end
        yield Passage(start, end, played - start)
        played += end - start


def _ids_of(chart: Chart) -> EventIds:
    return {
        part.name: [event_ids(chart, part, voice) for voice in range(len(part.voices))]
        for part in chart.parts
    }


def _player(
    chart: Chart, part: Part, passages: Sequence[Passage], ids: Sequence[Sequence[str]]
) -> Player:
    sound = sound_of(part)
    around = find_neighbours(part)
    strokes = [
        stroke
        for voice, names in zip(part.voices, ids, strict=True)
        for passage in passages
        for event, id_ in _within(passage, voice, names)
        for stroke in _played(chart, part, event, id_, passage, around)
    ]
    return Player(part.name, sound, tuple(sorted(strokes, key=lambda stroke: stroke.start)))


def _within(
    passage: Passage, voice: Sequence[Event], names: Sequence[str]
) -> Iterator[tuple[Event, str]]:
    """Return the events of a voice that begin in a passage, with their ids."""
    first = bisect_left(voice, passage.start, key=_onset)
    end = bisect_left(voice, passage.end, key=_onset)
    return zip(voice[first:end], names[first:end], strict=True)


def _onset(event: Event) -> Fraction:
    return event.onset


def _played(
    chart: Chart,
    part: Part,
    event: Event,
    id_: str,
    passage: Passage,
    around: Mapping[Place, Neighbours],
) -> Iterator[Stroke]:
    end = min(event.end, passage.end)
    start, stop = (_heard(chart, at) + passage.shift for at in (event.onset, end))
    yield from strokes_of(part, event, id_, start, stop - start, around)


def _heard(chart: Chart, onset: Fraction) -> Fraction:
    """Return when something written at `onset` is heard, in written time."""
    if chart.feel == "straight":
        return onset
    bar = chart.bar_at(onset)
    if bar.meter.beat != 1:
        return onset
    first = bar.start - bar.skipped
    return first + swung(onset - first)


def sound_of(part: Part) -> Sound:
    """Return the sound that a part is heard with, by what it is played on."""
    return _SOUNDS.get(part.instrument.family, "reed")


def _has_chords(chart: Chart) -> bool:
    """Tell whether a part plays three notes at once or more."""
    return any(
        sum(note.pitch is not None for note in event.notes) >= _STACKED
        for part in chart.parts
        for event in part.events
    )


def _chord_strokes(
    chart: Chart, order: Sequence[int], bars: Sequence[PlayedBar]
) -> Iterator[Stroke]:
    """Yield each chord where it starts, and again at each bar line that it is held over."""
    before: tuple[int, ...] = ()
    onsets = [event.onset for event in chart.chords]
    ends = [event.onset + event.duration for event in chart.chords]
    for place, played in zip(order, bars, strict=True):
        bar = chart.bars[place]
        for number in range(bisect_right(ends, bar.start), bisect_left(onsets, bar.end)):
            event = chart.chords[number]
            start, end = max(event.onset, bar.start), min(ends[number], bar.end)
            if start >= end or not isinstance(event.chord, Chord):
                continue
            before = voice_chord(event.chord, before)
            shift = played.start - bar.start
            heard, until = _heard(chart, start) + shift, _heard(chart, end) + shift
            for midi in before:
                yield Stroke(heard, until - heard, midi, _CHORD_LOUDNESS)
