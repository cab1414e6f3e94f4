"""What a player's hands do, as the notations of a note: strings, bends, slides, slurs."""

from collections import defaultdict
from xml.etree.ElementTree import Element

from sitegen.engraving.copyist import WrittenEvent
from sitegen.engraving.joins import Join, legato_runs
from sitegen.engraving.musicxml.element import child
from sitegen.score.chart import Note

_ARTICULATIONS = {
    "accent": "accent",
    "staccato": "staccato",
    "tenuto": "tenuto",
    "marcato": "strong-accent",
}
_LETTERS = {"hammer-on": "H", "pull-off": "P"}
# Slides from nowhere and into nowhere, by where the pitch goes.
_SLIDES_IN = {"up": "scoop", "down": "plop"}
_SLIDES_OUT = {"up": "doit", "down": "falloff"}
_MOST_NUMBERS = 16
_LEGATO, _BENT = 1, 2


class Techniques:
    """The techniques of one voice, found once and written note by note."""

    def __init__(self, joins: tuple[Join, ...]) -> None:
        # What ends at a note is written before what starts there.
        self._slurs: dict[str, list[tuple[str, int]]] = defaultdict(list)
        self._joins: dict[tuple[str, int], list[tuple[str, str, int]]] = defaultdict(list)
        for join in joins:
            self._enter(join)
        bends = tuple((join,) for join in joins if join.kind == "bend")
        for number, runs in ((_LEGATO, legato_runs(joins)), (_BENT, bends)):
            for run in runs:
                self._slurs[run[-1].end.first.id].insert(0, ("stop", number))
                self._slurs[run[0].start.first.id].append(("start", number))

    def _enter(self, join: Join) -> None:
        number = (join.start.note.string or join.start.index + 1) % _MOST_NUMBERS or 1
        end, start = (join.end.first.id, join.end.index), (join.start.last.id, join.start.index)
        self._joins[end].insert(0, (join.kind, "stop", number))
        self._joins[start].append((join.kind, "start", number))

    def write_event(self, notations: Element, written: WrittenEvent) -> None:
        """Write what holds for all notes of an event, into its first note."""
        for way, number in self._slurs.get(written.id, ()):
            child(notations, "slur", type=way, number=number)
        if written.piece.opens:
            write_articulations(notations, written)

    def write_note(self, notations: Element, written: WrittenEvent, index: int) -> None:
        """Write what one of an event's notes does."""
        note = written.event.notes[index]
        joins = self._joins.get((written.id, index), [])
        for kind, way, number in joins:
            if kind == "slide":
                child(notations, "slide", type=way, number=number, line_type="solid")
        if note.vibrato and written.piece.opens and not note.dead:
            wave = child(notations, "ornaments")
            child(wave, "wavy-line", type="start", number=1)
            child(wave, "wavy-line", type="stop", number=1)
        technical = Element("technical")
        for kind, way, number in joins:
            if kind in _LETTERS:
                letter = _LETTERS[kind] if way == "start" else None
                child(technical, kind, letter, type=way, number=number)
        _write_stopping(technical, written, note)
        if len(technical):
            notations.append(technical)
        _write_slides(notations, written, note)


def _write_stopping(technical: Element, written: WrittenEvent, note: Note) -> None:
    """Write string and fret, on tied notes too: a tablature has no other place for them."""
    if note.string is not None:
        child(technical, "string", note.string)
        child(technical, "fret", note.fret or 0)
    if not written.piece.opens:
        return
    if note.harmonic:
        harmonic = child(technical, "harmonic")
        child(harmonic, "natural")
        child(harmonic, "sounding-pitch")
    if note.bend and not note.dead:
        child(child(technical, "bend"), "bend-alter", note.bend)


def _write_slides(notations: Element, written: WrittenEvent, note: Note) -> None:
    slides = Element("articulations")
    if note.slide_in and written.piece.opens:
        child(slides, _SLIDES_IN[note.slide_in])
    if note.slide_out and not written.piece.tied:
        child(slides, _SLIDES_OUT[note.slide_out])
    if len(slides) and not note.dead:
        notations.append(slides)


def write_articulations(notations: Element, written: WrittenEvent) -> None:
    """Write accents and the like, and a fermata."""
    marks = [_ARTICULATIONS[mark] for mark in written.event.marks if mark in _ARTICULATIONS]
    if any(note.accent for note in written.event.notes) and "accent" not in marks:
        marks.append("accent")
    if marks:
        home = child(notations, "articulations")
        for mark in marks:
            child(home, mark)
    if "fermata" in written.event.marks:
        child(notations, "fermata")
