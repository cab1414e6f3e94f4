"""A chart's names as its players finger or read them, where those are not what sounds.

What a musician expects of the second way, common practice, no source: the staff of a detuned,
capoed or transposing part shows what is under the fingers, with the key signature that goes with
it; the staves of all other parts stay. Tablature, degrees and numerals are the same both ways.
The chord names are those of whoever plays the chords: they follow the first detuned or capoed
part; without one they follow the first transposing part, unless a part that plays chords stands
at sounding pitch.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from sitegen.harmony import fingered_chord, fingered_key, fingering_interval, spell_note
from sitegen.score.chart import Chart, Event, Note, Part
from sitegen.score.chord import Chord, NoChord
from sitegen.score.instrument import Fretted, Instrument, Tuning
from sitegen.score.interval import Interval
from sitegen.score.key import Key

_CHORD_PLAYERS = frozenset({"guitar", "keys", "ukulele", "mandolin", "banjo", "mallets"})
# What reads in a key or octave of its own has a plain clef, not the octave clef of its family.
_PLAIN_CLEFS = {"guitar": "treble", "banjo": "treble", "bass": "bass"}


@dataclass(frozen=True)
class PlayerNames:
    """How the players of a chart name what they play.

    `parts` are the names of the parts whose staff changes, `keys` the keys that they are
    fingered or read in (none without a key), `chords` the interval from sounding to named
    chords. `fingered` tells whether strings are fingered, not only another key read.
    """

    parts: tuple[str, ...]
    keys: Mapping[str, Key]
    chords: Interval
    fingered: bool

    def chart(self, chart: Chart) -> Chart:
        """Return the chart with its parts as they are named; the chords stay as they sound."""
        return replace(chart, parts=tuple(map(self._part, chart.parts)))

    def note(self, part: str, note: Note) -> Note:
        """Return a note of a part with the pitch it is named by."""
        if part not in self.parts or note.pitch is None or note.fingered is None:
            return note
        return replace(note, pitch=note.fingered)

    def chord(self, chord: Chord | NoChord) -> Chord | NoChord:
        """Return a chord by the name it is fingered or read as."""
        return fingered_chord(chord, self.chords)

    def _part(self, part: Part) -> Part:
        if part.name not in self.parts:
            return part
        voices = tuple(tuple(self._event(part, e) for e in voice) for voice in part.voices)
        return replace(part, instrument=_instrument(part.instrument), voices=voices)

    def _event(self, part: Part, event: Event) -> Event:
        return replace(event, notes=tuple(self.note(part.name, note) for note in event.notes))


def player_names(chart: Chart) -> PlayerNames | None:
    """Return how the players of a chart name its notes; None where nothing drawn would change."""
    moved = [part for part in chart.parts if _is_moved(part)]
    chords = _chord_interval(chart, moved)
    has_staff = any("staff" in part.shows or not part.instrument.fretted for part in moved)
    if not has_staff and not (chart.chords and chords.semitones % 12):
        return None
    keys = {part.name: _key(part.instrument, chart.key) for part in moved if chart.key}
    fingered = any(part.instrument.reading is None for part in moved)
    return PlayerNames(
        tuple(part.name for part in moved),
        {name: key for name, key in keys.items() if key is not None},
        chords,
        fingered,
    )


def _is_moved(part: Part) -> bool:
    """Tell whether the staff of a part changes; frets that sound whole octaves off keep it."""
    reading, fretted = part.instrument.reading, part.instrument.fretted
    if not any(note.pitch for event in part.events for note in event.notes):
        return False
    if reading is not None:
        return reading.interval != Interval(0, 0)
    return fretted is not None and fretted.shift % 12 != 0


def _key(instrument: Instrument, key: Key | None) -> Key | None:
    if key is None:
        return None
    if instrument.reading is not None:
        return Key(instrument.reading.interval.above_name(key.tonic), key.mode)
    return fingered_key(key, instrument.fretted.shift) if instrument.fretted else key


def _chord_interval(chart: Chart, moved: list[Part]) -> Interval:
    leader = next((part for part in moved if part.instrument.reading is None), None)
    others = [part for part in chart.parts if part not in moved]
    if leader is None and moved and not any(p.instrument.family in _CHORD_PLAYERS for p in others):
        leader = moved[0]
    return Interval(0, 0) if leader is None else _interval(leader.instrument, chart.key)


def _interval(instrument: Instrument, key: Key | None) -> Interval:
    if instrument.reading is not None:
        return instrument.reading.interval
    shift = instrument.fretted.shift if instrument.fretted else 0
    return fingering_interval(shift, key)


def _instrument(instrument: Instrument) -> Instrument:
    """Return the instrument with the names of its open strings, on which dead notes stand."""
    if instrument.reading is not None:
        clef = instrument.clef or _PLAIN_CLEFS.get(instrument.family, "")
        return replace(instrument, clef=clef)
    fretted = instrument.fretted
    if fretted is None:
        return instrument
    shift = fretted.shift - fretted.capo
    strings = tuple(spell_note(string.midi - shift) for string in fretted.tuning.strings)
    tuning = Tuning(fretted.tuning.name, strings)
    return replace(instrument, fretted=Fretted(tuning, fretted.standard))
