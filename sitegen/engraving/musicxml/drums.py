"""The notes of the drum kit: no pitch, a place on the staff and an instrument each."""

from collections.abc import Mapping
from xml.etree.ElementTree import Element

from sitegen.engraving.copyist import WrittenEvent, WrittenVoice
from sitegen.engraving.mei.ties import comes_tied
from sitegen.engraving.musicxml.element import child
from sitegen.engraving.musicxml.notes import tie_ends, write_rest
from sitegen.engraving.musicxml.rhythm import (
    Placed,
    write_beams,
    write_duration,
    write_ratio,
    write_tuplet,
    write_value,
)
from sitegen.engraving.musicxml.techniques import write_articulations
from sitegen.score.chart import Note
from sitegen.score.drums import DrumSound

_STROKES_OF_A_ROLL = 3
_EIGHTH = 8


class DrumNotes:
    """Writes the notes of hands or feet; `instruments` are the file's ids by MIDI number."""

    def __init__(
        self, voice: WrittenVoice, instruments: Mapping[int, str], divisions: int
    ) -> None:
        self._stem = "up" if voice.number == 1 else "down"
        self._instruments = instruments
        self._divisions = divisions

    def write(self, measure: Element, placed: Placed) -> None:
        """Write what is struck together, after the grace notes of its flams, or a rest."""
        written = placed.written
        struck = [n for n in written.event.notes if n.drum and _sounds(written, n)]
        if not struck or written.piece.is_rest:
            write_rest(measure, placed, self._divisions)
            return
        if written.piece.opens:
            for place, note in enumerate(note for note in struck if note.flam):
                self._write_flam(measure, placed, note, is_first=not place)
        for place, note in enumerate(struck):
            self._write_note(measure, placed, note, is_first=not place)

    def _write_note(
        self, measure: Element, placed: Placed, source: Note, *, is_first: bool
    ) -> None:
        note = child(measure, "note")
        if not is_first:
            child(note, "chord")
        _write_place(note, source.drum)
        write_duration(note, placed, self._divisions)
        ties = tie_ends(placed.written) if source.roll else []
        for way in ties:
            child(note, "tie", type=way)
        self._write_instrument(note, source)
        write_value(note, placed)
        write_ratio(note, placed)
        child(note, "stem", self._stem)
        _write_head(note, source)
        if is_first:
            write_beams(note, placed)
        _write_notations(note, placed, source, ties, is_first=is_first)

    def _write_flam(
        self, measure: Element, placed: Placed, source: Note, *, is_first: bool
    ) -> None:
        note = child(measure, "note")
        child(note, "grace", slash="yes")
        if not is_first:
            child(note, "chord")
        _write_place(note, source.drum)
        self._write_instrument(note, source)
        child(note, "voice", placed.voice)
        child(note, "type", "eighth")
        child(note, "stem", self._stem)
        _write_head(note, source)

    def _write_instrument(self, note: Element, source: Note) -> None:
        child(note, "instrument", id=self._instruments[source.midi or 0])


def _sounds(written: WrittenEvent, note: Note) -> bool:
    """Return whether a note is struck here, or rolls on; only rolls are tied."""
    return note.roll or not comes_tied(written)


def _write_place(note: Element, drum: DrumSound | None) -> None:
    home = child(note, "unpitched")
    if drum is not None:
        child(home, "display-step", drum.place[0])
        child(home, "display-octave", drum.place[1])


def _write_head(note: Element, source: Note) -> None:
    shape = source.drum.head if source.drum else "plain"
    name = "normal" if shape == "plain" else shape
    if name != "normal" or source.ghost:
        child(note, "notehead", name, parentheses="yes" if source.ghost else None)


def _write_notations(
    note: Element, placed: Placed, source: Note, ties: list[str], *, is_first: bool
) -> None:
    notations = Element("notations")
    for way in ties:
        child(notations, "tied", type=way)
    if is_first:
        write_tuplet(notations, placed)
    if source.roll:
        flags = max(placed.written.piece.value.dur.bit_length() - _EIGHTH.bit_length() + 1, 0)
        strokes = max(_STROKES_OF_A_ROLL - flags, 1)
        child(child(notations, "ornaments"), "tremolo", strokes, type="single")
    if source.opened and placed.written.piece.opens:
        child(child(notations, "technical"), "open")
    if is_first and placed.written.piece.opens:
        write_articulations(notations, placed.written)
    if len(notations):
        note.append(notations)
