"""Everything that the parts of an MEI file ask about a chart, worked out once."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from sitegen.analysis.reading import ChartReading, NoteReading
from sitegen.engraving.copyist import WrittenEvent, WrittenVoice, lay_out
from sitegen.engraving.mei.element import decimal
from sitegen.engraving.mei.staves import Staff, StaffKind, staves_of
from sitegen.engraving.player_names import PlayerNames
from sitegen.score.chart import Chart, Note, Part
from sitegen.score.chord import Chord, NoChord
from sitegen.score.role import Role

ROLE_CLASSES = {
    Role.CHORD_TONE: "chord-tone",
    Role.TENSION: "tension",
    Role.NON_CHORD_TONE: "non-chord",
}
"""The class that a note and its label carry in the drawing, by the note's role."""


@dataclass(frozen=True)
class ScorePlan:
    """A chart reading with its staves and written voices; parts are told apart by name.

    With `names` the chart is written as its players name it; without, as it sounds. The names of
    chords are given by `chord_name` alone, so that what notes are to their chords stays the same.
    """

    reading: ChartReading
    names: PlayerNames | None = None

    @cached_property
    def chart(self) -> Chart:
        """The chart itself, its notes as they are written, its chords as they sound."""
        return self.names.chart(self.reading.chart) if self.names else self.reading.chart

    @cached_property
    def staves(self) -> tuple[Staff, ...]:
        """The staves from the top."""
        return staves_of(self.chart, self.names.keys if self.names else {})

    @cached_property
    def voices(self) -> dict[str, tuple[WrittenVoice, ...]]:
        """The written voices by the part's name."""
        return {part.name: lay_out(self.chart, part) for part in self.chart.parts}

    @cached_property
    def _readings(self) -> dict[tuple[str, Fraction, Note], NoteReading]:
        return {(r.part, r.onset, self._written(r)): r for r in self.reading.notes}

    def _written(self, reading: NoteReading) -> Note:
        return self.names.note(reading.part, reading.note) if self.names else reading.note

    def chord_name(self, chord: Chord | NoChord) -> Chord | NoChord:
        """Return a chord as its symbol is written."""
        return self.names.chord(chord) if self.names else chord

    def reading_of(self, part: Part, onset: Fraction, note: Note) -> NoteReading | None:
        """Return what the analysis found for a note of the chart; it speaks of what sounds."""
        return self._readings.get((part.name, onset, note))

    def roles(self, voice: WrittenVoice) -> dict[str, str]:
        """Return the class of every written note of a voice by its id."""
        roles = {}
        for written in voice.events():
            for index, note in enumerate(written.event.notes):
                found = self.reading_of(voice.part, written.event.onset, note)
                if found is not None and found.role is not None:
                    roles[written.note_id(index)] = ROLE_CLASSES[found.role]
        return roles

    def tstamp(self, onset: Fraction) -> str:
        """Return an onset as MEI counts it: beats of the meter from 1 at the bar's start."""
        bar = self.chart.bar_at(onset)
        return decimal(float(1 + (onset - bar.start) / bar.meter.beat))

    def tstamp2(self, start: Fraction, end: Fraction) -> str:
        """Return where a stretch ends, as so many bars after its start and a beat: `1m+2`."""
        bars = self.chart.bars
        first = bars.index(self.chart.bar_at(start))
        last = next((n for n, bar in enumerate(bars) if end <= bar.end), len(bars) - 1)
        beat = 1 + (end - bars[last].start) / bars[last].meter.beat
        return f"{last - first}m+{decimal(float(beat))}"

    def staff_of(self, part: Part, *kinds: StaffKind) -> Staff | None:
        """Return a part's staff of the first of the kinds that it has; its top staff for none."""
        own = {staff.kind: staff for staff in reversed(self.staves) if staff.part is part}
        found = (own[kind] for kind in kinds or ("staff", "drums", "tab") if kind in own)
        return next(found, None)

    def opening(self, part: Part) -> Iterator[tuple[WrittenVoice, WrittenEvent]]:
        """Yield, over all voices, the first written note of every event that sounds."""
        for voice in self.voices[part.name]:
            for written in voice.events():
                if written.piece.opens and not written.piece.is_rest:
                    yield voice, written
