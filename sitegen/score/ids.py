"""The names of notes, bars and parts inside one chart: the same in findings and drawings."""

import re
from collections.abc import Iterable, Sequence
from fractions import Fraction

from sitegen.score.chart import Bar, Chart, Event, Part

_UNFIT = re.compile(r"[^A-Za-z0-9]+")


class UnusedIds:
    """Hands out each id once: a bar that two systems share would give one twice."""

    def __init__(self, used: Sequence[str] = ()) -> None:
        self._used = set(used)

    def unused(self, name: str) -> str:
        """Return the name, with a number behind it where it is taken."""
        candidate, count = name, 1
        while candidate in self._used:
            count += 1
            candidate = f"{name}-again{count}"
        self._used.add(candidate)
        return candidate


def part_slug(part: Part) -> str:
    """Return the part's name as it stands in ids."""
    return _UNFIT.sub("-", part.name).strip("-").lower() or "part"


def voice_slug(part: Part, voice: int) -> str:
    """Return the name of a voice of the part, `voice` from 0, as it stands in ids."""
    return part_slug(part) + (str(voice + 1) if len(part.voices) > 1 else "")


def place_slug(bar: Bar, beat: Fraction) -> str:
    """Return a place for ids: the bar's number and the counted beat from 1, `2-3_1_2`."""
    whole, rest = divmod(beat, 1)
    return f"{bar.number}-{whole}" + (f"_{rest.numerator}_{rest.denominator}" if rest else "")


def event_ids(chart: Chart, part: Part, voice: int) -> tuple[str, ...]:
    """Return the ids of a voice's events, `voice` from 0, in their order."""
    places = (chart.beat_of(event.onset) for event in part.voices[voice])
    return ids_at(part, voice, places)


def ids_at(part: Part, voice: int, places: Iterable[tuple[Bar, Fraction]]) -> tuple[str, ...]:
    """Return the ids of a voice's events at these bars and counted beats."""
    name, ids = voice_slug(part, voice), UnusedIds()
    return tuple(ids.unused(f"{name}-{place_slug(bar, beat)}") for bar, beat in places)


def note_id(event_id: str, event: Event, index: int) -> str:
    """Return the id of one of an event's notes; two strings in unison are one on a staff."""
    notes = event.notes
    if len(notes) == 1:
        return event_id
    pitch = notes[index].pitch
    twin = next((n for n, note in enumerate(notes) if pitch and note.pitch == pitch), index)
    return f"{event_id}-n{twin + 1}"
