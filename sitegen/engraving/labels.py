"""Which notes are labelled in the row under a part, and with what."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Protocol

from sitegen.analysis.reading import NoteReading
from sitegen.engraving.copyist import WrittenEvent
from sitegen.score.chart import Chart, Note
from sitegen.score.interval import Interval
from sitegen.score.role import Role


@dataclass(frozen=True)
class Label:
    """The text under a note and what the note is to its chord."""

    text: str
    role: Role | None


class Readings(Protocol):
    """Where the reading of a note is found."""

    @property
    def chart(self) -> Chart:
        """The chart that was read."""

    def reading_of(self, note: str) -> NoteReading | None:
        """Return what the analysis found for a note, by its id."""


def label_of(readings: Readings, written: WrittenEvent) -> Label | None:
    """Return the label of a written event: of its top note where several sound together."""
    notes = written.event.notes
    sounding = [index for index, note in enumerate(notes) if note.pitch is not None]
    if not sounding:
        return None
    top = max(sounding, key=lambda index: notes[index].midi or 0)
    found = readings.reading_of(written.note_ids[top])
    if found is None:
        return None
    text = label_text(readings.chart, written.event.onset, found)
    return Label(text, found.role) if text else None


def label_text(chart: Chart, onset: Fraction, found: NoteReading) -> str:
    """Return what a chart labels a note with, as its author asks for it; "" for nothing."""
    match chart.label:
        case "degrees":
            return found.degree
        case "key degrees":
            return found.key_degree
        case "intervals":
            return _interval(chart, onset, found.note)
        case _:
            return ""


def _interval(chart: Chart, onset: Fraction, note: Note) -> str:
    """Return the interval from the root of the sounding chord up to the note: `m3`, `P5`."""
    chord = chart.chord_at(onset)
    if chord is None or chord.root is None or note.pitch is None:
        return ""
    return Interval.between_names(chord.root, note.pitch.name).name
