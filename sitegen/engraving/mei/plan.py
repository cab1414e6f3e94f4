"""Everything that the parts of an MEI file ask about a chart, worked out once."""

from bisect import bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from sitegen.analysis.reading import ChartReading, NoteReading
from sitegen.engraving.copyist import WrittenVoice, lay_out
from sitegen.engraving.joins import Join, Played, joins_of, played_notes
from sitegen.engraving.mei.element import decimal
from sitegen.engraving.mei.staves import Staff, StaffKind, staves_of
from sitegen.engraving.player_names import PlayerNames
from sitegen.performance.performing import EventIds
from sitegen.score.chart import Chart, Part
from sitegen.score.chord import Chord, NoChord
from sitegen.score.role import Role

ROLE_CLASSES = {
    Role.CHORD_TONE: "chord-tone",
    Role.TENSION: "tension",
    Role.NON_CHORD_TONE: "non-chord",
}
"""The class that a note and its label carry in the drawing, by the note's role."""
_VoiceKey = tuple[str, int]


@dataclass(frozen=True)
class ScorePlan:
    """A chart reading with its staves and written voices; parts are told apart by name.

    With `names` the chart is written as its players name it; without, as it sounds. The names of
    chords are given by `chord_name` alone, so that what notes are to their chords stays the same.
    `sounding` is the plan of the chart as it sounds, where there is one: rhythms are the same.
    """

    reading: ChartReading
    names: PlayerNames | None = None
    sounding: "ScorePlan | None" = None

    def named(self, names: PlayerNames) -> "ScorePlan":
        """Return the plan of the same chart as its players name it."""
        return ScorePlan(self.reading, names, self)

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
        return {part.name: self._lay_out(part) for part in self.chart.parts}

    @property
    def event_ids(self) -> EventIds:
        """The ids of the events of each voice by the part's name, voice by voice."""
        return {name: [voice.ids for voice in own] for name, own in self.voices.items()}

    def _lay_out(self, part: Part) -> tuple[WrittenVoice, ...]:
        if self.sounding is None:
            return lay_out(self.chart, part)
        voices = self.sounding.voices[part.name]
        return tuple(v if v.part is part else v.named(part) for v in voices)

    @cached_property
    def _played(self) -> dict[_VoiceKey, tuple[Played, ...]]:
        return {_key(v): tuple(played_notes(v)) for own in self.voices.values() for v in own}

    def played(self, voice: WrittenVoice) -> tuple[Played, ...]:
        """Return the notes of a voice by onset."""
        return self._played[_key(voice)]

    @cached_property
    def _joins(self) -> dict[_VoiceKey, tuple[Join, ...]]:
        return {key: joins_of(played) for key, played in self._played.items()}

    def joins(self, voice: WrittenVoice) -> tuple[Join, ...]:
        """Return the joins of a voice by onset."""
        return self._joins[_key(voice)]

    def chord_name(self, chord: Chord | NoChord) -> Chord | NoChord:
        """Return a chord as its symbol is written."""
        return self.names.chord(chord) if self.names else chord

    @cached_property
    def _readings(self) -> Mapping[str, NoteReading]:
        return {found.id: found for found in self.reading.notes}

    def reading_of(self, note: str) -> NoteReading | None:
        """Return what the analysis found for a note by its id; it speaks of what sounds."""
        return self._readings.get(note)

    @cached_property
    def _roles(self) -> dict[_VoiceKey, dict[str, str]]:
        return {_key(v): self._roles_in(v) for own in self.voices.values() for v in own}

    def roles(self, voice: WrittenVoice) -> Mapping[str, str]:
        """Return the class of every written note of a voice by its id."""
        return self._roles[_key(voice)]

    def _roles_in(self, voice: WrittenVoice) -> dict[str, str]:
        roles = {}
        for written in voice.events():
            struck = voice.written(written.number)[0].note_ids
            for identity, first in zip(written.note_ids, struck, strict=True):
                found = self._readings.get(first)
                if found is not None and found.role is not None:
                    roles[identity] = ROLE_CLASSES[found.role]
        return roles

    @cached_property
    def _starts(self) -> Sequence[Fraction]:
        return [bar.start for bar in self.chart.bars]

    def bar_index(self, onset: Fraction) -> int:
        """Return the place of the bar that holds an onset; the last one at or past the end."""
        return max(bisect_right(self._starts, onset) - 1, 0)

    def tstamp(self, onset: Fraction) -> str:
        """Return an onset as MEI counts it: beats of the meter from 1 at the bar's start."""
        bar = self.chart.bars[self.bar_index(onset)]
        return decimal(float(1 + (onset - bar.start) / bar.meter.beat))

    def tstamp2(self, start: Fraction, end: Fraction) -> str:
        """Return where a stretch ends, as so many bars after its start and a beat: `1m+2`."""
        bars = self.chart.bars
        first = self.bar_index(start)
        last = next((n for n, bar in enumerate(bars) if end <= bar.end), len(bars) - 1)
        beat = 1 + (end - bars[last].start) / bars[last].meter.beat
        return f"{last - first}m+{decimal(float(beat))}"

    @cached_property
    def _staves_by_part(self) -> dict[str, dict[StaffKind, Staff]]:
        found: dict[str, dict[StaffKind, Staff]] = {}
        for staff in self.staves:
            if staff.part is not None:
                found.setdefault(staff.part.name, {}).setdefault(staff.kind, staff)
        return found

    def staff_of(self, part: Part, *kinds: StaffKind) -> Staff | None:
        """Return a part's staff of the first of the kinds that it has; its top staff for none."""
        own = self._staves_by_part.get(part.name, {})
        found = (own[kind] for kind in kinds or ("staff", "drums", "tab") if kind in own)
        return next(found, None)


def _key(voice: WrittenVoice) -> _VoiceKey:
    return voice.part.name, voice.number
