"""The drum staff: hands with stems up, feet with stems down."""

from xml.etree.ElementTree import Element

from sitegen.engraving.copyist import WrittenBar, WrittenEvent, WrittenVoice
from sitegen.engraving.mei.element import child, put
from sitegen.engraving.mei.layers import write_events
from sitegen.engraving.mei.pitched import articulate
from sitegen.engraving.mei.ties import tie_state
from sitegen.score.chart import Note

_HEADS = {"plain": None, "x": "x", "diamond": "diamond"}
_LOWEST_LINE = 4 * 7 + 2
_LETTERS = "CDEFGAB"


class DrumLayer:
    """Writes one voice of the kit."""

    def __init__(self, voice: WrittenVoice) -> None:
        self._stems = "up" if voice.number == 1 else "down"

    def write(self, layer: Element, bar: WrittenBar) -> None:
        """Write one bar; a full bar of silence is one `mRest`."""
        if bar.is_silent and bar.is_full:
            child(layer, "mRest")
            return
        write_events(layer, bar, self._write_event)

    def _write_event(self, home: Element, written: WrittenEvent) -> None:
        value = {"dur": written.piece.value.dur, "dots": written.piece.value.dots or None}
        if written.piece.is_rest:
            child(home, "rest", id=written.id, **value)
            return
        # What rolls on over a tie is not struck again, nor is what was struck with it.
        notes = [n for n in _low_to_high(written.event.notes) if self._sounds(written, n)]
        if written.piece.opens and any(note.flam for note in written.event.notes):
            self._write_flam(home, written)
        if any(written.event.notes[n].roll for n in notes):
            home = child(home, "bTrem", unitdur=32)
        if len(notes) == 1:
            element = self._write_note(home, written, notes[0])
        else:
            element = child(home, "chord", id=written.id)
            for index in notes:
                self._write_note(element, written, index)
        put(element, **value, stem_dir=self._stems)
        if written.piece.opens and any(note.opened for note in written.event.notes):
            child(element, "artic", artic="open", place="above")
        articulate(element, written, place="above" if self._stems == "up" else None)

    def _sounds(self, written: WrittenEvent, index: int) -> bool:
        return written.piece.opens or written.event.notes[index].roll

    def _write_note(self, home: Element, written: WrittenEvent, index: int) -> Element:
        note = written.event.notes[index]
        element = child(home, "note", id=written.note_ids[index])
        _place(element, note)
        put(element, pnum=note.midi, head_mod="paren" if note.ghost else None)
        put(element, tie=tie_state(written) if note.roll else None)
        return element

    def _write_flam(self, home: Element, written: WrittenEvent) -> None:
        group = child(home, "graceGrp", attach="post")
        for note in written.event.notes:
            if note.flam:
                grace = child(group, "note", dur=8, grace="unacc", stem_dir=self._stems)
                _place(grace, note)


def _place(element: Element, note: Note) -> None:
    if note.drum is None:
        return
    letter, octave = note.drum.place
    put(element, pname=letter.lower(), oct=octave, head_shape=_HEADS[note.drum.head])
    put(element, loc=7 * octave + _LETTERS.index(letter) - _LOWEST_LINE)


def _low_to_high(notes: tuple[Note, ...]) -> list[int]:
    return sorted(range(len(notes)), key=lambda n: _height(notes[n]))


def _height(note: Note) -> int:
    if note.drum is None:
        return 0
    letter, octave = note.drum.place
    return 7 * octave + _LETTERS.index(letter)
