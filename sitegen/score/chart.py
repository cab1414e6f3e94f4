"""A chart of notes and chords: bars, parts, events. What the readers make and all else reads.

Onsets and durations are `Fraction`s of a quarter note; onsets count from the start of the
chart (the pickup included). Repeats are not written out.
"""

from bisect import bisect_right
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property
from typing import Literal

from msgspec import Struct

from sitegen.score.chord import Chord, NoChord
from sitegen.score.drums import DrumSound
from sitegen.score.instrument import Instrument
from sitegen.score.key import Key
from sitegen.score.meter import Meter
from sitegen.score.pitch import Pitch
from sitegen.score.tempo import Tempo
from sitegen.source import Span

_NONE = Fraction(0)
Feel = Literal["straight", "swing", "shuffle"]
Joining = Literal["hammer-on", "pull-off", "slide", "bend"]


@dataclass(frozen=True)
class Bar:
    """One bar as it is counted.

    `number` is 0 for a pickup; `start` is its onset and `length` what it really holds, which
    is less than the meter's length in a pickup, before a repeat that takes one up, and so on;
    `skipped` is the time of the meter that passes before it starts (a pickup on 4 in 4/4
    skips 3). `new_meter` marks a bar whose meter is to be shown; `opens_line` the first bar of
    a system as the author wrote them. `ending` is the text of the bracket that starts here
    ("1.", "2.") and `ending_closes` says that it closes at this bar's end. `same_as_before`
    marks a bar written as a repeat of the one before it, %.
    """

    number: int
    meter: Meter
    start: Fraction
    length: Fraction
    span: Span
    skipped: Fraction = _NONE
    new_meter: bool = False
    opens_line: bool = False
    repeat_start: bool = False
    repeat_end: bool = False
    double_bar: bool = False
    ending: str = ""
    ending_closes: bool = False
    same_as_before: bool = False

    @cached_property
    def end(self) -> Fraction:
        """The onset of whatever follows the bar."""
        return self.start + self.length


@dataclass(frozen=True)
class Note:
    """One sounding note of an event.

    `pitch` is what sounds, None for a dead note on a string and for a drum; `fingered` is the
    name under the fingers where string, capo or reading make it another one (and the same
    pitch where they do not); `string` counts from 1 at the top of the tablature, `fret` from
    the capo. `bend` is how many semitones the note is bent up.
    """

    span: Span
    pitch: Pitch | None = None
    fingered: Pitch | None = None
    string: int | None = None
    fret: int | None = None
    drum: DrumSound | None = None
    dead: bool = False
    ghost: bool = False
    harmonic: bool = False
    accent: bool = False
    flam: bool = False
    roll: bool = False
    opened: bool = False
    vibrato: bool = False
    slide_in: Literal["", "up", "down"] = ""
    slide_out: Literal["", "up", "down"] = ""
    bend: int = 0
    # How this note goes on to the next note of the same string or part: drawn as a slur with a
    # letter, or a line.
    joins: Joining | Literal[""] = ""

    @property
    def midi(self) -> int | None:
        """The MIDI number that sounds; General MIDI percussion for drums; None when dead."""
        if self.drum is not None:
            return self.drum.open_midi if self.opened else self.drum.midi
        return None if self.pitch is None else self.pitch.midi


class Syllable(Struct, frozen=True):
    """One syllable of a line of words; `verse` counts from 1.

    `joined` says that a hyphen leads on to the next syllable, `held` that the syllable before
    is held over this note (a line, no text).
    """

    text: str
    verse: int
    span: Span
    joined: bool = False
    held: bool = False


@dataclass(frozen=True)
class Event:
    """What one voice of a part does at one onset: notes together, or a rest without any."""

    onset: Fraction
    duration: Fraction
    notes: tuple[Note, ...]
    span: Span
    syllables: tuple[Syllable, ...] = ()
    marks: tuple[str, ...] = ()

    @cached_property
    def end(self) -> Fraction:
        """The onset of whatever follows."""
        return self.onset + self.duration


@dataclass(frozen=True)
class StretchMark:
    """A mark that holds over a stretch of a part: `P.M.`, `let ring`, a swell.

    `kind` is "palm mute", "let ring", "crescendo" or "diminuendo".
    """

    kind: Literal["palm mute", "let ring", "crescendo", "diminuendo"]
    onset: Fraction
    end: Fraction
    span: Span


@dataclass(frozen=True)
class Part:
    """One player's music.

    `voices` holds one sequence of events for most parts, two for drums (hands, feet); each
    covers the whole chart without gap or overlap. `shows` says how the part is drawn.
    """

    name: str
    instrument: Instrument
    voices: tuple[tuple[Event, ...], ...]
    shows: tuple[Literal["staff", "tab", "drums"], ...]
    stretches: tuple[StretchMark, ...] = ()

    @property
    def is_drums(self) -> bool:
        """True for the drum kit, whose notes have no pitch."""
        return self.instrument.family == "drums"

    @cached_property
    def events(self) -> tuple[Event, ...]:
        """All events of all voices by onset."""
        if len(self.voices) == 1:
            return self.voices[0]
        return tuple(sorted((e for voice in self.voices for e in voice), key=lambda e: e.onset))


class ChordEvent(Struct, frozen=True):
    """A chord that sounds from `onset`, until the next one of the row."""

    onset: Fraction
    duration: Fraction
    chord: Chord | NoChord
    span: Span


@dataclass(frozen=True)
class HeardDegree:
    """A degree as the author heard it, to be compared with the computed one.

    `insists` is set by the author's `!`; `part` names the part it speaks of.
    """

    onset: Fraction
    text: str
    insists: bool
    part: str
    span: Span


@dataclass(frozen=True)
class Remark:
    """A short text at an onset: a `section` name or a `say`."""

    onset: Fraction
    text: str
    span: Span


@dataclass(frozen=True)
class Chart:
    """Everything one chart block says in music; parts may be empty (a progression).

    `kind` is the block's name; `key` may be None when the author gave none; `start_time` is
    the place in the recording in seconds; `label` says what the degree row shows, `roman`
    whether a numeral row is drawn.
    """

    id: str
    kind: str
    span: Span
    bars: tuple[Bar, ...]
    title: str = ""
    key: Key | None = None
    tempo: Tempo | None = None
    feel: Feel = "straight"
    start_time: int | None = None
    parts: tuple[Part, ...] = ()
    chords: tuple[ChordEvent, ...] = ()
    degrees: tuple[HeardDegree, ...] = ()
    sections: tuple[Remark, ...] = ()
    remarks: tuple[Remark, ...] = ()
    label: Literal["degrees", "key degrees", "intervals", "none"] = "degrees"
    roman: bool = False
    extras: tuple[str, ...] = field(default=())

    @property
    def length(self) -> Fraction:
        """The length of the chart in quarter notes, repeats not written out."""
        return self.bars[-1].end if self.bars else Fraction(0)

    @property
    def has_pickup(self) -> bool:
        """True when the chart starts with a pickup, bar 0."""
        return bool(self.bars) and self.bars[0].number == 0

    @property
    def bar_count(self) -> int:
        """How many bars are counted: a pickup is none."""
        return len({bar.number for bar in self.bars} - {0})

    def bar_at(self, onset: Fraction) -> Bar:
        """Return the bar that holds `onset`; the last bar for an onset at or past the end."""
        return self.bars[max(bisect_right(self._bar_starts, onset) - 1, 0)]

    def chord_at(self, onset: Fraction) -> Chord | NoChord | None:
        """Return the chord that sounds at `onset`, None before the first."""
        before = bisect_right(self._chord_onsets, onset)
        return self.chords[before - 1].chord if before else None

    def beat_of(self, onset: Fraction) -> tuple[Bar, Fraction]:
        """Return the bar of `onset` and the counted beat there, from 1, in the meter's unit."""
        found = self._beats.get(onset)
        if found is None:
            bar = self.bar_at(onset)
            found = bar, 1 + (onset - bar.start + bar.skipped) / bar.meter.beat
            self._beats[onset] = found
        return found

    @cached_property
    def _beats(self) -> dict[Fraction, tuple[Bar, Fraction]]:
        """The places that were asked for: the parts of a chart share most of their onsets."""
        return {}

    @cached_property
    def _bar_starts(self) -> tuple[Fraction, ...]:
        return tuple(bar.start for bar in self.bars)

    @cached_property
    def _chord_onsets(self) -> tuple[Fraction, ...]:
        return tuple(event.onset for event in self.chords)


def beat_text(beat: Fraction) -> str:
    """Return a beat as people write it: "2", "2 1/2"."""
    whole, rest = divmod(beat, 1)
    return f"{whole} {rest}" if rest else str(whole)
