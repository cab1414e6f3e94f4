"""Ties: said on their notes (`@tie`), and from note to note where that is not clear.

`@tie` goes by the staff place alone, which fails where two notes of a chord share a line: A♭
beside A.
"""

from itertools import pairwise
from xml.etree.ElementTree import Element

from sitegen.engraving.copyist import WrittenEvent
from sitegen.engraving.mei.element import child
from sitegen.engraving.mei.plan import ScorePlan
from sitegen.score.chart import Event


def comes_tied(written: WrittenEvent) -> bool:
    """Return whether a tie leads to this note from the one before."""
    return not written.piece.is_rest and not written.piece.opens


def tie_state(written: WrittenEvent) -> str | None:
    """Return the value of `@tie`: initial, medial, terminal; None where nothing is tied."""
    states = {(False, True): "i", (True, True): "m", (True, False): "t"}
    return states.get((comes_tied(written), written.piece.tied))


def shares_place(event: Event) -> bool:
    """Return whether two different pitches of an event stand on one line or space."""
    pitches = {note.pitch for note in event.notes if note.pitch is not None}
    return len({pitch.place for pitch in pitches}) < len(pitches)


def write_ties(measure: Element, plan: ScorePlan, index: int) -> None:
    """Write the ties that start in bar `index` (from 0) from note to note."""
    for part in plan.chart.parts:
        if plan.staff_of(part, "staff") is None:
            continue
        for voice in plan.voices[part.name]:
            for written in voice.bars[index].events:
                if written.piece.tied and shares_place(written.event):
                    _write_tie(measure, written, voice.written(written.number))


def _write_tie(measure: Element, written: WrittenEvent, pieces: tuple[WrittenEvent, ...]) -> None:
    after = next(second for first, second in pairwise(pieces) if first is written)
    pairs = {
        (written.note_ids[index], after.note_ids[index])
        for index, note in enumerate(written.event.notes)
        if note.pitch is not None
    }
    for start, end in sorted(pairs):
        child(measure, "tie", startid=f"#{start}", endid=f"#{end}")
