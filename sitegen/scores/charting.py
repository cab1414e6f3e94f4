"""Bars of a score that was found in a file, as a chart."""

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

import msgspec

from sitegen.charts.directions import close_endings
from sitegen.charts.grid.parts import MOST_VERSES
from sitegen.harmony import read_chord, spell
from sitegen.harmony.symbol_fault import ChordSymbolError
from sitegen.score.chart import Bar, ChordEvent, Event, Note, Part, Remark, Syllable
from sitegen.score.instrument import Instrument
from sitegen.score.meter import Meter
from sitegen.score.pitch import Pitch
from sitegen.scores.found import FoundBar, FoundEvent, FoundLyric, FoundPart, FoundScore
from sitegen.source import Span

_NOTHING = Fraction(0)
_MOST_NAMED = 5


@dataclass(frozen=True)
class Cut:
    """Some bars of a score; every place in it is `span`, the line that names the file.

    `left_out` says in words what could not be taken along and in which bars, `held` whether a
    note comes over from the bar before the first or goes on after the last.
    """

    bars: tuple[Bar, ...]
    parts: tuple[Part, ...]
    chords: tuple[ChordEvent, ...]
    sections: tuple[Remark, ...]
    left_out: tuple[str, ...]
    held: bool


@dataclass(frozen=True)
class Stretch:
    """From where to where a cut goes, in the score's time."""

    start: Fraction
    end: Fraction

    def holds(self, onset: Fraction) -> bool:
        """Return whether something at `onset` stands in it."""
        return self.start <= onset < self.end


def stretch_of(score: FoundScore, numbers: tuple[int, int]) -> Stretch:
    """Return where the bars from the first to the last of `numbers` lie, which must be there."""
    first, last = numbers
    found = [bar for bar in score.bars if first <= bar.number <= last]
    return Stretch(
        Fraction(found[0].start), Fraction(found[-1].start) + Fraction(found[-1].length)
    )


def cut_score(
    score: FoundScore,
    stretch: Stretch,
    parts: Sequence[tuple[FoundPart, Instrument]],
    signature: int | None,
    span: Span,
) -> Cut:
    """Return the bars of a stretch with these parts.

    `signature` names the notes of a file that has no names for them.
    """
    cutter = _Cutter(score, stretch, span)
    bars = tuple(cutter.bars())
    inside: Sequence[Sequence[FoundEvent]] = [cutter.events(part) for part, _ in parts]
    if not score.is_spelled:
        inside = _respell(inside, signature)
    made = tuple(
        Part(part.name, instrument, (cutter.voice(events),), ("staff",))
        for (part, instrument), events in zip(parts, inside, strict=True)
    )
    chords = tuple(cutter.chords())
    return Cut(bars, made, chords, tuple(cutter.sections()), tuple(cutter.losses()), cutter.held)


class _Cutter:
    def __init__(self, score: FoundScore, stretch: Stretch, span: Span) -> None:
        self.score, self.stretch, self.span = score, stretch, span
        self.held = False
        self._lost: dict[str, None] = {}

    def bars(self) -> Iterator[Bar]:
        """Return the bars; a bracket that goes over an edge opens or closes there."""
        whole = _whole_bars(self.score.bars, self.span)
        inside = [bar for bar in whole if self.stretch.holds(bar.start)]
        opened = _open_bracket(bar for bar in whole if bar.start < self.stretch.start)
        if opened and not inside[0].ending:
            inside[0] = replace(inside[0], ending=opened)
        if _open_bracket(inside):
            inside[-1] = replace(inside[-1], ending_closes=True)
        meter: Meter | None = None
        for bar in inside:
            yield replace(bar, start=bar.start - self.stretch.start, new_meter=bar.meter != meter)
            meter = bar.meter

    def events(self, part: FoundPart) -> list[FoundEvent]:
        """Return what sounds in the stretch, in the stretch's time; what is held is cut to it."""
        found = []
        for event in part.events:
            onset = Fraction(event.onset)
            end = onset + Fraction(event.duration)
            if onset >= self.stretch.end or end <= self.stretch.start:
                continue
            begin, stop = max(onset, self.stretch.start), min(end, self.stretch.end)
            is_carried = begin > onset
            self.held |= is_carried or stop < end
            lyrics = () if is_carried else event.lyrics
            times = str(begin - self.stretch.start), str(stop - begin)
            marks = () if is_carried else event.marks
            found.append(FoundEvent(*times, event.pitches, lyrics, marks))
        return found

    def voice(self, events: Iterable[FoundEvent]) -> tuple[Event, ...]:
        """Return the events with rests between them, from the start to the end of the stretch."""
        made: list[Event] = []
        now, whole = _NOTHING, self.stretch.end - self.stretch.start
        for event in events:
            onset, duration = Fraction(event.onset), Fraction(event.duration)
            if onset > now:
                made.append(Event(now, onset - now, (), self.span))
            notes = tuple(self._note(Pitch.read(text)) for text in event.pitches)
            syllables = tuple(self._syllables(event.lyrics))
            made.append(Event(onset, duration, notes, self.span, syllables, event.marks))
            now = onset + duration
        if now < whole:
            made.append(Event(now, whole - now, (), self.span))
        return tuple(made)

    def _note(self, pitch: Pitch) -> Note:
        return Note(self.span, pitch)

    def _syllables(self, lyrics: Iterable[FoundLyric]) -> Iterator[Syllable]:
        for one in lyrics:
            if 1 <= one.verse <= MOST_VERSES:
                yield Syllable(one.text, one.verse, self.span, one.joined)
            else:
                self._lost[f"verses after the {MOST_VERSES}th"] = None

    def chords(self) -> Iterator[ChordEvent]:
        """Return the chords that sound; one from before the stretch sounds on."""
        symbols: dict[Fraction, str] = {}
        for one in self.score.chords:
            if Fraction(one.onset) < self.stretch.end:
                symbols[max(Fraction(one.onset), self.stretch.start)] = one.text
        onsets = sorted(symbols)
        for onset, after in zip(onsets, [*onsets[1:], self.stretch.end], strict=False):
            try:
                chord = read_chord(symbols[onset])
            except ChordSymbolError:
                self._lost[f'the chord symbol "{symbols[onset]}"{self._at([onset])}'] = None
                continue
            yield ChordEvent(onset - self.stretch.start, after - onset, chord, self.span)

    def sections(self) -> Iterator[Remark]:
        """Return the rehearsal marks."""
        for one in self.score.sections:
            onset = Fraction(one.onset)
            if self.stretch.holds(onset):
                yield Remark(onset - self.stretch.start, one.text, self.span)

    def losses(self) -> Iterator[str]:
        """Return what is lost in the stretch, with its bars."""
        for loss in self.score.losses:
            onsets = [Fraction(onset) for onset in loss.onsets]
            inside = [onset for onset in onsets if self.stretch.holds(onset)]
            if inside or not onsets:
                yield loss.what + self._at(inside)
        changes = {
            "changes of key": [key.onset for key in self.score.keys],
            "changes of tempo": [tempo.onset for tempo in self.score.tempos],
        }
        for what, found in changes.items():
            onsets = [Fraction(onset) for onset in found]
            inside = [o for o in onsets if self.stretch.holds(o) and o > self.stretch.start]
            if inside:
                yield what + self._at(inside)
        yield from self._lost

    def _at(self, onsets: Sequence[Fraction]) -> str:
        """Return in words the bars of some onsets, "" for none."""
        starts = [Fraction(bar.start) for bar in self.score.bars]
        places = [max(bisect_right(starts, onset) - 1, 0) for onset in onsets]
        numbers = list(dict.fromkeys(str(self.score.bars[place].number) for place in places))
        if not numbers:
            return ""
        more = "" if len(numbers) <= _MOST_NAMED else ", ..."
        return f" (bar {', '.join(numbers[:_MOST_NAMED])}{more})"


def _whole_bars(found: Sequence[FoundBar], span: Span) -> Sequence[Bar]:
    bars = [
        Bar(
            bar.number,
            Meter.read(bar.meter),
            Fraction(bar.start),
            Fraction(bar.length),
            span,
            Fraction(bar.skipped),
            repeat_start=bar.repeat_start,
            repeat_end=bar.repeat_end,
            double_bar=bar.double_bar,
            ending=bar.ending,
            ending_closes=bar.ending_closes,
        )
        for bar in found
    ]
    return bars if any(bar.ending_closes for bar in bars) else close_endings(bars)


def _open_bracket(bars: Iterable[Bar]) -> str:
    """Return the text of the bracket that is still open after some bars, "" for none."""
    opened = ""
    for bar in bars:
        opened = bar.ending or opened
        if bar.ending_closes:
            opened = ""
    return opened


def _respell(
    parts: Sequence[Sequence[FoundEvent]], signature: int | None
) -> list[Sequence[FoundEvent]]:
    """Return the events of some parts with names for their notes that their context tells."""
    places = sorted(
        (Fraction(event.onset), Pitch.read(text).midi, number, place, index)
        for number, events in enumerate(parts)
        for place, event in enumerate(events)
        for index, text in enumerate(event.pitches)
    )
    named = spell([midi for _, midi, *_ in places], signature)
    pitches = [[list(event.pitches) for event in events] for events in parts]
    for (_, _, number, place, index), pitch in zip(places, named, strict=True):
        pitches[number][place][index] = str(pitch)
    return [
        [
            msgspec.structs.replace(event, pitches=tuple(own))
            for event, own in zip(*pair, strict=True)
        ]
        for pair in zip(parts, pitches, strict=True)
    ]
