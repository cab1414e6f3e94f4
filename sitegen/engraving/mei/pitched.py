"""The notation staff of a pitched part: notes, chords and rests at sounding pitch."""

from collections.abc import Mapping
from xml.etree.ElementTree import Element

from sitegen.engraving.copyist import WrittenBar, WrittenEvent, WrittenVoice
from sitegen.engraving.mei.accidentals import Accidentals
from sitegen.engraving.mei.element import child, put
from sitegen.engraving.mei.layers import write_events
from sitegen.engraving.mei.ties import comes_tied, shares_place, tie_state
from sitegen.engraving.mei.words import Words
from sitegen.score.chart import Note
from sitegen.score.instrument import Instrument
from sitegen.score.pitch import Pitch

ARTICULATIONS = {"accent": "acc", "staccato": "stacc", "tenuto": "ten", "marcato": "marc"}
"""The marks of an event that MEI takes as articulations."""


class PitchedLayer:
    """Writes one voice on a notation staff, its words under it.

    `roles` gives the class of a note by its id ("chord-tone", ...).
    """

    def __init__(
        self, voice: WrittenVoice, accidentals: Accidentals, roles: Mapping[str, str]
    ) -> None:
        self._instrument = voice.part.instrument
        self._accidentals = accidentals
        self._roles = roles
        self._words = Words(voice.part.voices[voice.number - 1])

    def write(self, layer: Element, bar: WrittenBar) -> None:
        """Write one bar; a full bar of silence is one `mRest`."""
        if bar.is_silent and bar.is_full:
            child(layer, "mRest", id=f"{bar.events[0].id}-rest" if bar.events else None)
            return
        write_events(layer, bar, self._write_event)

    def _write_event(self, home: Element, written: WrittenEvent) -> None:
        value = {"dur": written.piece.value.dur, "dots": written.piece.value.dots or None}
        notes = drawn_notes(written, self._instrument)
        if not notes:
            child(home, "rest", id=written.id, **value)
            return
        if len(notes) == 1:
            index, note, pitch = notes[0]
            element = self._write_note(home, written, index, note, pitch)
            put(element, **value)
            articulate(element, written)
            self._write_words(element, written)
            return
        chord = child(home, "chord", id=written.id, **value)
        for index, note, pitch in notes:
            self._write_note(chord, written, index, note, pitch)
        articulate(chord, written)
        self._write_words(chord, written)

    def _write_words(self, home: Element, written: WrittenEvent) -> None:
        if written.piece.opens:
            self._words.write(home, written.number)

    def _write_note(
        self, home: Element, written: WrittenEvent, index: int, note: Note, pitch: Pitch
    ) -> Element:
        identity = written.note_ids[index]
        element = child(home, "note", id=identity, type=self._roles.get(identity))
        put(element, pname=pitch.name.letter.lower(), oct=pitch.octave)
        if note.dead:
            put(element, head_shape="x")
        else:
            attributes = self._accidentals.of(pitch, tied_from_before=comes_tied(written))
            tie = None if shares_place(written.event) else tie_state(written)
            put(element, **attributes, tie=tie)
        if note.harmonic:
            put(element, head_shape="diamond", head_fill="void")
        if note.ghost:
            put(element, head_mod="paren")
        return element


def drawn_notes(written: WrittenEvent, instrument: Instrument) -> list[tuple[int, Note, Pitch]]:
    """Return the notes that stand on a staff, lowest first, with their place in the event.

    Of two strings in unison one is drawn. A dead note stands where its open string would, but
    only where it is struck, and not where a note that sounds stands already.
    """
    if written.piece.is_rest:
        return []
    sounding: dict[Pitch, tuple[int, Note, Pitch]] = {}
    for index, note in enumerate(written.event.notes):
        if note.pitch is not None:
            sounding.setdefault(note.pitch, (index, note, note.pitch))
    taken = {pitch.place for pitch in sounding}
    dead = [] if comes_tied(written) else _dead_notes(written, instrument)
    drawn = [*sounding.values(), *(item for item in dead if item[2].place not in taken)]
    return sorted(drawn, key=lambda item: (item[2].place, item[2].midi))


def _dead_notes(written: WrittenEvent, instrument: Instrument) -> list[tuple[int, Note, Pitch]]:
    notes = enumerate(written.event.notes)
    placed = [(n, note, _string_pitch(note, instrument)) for n, note in notes if note.dead]
    return [(index, note, pitch) for index, note, pitch in placed if pitch is not None]


def articulate(element: Element, written: WrittenEvent, place: str | None = None) -> None:
    """Write an event's accents and the like, on its first note when it is tied."""
    if not written.piece.opens:
        return
    marks = [ARTICULATIONS[mark] for mark in written.event.marks if mark in ARTICULATIONS]
    if any(note.accent for note in written.event.notes) and "acc" not in marks:
        marks.append("acc")
    for mark in marks:
        child(element, "artic", artic=mark, place=place)


def _string_pitch(note: Note, instrument: Instrument) -> Pitch | None:
    if instrument.fretted is None or note.string is None:
        return None
    return instrument.fretted.tuning.strings[-note.string]
