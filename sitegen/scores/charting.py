"""Bars of a score that was found in a file, as a chart."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.harmony import read_chord
from sitegen.harmony.symbol_fault import ChordSymbolError
from sitegen.score.chart import Bar, ChordEvent, Event, Note, Part, Syllable
from sitegen.score.instrument import Instrument
from sitegen.score.meter import Meter
from sitegen.score.pitch import Pitch
from sitegen.scores.found import FoundBar, FoundEvent, FoundPart, FoundScore
from sitegen.scores.safety import ScoreError
from sitegen.source import Span

_NOTHING = Fraction(0)


@dataclass(frozen=True)
class Cut:
    """Some bars of a score; every place in it is `span`, the line that names the file.

    `left_out` says in words what could not be taken along.
    """

    bars: tuple[Bar, ...]
    parts: tuple[Part, ...]
    chords: tuple[ChordEvent, ...]
    left_out: tuple[str, ...]


def cut_score(
    score: FoundScore,
    numbers: tuple[int, int] | None,
    parts: Sequence[FoundPart],
    instruments: Mapping[str, Instrument],
    span: Span,
) -> Cut:
    """Return the bars from the first to the last of `numbers`, or all, with these parts.

    `numbers` must be those of bars that are there; `instruments` are by the parts' names.
    Raises ScoreError for a bar in a meter that there is none of.
    """
    first, last = numbers or (score.bars[0].number, score.bars[-1].number)
    found = [bar for bar in score.bars if first <= bar.number <= last]
    start = Fraction(found[0].start)
    bars = tuple(_bars(found, start, span))
    end = bars[-1].end
    chords, unread = _chords(score, start, end, span)
    made = tuple(
        Part(
            part.name, instruments[part.name], (_voice(part.events, start, end, span),), ("staff",)
        )
        for part in parts
    )
    return Cut(bars, made, chords, (*score.left_out, *unread))


def _bars(found: Sequence[FoundBar], start: Fraction, span: Span) -> Iterable[Bar]:
    before: Meter | None = None
    for bar in found:
        meter, length = _meter(bar), Fraction(bar.length)
        skipped = meter.length - length if bar.number == 0 else _NOTHING
        yield Bar(
            bar.number,
            meter,
            Fraction(bar.start) - start,
            length,
            span,
            max(skipped, _NOTHING),
            new_meter=before is not None and meter != before,
            repeat_start=bar.repeat_start,
            repeat_end=bar.repeat_end,
        )
        before = meter


def _meter(bar: FoundBar) -> Meter:
    try:
        return Meter.read(bar.meter)
    except ValueError as wrong:
        raise ScoreError(f"bar {bar.number}: {wrong}") from wrong


def _voice(
    events: Iterable[FoundEvent], start: Fraction, end: Fraction, span: Span
) -> tuple[Event, ...]:
    """Return the events from `start` to `end` without gap or overlap, silence as rests."""
    inside = [event for event in events if start <= Fraction(event.onset) < start + end]
    made: list[Event] = []
    now = _NOTHING
    onsets = [Fraction(event.onset) - start for event in inside]
    for event, onset, after in zip(inside, onsets, [*onsets[1:], end], strict=False):
        if onset < now or onset == after:
            continue  # what starts together in one voice stands in one event
        if onset > now:
            made.append(Event(now, onset - now, (), span))
        duration = min(Fraction(event.duration), after - onset)
        notes = tuple(_note(pitch, span) for pitch in event.pitches)
        made.append(Event(onset, duration, notes, span, _syllables(event, span)))
        now = onset + duration
    if now < end:
        made.append(Event(now, end - now, (), span))
    return tuple(made)


def _note(text: str, span: Span) -> Note:
    pitch = Pitch.read(text)
    return Note(span, pitch, pitch)


def _syllables(event: FoundEvent, span: Span) -> tuple[Syllable, ...]:
    return tuple(Syllable(one.text, one.verse, span, one.joined) for one in event.lyrics)


def _chords(
    score: FoundScore, start: Fraction, end: Fraction, span: Span
) -> tuple[tuple[ChordEvent, ...], list[str]]:
    """Return the chords that sound in a stretch, and the symbols that could not be read."""
    symbols: dict[Fraction, str] = {}
    for one in score.chords:
        onset = max(Fraction(one.onset) - start, _NOTHING)
        if Fraction(one.onset) < start + end:
            symbols[onset] = one.symbol  # of those before the stretch, the last one sounds on
    onsets = sorted(symbols)
    made, unread = [], []
    for onset, after in zip(onsets, [*onsets[1:], end], strict=False):
        try:
            chord = read_chord(symbols[onset])
        except ChordSymbolError:
            unread.append(f'the chord symbol "{symbols[onset]}"')
            continue
        made.append(ChordEvent(onset, after - onset, chord, span))
    return tuple(made), unread
