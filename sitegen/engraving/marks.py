"""What verovio does not draw: which signs stand in a tablature and how its notes are joined.

The signs are found here, from the chart, and drawn into the finished sheet by
`sitegen.engraving.svg.overlay`.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.engraving.joins import Join, Played, first_of_each
from sitegen.engraving.mei.plan import ScorePlan
from sitegen.engraving.mei.stretches import stretch_id
from sitegen.engraving.mei.tab import tab_note_id
from sitegen.engraving.mei.techniques import LETTERS, bend_id, drawn_id, letter_id, wave_id
from sitegen.score.chart import Note, Part


@dataclass(frozen=True)
class FretSign:
    """Text in place of a plain fret number: x, <12>, (5)."""

    note: str
    text: str


@dataclass(frozen=True)
class Arc:
    """A slur between two numbers of a tablature: hammer-on, pull-off."""

    start: str
    end: str


@dataclass(frozen=True)
class SlideLine:
    """A slanting line between two numbers of a tablature."""

    start: str
    end: str
    rises: bool


@dataclass(frozen=True)
class SlideStub:
    """A short slanting line into a note from nowhere, or out of it."""

    note: str
    into: bool
    rises: bool


@dataclass(frozen=True)
class Caption:
    """A text that stands over a note, or half-way between two.

    Verovio sets what is attached to the notes of a tablature too far to the right.
    """

    text: str
    start: str
    end: str


@dataclass(frozen=True)
class BendArrow:
    """An arrow from a note up to the text that says how far it is bent."""

    note: str
    text: str


@dataclass(frozen=True)
class BendCurve:
    """The rise of a bent note beside its head on a staff."""

    note: str


@dataclass(frozen=True)
class DashedLine:
    """The dashed line after the text of a stretch, up to the last note it holds for."""

    text: str
    last_note: str


Mark = FretSign | Arc | Caption | SlideLine | SlideStub | BendArrow | BendCurve | DashedLine


def marks_of(plan: ScorePlan) -> tuple[Mark, ...]:
    """Return all marks of a chart, part by part."""
    return tuple(mark for part in plan.chart.parts for mark in _part_marks(plan, part))


def _part_marks(plan: ScorePlan, part: Part) -> Iterator[Mark]:
    for voice in plan.voices[part.name]:
        joins = plan.joins(voice)
        bent_to = {id(join.end.first): join for join in joins if join.kind == "bend"}
        for played in plan.played(voice):
            if plan.staff_of(part, "tab") is not None and played.note.string is not None:
                yield from _tab_marks(played, is_target=id(played.first) in bent_to)
            if plan.staff_of(part, "staff") is not None:
                tab = plan.staff_of(part, "tab") is not None
                yield from _staff_marks(played, arrow=not tab)
        if plan.staff_of(part, "tab") is not None:
            yield from _tab_joins(joins)
        yield from _letters(plan, part, joins)
    yield from _dashes(plan, part)


def fret_text(note: Note, *, is_target: bool = False) -> str:
    """Return what a tablature shows for a note; `is_target` marks what a bend reaches."""
    if note.dead:
        return "x"
    fret = str(note.fret if note.fret is not None else "")
    if note.harmonic:
        return f"<{fret}>"
    return f"({fret})" if note.ghost or is_target else fret


def _tab_marks(played: Played, *, is_target: bool) -> Iterator[Mark]:
    note = played.note
    identity = tab_note_id(played.first, played.index)
    text = fret_text(note, is_target=is_target)
    if text != str(note.fret):
        yield FretSign(identity, text)
    if note.dead:
        return
    yield from _stubs(note, identity)
    if note.bend:
        yield BendArrow(identity, bend_id(identity))
    if note.vibrato:
        yield Caption(wave_id(identity), identity, identity)


def _staff_marks(played: Played, *, arrow: bool) -> Iterator[Mark]:
    note = played.note
    if note.dead:
        return
    yield from _stubs(note, played.id)
    if note.bend and arrow:
        yield BendArrow(played.id, bend_id(played.id))
    elif note.bend and note.joins != "bend":
        yield BendCurve(played.id)


def _stubs(note: Note, identity: str) -> Iterator[Mark]:
    if note.slide_in:
        yield SlideStub(identity, into=True, rises=note.slide_in == "up")
    if note.slide_out:
        yield SlideStub(identity, into=False, rises=note.slide_out == "up")


def _tab_joins(joins: tuple[Join, ...]) -> Iterator[Mark]:
    for join in joins:
        start = tab_note_id(join.start.first, join.start.index)
        end = tab_note_id(join.end.first, join.end.index)
        if join.kind in ("hammer-on", "pull-off"):
            yield Arc(start, end)
        elif join.kind == "slide":
            yield SlideLine(start, end, rises=_rises(join))


def _letters(plan: ScorePlan, part: Part, joins: tuple[Join, ...]) -> Iterator[Mark]:
    staff = plan.staff_of(part, "tab", "staff")
    for join in first_of_each(joins):
        if staff is not None and join.kind in LETTERS:
            start = drawn_id(join.start, staff)
            yield Caption(letter_id(start), start, drawn_id(join.end, staff))


def _rises(join: Join) -> bool:
    return (join.end.note.fret or 0) >= (join.start.note.fret or 0)


def _dashes(plan: ScorePlan, part: Part) -> Iterator[Mark]:
    staff = plan.staff_of(part, "tab", "staff", "drums")
    for number, stretch in enumerate(part.stretches):
        if stretch.kind not in ("palm mute", "let ring") or staff is None:
            continue
        inside = [
            played
            for voice in plan.voices[part.name]
            for played in plan.played(voice)
            if stretch.onset <= played.first.event.onset < stretch.end
        ]
        if inside:
            last = inside[-1]
            tab = staff.kind == "tab"
            identity = tab_note_id(last.first, last.index) if tab else last.last_id
            yield DashedLine(stretch_id(part, number), identity)
