"""Pedals in the top: a highest note that stays while the chords change.

It is the same highest note of a part under three chords or more with two changes of root or more,
in a part that plays several notes at a time: the inverted pedal of the harmony books (Piston,
*Harmony*, on the pedal; from memory).
"""

from bisect import bisect_left
from collections.abc import Iterator, Sequence

from sitegen.analysis.bass.bass_line import is_bass, place_of
from sitegen.analysis.bass.pedals import is_pedal
from sitegen.analysis.reading import ChartReading, Fact, NoteReading
from sitegen.analysis.roots.chord_line import HeldChord, Passage, ticks
from sitegen.analysis.roots.wording import chords_said, stretch_said
from sitegen.score.chart import Part

Topped = tuple[HeldChord, NoteReading | None]
"""A chord and the highest note of a part under it."""


def top_pedal_facts(reading: ChartReading, passages: Sequence[Passage]) -> list[Fact]:
    """Return the longest pedal in the top of every part that plays several notes at a time."""
    facts = []
    for part in reading.chart.parts:
        if not part.is_drums and not is_bass(part) and _plays_chords(part):
            notes = [note for note in reading.notes if note.part == part.name]
            runs = [run for passage in passages for run in _steady(list(_tops(passage, notes)))]
            facts += [_fact(part, max(runs, key=len))] if runs else []
    return facts


def _plays_chords(part: Part) -> bool:
    return any(len(event.notes) > 1 for voice in part.voices for event in voice)


def _tops(passage: Passage, notes: Sequence[NoteReading]) -> Iterator[Topped]:
    """Yield each chord with the highest note that sounds under it, None where the part rests."""
    onsets = [ticks(note.onset) for note in notes]
    at = bisect_left(onsets, passage[0].onset)
    sounding: list[tuple[int, int, NoteReading]] = []
    for held in passage:
        end = bisect_left(onsets, held.end, lo=at)
        sounding = [entry for entry in sounding if entry[1] > held.onset]
        for place in range(at, end):
            note = notes[place]
            if note.note.pitch is not None:
                until = onsets[place] + ticks(note.duration)
                sounding.append((note.note.midi or 0, until, note))
        at = end
        yield held, max(sounding, key=lambda entry: entry[0])[2] if sounding else None


def _steady(line: Sequence[Topped]) -> Iterator[Sequence[Topped]]:
    """Yield every longest stretch with one highest note that is a pedal."""
    start = 0
    for place in range(1, len(line) + 1):
        if place < len(line) and _midi(line[place]) == _midi(line[start]):
            continue
        if _midi(line[start]) is not None and is_pedal([held for held, _ in line[start:place]]):
            yield line[start:place]
        start = place


def _midi(topped: Topped) -> int | None:
    return topped[1].note.midi if topped[1] else None


def _fact(part: Part, run: Sequence[Topped]) -> Fact:
    chords = [held for held, _ in run]
    notes = [note for _, note in run if note]
    top = f"{notes[0].note.pitch} stays on top of {chords_said(chords)}"
    sentence = f"{stretch_said(chords)}, {part.name}: {top}."
    path = f"{part.name.replace(' ', '-')}.top-pedal"
    places = tuple(dict.fromkeys(map(place_of, notes)))
    return Fact(path, len(run), str(len(run)), "chords", places, sentence)
