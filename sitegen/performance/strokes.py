"""What one event of a part sounds like: its notes with loudness, manner and glide."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from sitegen.performance.performance import Manner, Stroke
from sitegen.score.chart import Event, Note, Part, StretchMark
from sitegen.score.ids import note_id

_PLAIN, _ACCENT, _SOFT = 0.75, 1.0, 0.35
_SWELL = 0.25
_STACCATO = Fraction(1, 2)
_JOINED = frozenset({"hammer-on", "pull-off", "slide"})


@dataclass(frozen=True)
class Neighbours:
    """The notes before and after one on its string (or in its part, where there are none)."""

    before: Note | None = None
    after: Note | None = None


Place = tuple[Fraction, int | None]
"""An onset and a string."""


def find_neighbours(part: Part) -> Mapping[Place, Neighbours]:
    """Return the neighbours of a part's notes; a rest between two does not part them."""
    found: dict[Place, Neighbours] = {}
    last: dict[int | None, tuple[Place, Note]] = {}
    for event in part.events:
        for note in event.notes:
            place, before = (event.onset, note.string), last.get(note.string)
            found[place] = Neighbours(before[1] if before else None)
            if before is not None:
                found[before[0]] = Neighbours(found[before[0]].before, note)
            last[note.string] = place, note
    return found


def strokes_of(
    part: Part,
    event: Event,
    event_id: str,
    start: Fraction,
    length: Fraction,
    neighbours: Mapping[Place, Neighbours],
) -> Iterator[Stroke]:
    """Yield the notes of an event that is heard at `start` for `length` quarters."""
    stretches = [mark for mark in part.stretches if mark.onset <= event.onset < mark.end]
    if "staccato" in event.marks:
        length *= _STACCATO
    for index, note in enumerate(event.notes):
        midi = _sounding(part, note)
        if midi is None:
            continue
        around = neighbours.get((event.onset, note.string), Neighbours())
        yield Stroke(
            start,
            length,
            midi,
            round(_loudness(event, note, stretches), 2),
            note_id(event_id, event, index),
            _manner(note, around, stretches),
            _glide(note, around),
        )


def _sounding(part: Part, note: Note) -> int | None:
    """Return the MIDI number that is heard; a dead note is a knock on its open string."""
    if note.midi is not None or note.string is None or part.instrument.fretted is None:
        return note.midi
    return part.instrument.fretted.tuning.strings[-note.string].midi


def _loudness(event: Event, note: Note, stretches: list[StretchMark]) -> float:
    loudness = _PLAIN
    if note.accent or "accent" in event.marks or "marcato" in event.marks:
        loudness = _ACCENT
    if note.ghost:
        loudness = _SOFT
    for mark in stretches:
        way = float((event.onset - mark.onset) / (mark.end - mark.onset))
        if mark.kind == "crescendo":
            loudness += _SWELL * (way - 1)
        elif mark.kind == "diminuendo":
            loudness -= _SWELL * way
    return max(loudness, 0.1)


def _manner(note: Note, around: Neighbours, stretches: list[StretchMark]) -> Manner:
    kinds = {mark.kind for mark in stretches}
    reached = around.before is not None and around.before.joins in _JOINED
    manners: tuple[tuple[bool, Manner], ...] = (
        (note.dead, "dead"),
        (note.flam, "flam"),
        (note.roll, "roll"),
        (note.harmonic, "harmonic"),
        (note.ghost, "ghost"),
        (reached, "joined"),
        ("palm mute" in kinds, "palm mute"),
        ("let ring" in kinds, "let ring"),
    )
    return next((manner for is_so, manner in manners if is_so), "")


def _glide(note: Note, around: Neighbours) -> int | None:
    """Return where the pitch goes: up a bend, or along a slide to the string's next note."""
    if note.midi is None or note.drum is not None:
        return None
    if note.bend:
        return note.midi + note.bend
    return around.after.midi if note.joins == "slide" and around.after else None
