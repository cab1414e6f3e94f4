"""A tablature staff: one line a string, fret numbers from the capo.

MEI takes only numbers for frets; what else stands in a tablature (x, <12>, (5)) is put in after
the drawing by `sitegen.engraving.marks`.
"""

from collections.abc import Mapping
from xml.etree.ElementTree import Element

from sitegen.engraving.copyist import WrittenBar, WrittenEvent, WrittenVoice
from sitegen.engraving.mei.element import child
from sitegen.engraving.mei.layers import write_events
from sitegen.engraving.mei.ties import comes_tied
from sitegen.engraving.values import NoteValue


class TabLayer:
    """Writes one voice in tablature; `with_rhythm` adds stems where no staff shows the rhythm."""

    def __init__(
        self, voice: WrittenVoice, roles: Mapping[str, str], *, with_rhythm: bool
    ) -> None:
        self._voice = voice
        self._roles = roles
        self._with_rhythm = with_rhythm

    def write(self, layer: Element, bar: WrittenBar) -> None:
        """Write one bar; silence takes up its time and shows only with rhythm."""
        if bar.is_silent and bar.is_full:
            child(layer, "mRest" if self._with_rhythm else "mSpace")
            return
        write_events(layer, bar, self._write_event, rhythm=self._with_rhythm)

    def _write_event(self, home: Element, written: WrittenEvent) -> None:
        value = written.piece.value
        lengths = {"dur": value.dur, "dots": value.dots or None}
        if written.piece.is_rest and self._with_rhythm:
            _write_rest(home, value)
            return
        # A number is not repeated for a tied note: the string is not struck again.
        if written.piece.is_rest or comes_tied(written):
            child(home, "space", **lengths)
            return
        group = child(home, "tabGrp", id=tab_id(written.id), **lengths)
        if self._with_rhythm:
            child(group, "tabDurSym")
        for index, note in enumerate(written.event.notes):
            if note.string is None:
                continue
            child(
                group,
                "note",
                id=tab_note_id(written, index),
                type=self._roles.get(written.note_ids[index]),
                tab_course=note.string,
                tab_fret=note.fret if note.fret is not None else 0,
            )


def _write_rest(home: Element, value: NoteValue) -> None:
    """Write a rest in a tablature: a dotted one as two, since verovio leaves its dot out."""
    for dur in (value.dur, 2 * value.dur)[: 1 + value.dots]:
        child(child(home, "tabGrp", dur=dur), "rest")


def tab_id(identity: str) -> str:
    """Return the id of an event in the tablature from its id on the staff."""
    return f"{identity}-tab"


def tab_note_id(written: WrittenEvent, index: int) -> str:
    """Return the id of one of the event's notes in the tablature."""
    return f"{tab_id(written.id)}-n{index + 1}"
