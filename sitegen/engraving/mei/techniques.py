"""How notes are joined and coloured by the player: slurs, slides, letters, bends, vibrato.

What stands inside a tablature (x, <12>, arcs, lines) is drawn later by
`sitegen.engraving.marks`; the texts written here keep the room for it.
"""

from xml.etree.ElementTree import Element

from sitegen.engraving.copyist import WrittenVoice
from sitegen.engraving.joins import (
    Join,
    Played,
    first_of_each,
    legato_runs,
)
from sitegen.engraving.mei.element import child
from sitegen.engraving.mei.plan import ScorePlan
from sitegen.engraving.mei.staves import Staff, text_home
from sitegen.engraving.mei.tab import tab_note_id
from sitegen.score.chart import Part

BENDS = {1: "½", 2: "full", 3: "1½", 4: "2", 5: "2½"}
"""What stands at the head of a bend's arrow, by semitones."""

LETTERS = {"hammer-on": "h", "pull-off": "p"}
"""The letter between two notes that are joined so."""

# SMuFL wiggleTrill, one wave of a wavy line, and how many of them mark a vibrato.
_WAVE, _WAVES = "U+EAA4", 3


def write_techniques(measure: Element, plan: ScorePlan, index: int) -> None:
    """Write the techniques of all parts that start in bar `index` (from 0)."""
    for part in plan.chart.parts:
        if part.is_drums:
            continue
        for voice in plan.voices[part.name]:
            joins = plan.joins(voice)
            staff = plan.staff_of(part, "staff")
            if staff is not None:
                _write_slurs(measure, voice, joins, index)
                _write_slides(measure, voice, joins, index)
            _write_letters(measure, plan, part, voice, joins, index)
            _write_colours(measure, plan, part, voice, index)


def _starts_in(voice: WrittenVoice, index: int, played: Played) -> bool:
    return played.first in voice.bars[index].events


def _write_slurs(
    measure: Element, voice: WrittenVoice, joins: tuple[Join, ...], index: int
) -> None:
    bends = tuple((join,) for join in joins if join.kind == "bend")
    for run in (*legato_runs(joins), *bends):
        if _starts_in(voice, index, run[0].start):
            start, end = f"#{run[0].start.id}", f"#{run[-1].end.id}"
            child(measure, "slur", startid=start, endid=end)


def _write_slides(
    measure: Element, voice: WrittenVoice, joins: tuple[Join, ...], index: int
) -> None:
    for join in joins:
        if join.kind == "slide" and join.start.last in voice.bars[index].events:
            start, end = f"#{join.start.last_id}", f"#{join.end.id}"
            child(measure, "gliss", startid=start, endid=end, lform="solid")


def _write_letters(
    measure: Element,
    plan: ScorePlan,
    part: Part,
    voice: WrittenVoice,
    joins: tuple[Join, ...],
    index: int,
) -> None:
    """Write h and p over the first note, once for all strings; the drawing moves them between."""
    staff = plan.staff_of(part, "tab", "staff")
    for join in first_of_each(joins):
        if staff is not None and join.kind in LETTERS and _starts_in(voice, index, join.start):
            note = drawn_id(join.start, staff)
            # By the beat, not by the note: beside the note it could slip between two degrees.
            beat = plan.tstamp(join.start.first.event.onset)
            _write_text(measure, staff, LETTERS[join.kind], id=letter_id(note), tstamp=beat)


def _write_colours(
    measure: Element, plan: ScorePlan, part: Part, voice: WrittenVoice, index: int
) -> None:
    """Write bends and vibrato over their notes."""
    staff = plan.staff_of(part, "tab", "staff")
    for played in plan.played(voice):
        coloured = (played.note.bend or played.note.vibrato) and not played.note.dead
        if staff is None or not coloured or not _starts_in(voice, index, played):
            continue
        identity = drawn_id(played, staff)
        if played.note.bend:
            text = BENDS.get(played.note.bend, "")
            _write_text(measure, staff, text, id=bend_id(identity), startid=f"#{identity}")
        if played.note.vibrato:
            _write_waves(measure, staff, id=wave_id(identity), startid=f"#{identity}")


def _write_text(measure: Element, staff: Staff, text: str, **place: str) -> None:
    mark = child(measure, "dir", type="technique", staff=staff.number, place="above", **place)
    child(text_home(mark, staff), "rend", fontstyle="normal").text = text


def _write_waves(measure: Element, staff: Staff, **place: str) -> None:
    mark = child(measure, "dir", type="technique", staff=staff.number, place="above", **place)
    home = text_home(mark, staff)
    for _ in range(_WAVES):
        child(home, "symbol", glyph_auth="smufl", glyph_num=_WAVE)


def drawn_id(played: Played, staff: Staff) -> str:
    """Return the id of a note on one of its part's staves."""
    return tab_note_id(played.first, played.index) if staff.kind == "tab" else played.id


def letter_id(note: str) -> str:
    """Return the id of the letter that stands between a note and the next."""
    return f"{note}-letter"


def bend_id(note: str) -> str:
    """Return the id of the text at the head of a bend's arrow."""
    return f"{note}-bend"


def wave_id(note: str) -> str:
    """Return the id of the wavy line over a note."""
    return f"{note}-wave"
