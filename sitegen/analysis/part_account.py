"""A bar of a pitched part in words: notes with counts, lengths, degrees, strings and frets."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.analysis.reading import ChartReading, NoteReading
from sitegen.analysis.spoken import (
    spoken_beats,
    spoken_count,
    spoken_degree,
    spoken_length,
    spoken_pitch,
    spoken_text,
)
from sitegen.score.chart import Bar, Event, Note, Part
from sitegen.score.role import Role

_FEWEST_IN_A_ROW = 3
_JOINS = {
    "hammer-on": "hammered on to the next",
    "pull-off": "pulled off to the next",
    "slide": "slides to the next",
    "bend": "bent to the next",
}


NamedNotes = Mapping[tuple[str, int, Fraction, Note], NoteReading]
"""The readings of a chart's notes by part, voice, onset and note."""


@dataclass(frozen=True)
class _Told:
    """What is said of one event, apart from its count."""

    event: Event
    what: str
    length: str
    extra: str = ""

    def follows(self, other: "_Told") -> bool:
        """Tell whether this event repeats `other`, right after it."""
        same = (self.what, self.length, self.extra) == (other.what, other.length, "")
        return same and other.event.end == self.event.onset


def named_notes(reading: ChartReading) -> NamedNotes:
    """Return the readings of a chart's notes by where they are told."""
    return {(note.part, note.voice, note.onset, note.note): note for note in reading.notes}


def part_sentence(reading: ChartReading, named: NamedNotes, part: Part, bar: Bar) -> str:
    """Return one sentence on what a part plays in a bar, its voices one after the other.

    `named` is what `named_notes` returns for the chart.
    """
    name = spoken_text(part.name)
    voices = [_voice(reading, named, (part, voice), bar) for voice in range(len(part.voices))]
    told = "; second voice: ".join(filter(None, voices)) or "rest"
    stretches = "".join(f"; {text}" for text in _stretches(reading, part, bar))
    return f"{name[:1].upper()}{name[1:]}: {told}{stretches}."


def _voice(reading: ChartReading, named: NamedNotes, voice: tuple[Part, int], bar: Bar) -> str:
    part, number = voice
    events = _events_of(part.voices[number], bar)
    if not any(event.notes for event in events):
        return ""
    told = []
    for event in events:
        notes = [(n, named.get((part.name, number, event.onset, n))) for n in event.notes]
        told.append(_tell(event, bar, notes))
    return "; ".join(_in_rows(reading, bar, told))


def _events_of(voice: Sequence[Event], bar: Bar) -> Sequence[Event]:
    """Return the events of a voice that sound in a bar; they stand in order of time."""
    first = bisect_right(voice, bar.start, key=lambda event: event.end)
    return voice[first : bisect_left(voice, bar.end, key=lambda event: event.onset)]


def _in_rows(reading: ChartReading, bar: Bar, told: list[_Told]) -> Iterator[str]:
    """Return what is said of each event with its count; many alike in a row are said once."""
    at = 0
    while at < len(told):
        end = at + 1
        while end < len(told) and not told[at].extra and told[end].follows(told[end - 1]):
            end += 1
        count = spoken_count(reading.chart.beat_of(told[at].event.onset)[1])
        first = told[at]
        place = f"on {count}: " if first.event.onset >= bar.start else ""
        if end - at >= _FEWEST_IN_A_ROW and first.event.notes:
            place = f"from {count}, {end - at} times: "
        else:
            end = at + 1
        yield place + ", ".join(filter(None, (first.what, first.length, first.extra)))
        at = end


def _tell(event: Event, bar: Bar, named: Sequence[tuple[Note, NoteReading | None]]) -> _Told:
    if event.onset < bar.start:
        until = min(event.end, bar.end) - bar.start
        kind = "held over" if event.notes else "rest goes on"
        return _Told(event, kind, f"{spoken_beats(until / bar.meter.beat)} of this bar")
    length = _length(event, bar)
    if not event.notes:
        return _Told(event, "rest", length)
    notes = " with ".join(_note(note, found) for note, found in named)
    return _Told(event, notes, length, ", ".join(_extras(event)))


def _length(event: Event, bar: Bar) -> str:
    value = spoken_length(event.duration)
    if value and event.end <= bar.end:
        return value
    beats = f"held for {spoken_beats(event.duration / bar.meter.beat)}"
    return f"{beats}, past the bar line" if event.end > bar.end else beats


def _extras(event: Event) -> Iterator[str]:
    """Return marks and words of an event; each verse after the first says its number."""
    yield from event.marks
    for syllable in event.syllables:
        verse = f" in verse {syllable.verse}" if syllable.verse > 1 else ""
        if syllable.held:
            yield f"syllable held{verse}"
        else:
            hyphen = "-" if syllable.joined else ""
            yield f"sung{verse} “{syllable.text}{hyphen}”"


def _note(note: Note, found: NoteReading | None) -> str:
    words = [_pitch(note), *_degree(found), *_ways(note)]
    return ", ".join(filter(None, words))


def _pitch(note: Note) -> str:
    where = ""
    if note.string is not None:
        fret = "open" if note.fret == 0 else f"fret {note.fret}"
        where = f"string {note.string}" if note.fret is None else f"string {note.string} {fret}"
    if note.dead:
        return f"{where} dead".strip()
    sounding = spoken_pitch(note.pitch) if note.pitch is not None else ""
    other = ""
    if note.fingered is not None and note.fingered != note.pitch:
        verb = "fingered" if note.string is not None else "read"
        other = f"{verb} {spoken_pitch(note.fingered)}"
    return ", ".join(filter(None, (where, sounding, other)))


def _degree(found: NoteReading | None) -> Iterator[str]:
    if found is not None and found.degree:
        aside = found.role is Role.NON_CHORD_TONE
        role = f" ({Role.NON_CHORD_TONE})" if aside else ""
        yield f"degree {spoken_degree(found.degree)}{role}"


def _ways(note: Note) -> Iterator[str]:
    """Return how a note is played, from its attack to its end."""
    slides = {"up": "upwards", "down": "downwards"}
    if note.ghost:
        yield "ghosted"
    if note.accent:
        yield "accented"
    if note.harmonic:
        yield "harmonic"
    if note.slide_in:
        yield f"slid into {slides[note.slide_in]}"
    if note.bend:
        yield f"bent up {_bend(note.bend)}"
    if note.vibrato:
        yield "vibrato"
    if note.joins:
        yield _JOINS[note.joins]
    if note.slide_out:
        yield f"slides off {slides[note.slide_out]}"


def _bend(semitones: int) -> str:
    steps = {1: "a half step", 2: "a whole step"}
    return steps.get(semitones, f"{semitones} half steps")


def _stretches(reading: ChartReading, part: Part, bar: Bar) -> Iterator[str]:
    for mark in part.stretches:
        if mark.onset < bar.end and mark.end > bar.start:
            start, end = max(mark.onset, bar.start), min(mark.end, bar.end)
            if (start, end) == (bar.start, bar.end):
                yield f"{mark.kind} all through"
            else:
                first = spoken_count(reading.chart.beat_of(start)[1])
                length = spoken_beats((end - start) / bar.meter.beat)
                yield f"{mark.kind} from {first} for {length}"
