"""The notes of a pitched part, in notation or tablature."""

from xml.etree.ElementTree import Element

from sitegen.engraving.copyist import WrittenEvent, WrittenVoice
from sitegen.engraving.joins import Join
from sitegen.engraving.mei.accidentals import Accidentals
from sitegen.engraving.mei.staves import Staff
from sitegen.engraving.mei.ties import comes_tied
from sitegen.engraving.musicxml.element import child
from sitegen.engraving.musicxml.lyrics import Lyrics
from sitegen.engraving.musicxml.reading import written_interval
from sitegen.engraving.musicxml.rhythm import (
    Placed,
    write_beams,
    write_duration,
    write_ratio,
    write_tuplet,
    write_value,
)
from sitegen.engraving.musicxml.techniques import Techniques
from sitegen.score.chart import Note
from sitegen.score.pitch import Pitch

_ACCIDENTALS = {
    -3: "triple-flat",
    -2: "flat-flat",
    -1: "flat",
    0: "natural",
    1: "sharp",
    2: "double-sharp",
    3: "triple-sharp",
}


class PitchedNotes:
    """Writes the notes of one voice as they are read; `accidentals` are those of its staff.

    Every string that is struck is a note of its own, two strings in unison as well, and each
    names its string and fret. A dead note stands where its open string would, with a cross.
    """

    def __init__(
        self,
        staff: Staff,
        voice: WrittenVoice,
        joins: tuple[Join, ...],
        accidentals: Accidentals,
        divisions: int,
    ) -> None:
        self._fretted = voice.part.instrument.fretted
        self._stretches = [mark for mark in voice.part.stretches if mark.kind == "palm mute"]
        self._written = written_interval(staff)
        self._accidentals = None if staff.kind == "tab" else accidentals
        self._techniques = Techniques(joins)
        self._lyrics = Lyrics(voice.part.voices[voice.number - 1])
        self._divisions = divisions

    def write(self, measure: Element, placed: Placed) -> None:
        """Write a note, the notes of a chord, or a rest."""
        notes = self._notes(placed.written)
        if not notes:
            write_rest(measure, placed, self._divisions)
        for place, (index, pitch) in enumerate(notes):
            self._write_note(measure, placed, index, pitch, is_first=not place)

    def _notes(self, written: WrittenEvent) -> list[tuple[int, Pitch]]:
        """Return what sounds, or is struck dead, with its place in the event; lowest first."""
        if written.piece.is_rest:
            return []
        found = [
            (index, pitch)
            for index, note in enumerate(written.event.notes)
            if (pitch := self._pitch(written, note)) is not None
        ]
        return sorted(found, key=lambda item: (item[1].place, item[1].midi))

    def _pitch(self, written: WrittenEvent, note: Note) -> Pitch | None:
        pitch = self._open_string(written, note) if note.dead else note.pitch
        return None if pitch is None else self._written.above(pitch)

    def _open_string(self, written: WrittenEvent, note: Note) -> Pitch | None:
        if self._fretted is None or note.string is None or comes_tied(written):
            return None
        return self._fretted.tuning.strings[-note.string]

    def _write_note(
        self, measure: Element, placed: Placed, index: int, pitch: Pitch, *, is_first: bool
    ) -> None:
        written = placed.written
        source = written.event.notes[index]
        note = child(measure, "note")
        if not is_first:
            child(note, "chord")
        _write_pitch(note, pitch)
        write_duration(note, placed, self._divisions)
        ties = [] if source.dead else tie_ends(written)
        for way in ties:
            child(note, "tie", type=way)
        write_value(note, placed)
        self._write_accidental(note, written, pitch)
        write_ratio(note, placed)
        _write_head(note, source)
        if is_first:
            write_beams(note, placed)
        self._write_notations(note, placed, index, ties, is_first=is_first)
        if is_first and written.piece.opens:
            self._lyrics.write(note, written.number)
        self._write_mute(note, written, source)

    def _write_accidental(self, note: Element, written: WrittenEvent, pitch: Pitch) -> None:
        alteration = pitch.name.alteration
        if self._accidentals is None or alteration not in _ACCIDENTALS:
            return
        if "accid" in self._accidentals.of(pitch, tied_from_before=comes_tied(written)):
            child(note, "accidental", _ACCIDENTALS[alteration])

    def _write_notations(
        self, note: Element, placed: Placed, index: int, ties: list[str], *, is_first: bool
    ) -> None:
        notations = Element("notations")
        for way in ties:
            child(notations, "tied", type=way)
        if is_first:
            write_tuplet(notations, placed)
            self._techniques.write_event(notations, placed.written)
        self._techniques.write_note(notations, placed.written, index)
        if len(notations):
            note.append(notations)

    def _write_mute(self, note: Element, written: WrittenEvent, source: Note) -> None:
        """Tell a program that plays the file what is damped."""
        onset = written.event.onset
        palm = any(mark.onset <= onset < mark.end for mark in self._stretches)
        if source.dead or palm:
            child(child(note, "play"), "mute", "on" if source.dead else "palm")


def write_rest(measure: Element, placed: Placed, divisions: int) -> None:
    """Write a rest of one value."""
    note = child(measure, "note")
    child(note, "rest")
    write_duration(note, placed, divisions)
    write_value(note, placed)
    write_ratio(note, placed)
    notations = Element("notations")
    write_tuplet(notations, placed)
    if len(notations):
        note.append(notations)


def tie_ends(written: WrittenEvent) -> list[str]:
    """Return the ends of ties at a written note: stop, start, both or none."""
    return ["stop"] * comes_tied(written) + ["start"] * written.piece.tied


def _write_pitch(note: Element, pitch: Pitch) -> None:
    home = child(note, "pitch")
    child(home, "step", pitch.name.letter)
    if pitch.name.alteration:
        child(home, "alter", pitch.name.alteration)
    child(home, "octave", pitch.octave)


def _write_head(note: Element, source: Note) -> None:
    shape = "x" if source.dead else "diamond" if source.harmonic else "normal"
    if shape != "normal" or source.ghost:
        filled = "no" if shape == "diamond" else None
        child(note, "notehead", shape, filled=filled, parentheses="yes" if source.ghost else None)
