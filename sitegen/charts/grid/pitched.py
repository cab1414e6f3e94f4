"""Rows of pitches: `F5 Ab5 Gb5,Bb5 r`."""

import re

from sitegen.charts.grid.cells import Cell, lose_note, onset_of, words
from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.hold import Struck
from sitegen.charts.grid.players import Fingering
from sitegen.charts.grid.rows import Row
from sitegen.charts.grid.timeline import SystemTime
from sitegen.score.chart import Note
from sitegen.score.pitch import Pitch

LOWEST, HIGHEST = 12, 120
MOST_NOTES = 10
_REST = "r"
_FILL = re.compile(r"[-.]+")


class PitchedReader:
    """Reads the pitched rows of one part, system by system: the last octave named stands.

    `fingered` gives a sounding pitch the name that is read or fingered, None where no instrument
    makes a difference.
    """

    def __init__(self, fingered: Fingering | None, faults: Faults) -> None:
        self._fingered = fingered
        self._faults = faults
        self._octave: int | None = None

    def read(self, row: Row, time: SystemTime) -> list[Struck]:
        """Return what the row strikes; cells that cannot be read are reported and left out."""
        struck = []
        for cell in words(row):
            if _FILL.fullmatch(cell.text):
                continue
            notes = () if cell.text == _REST else self._notes(cell, row)
            onset = onset_of(cell, row, time, self._faults)
            if onset is None or notes is None:
                lose_note(cell, row, time, self._faults)
            else:
                struck.append(Struck(onset, notes, row.span(cell.column, cell.end)))
        return struck

    def _notes(self, cell: Cell, row: Row) -> tuple[Note, ...] | None:
        notes: list[Note] = []
        column = cell.column
        for text in cell.text.split(","):
            note = self._note(Cell(text, column), row)
            column += len(text) + 1
            if note is not None:
                notes.append(note)
        if len(notes) > MOST_NOTES:
            span = row.span(cell.column, cell.end)
            self._faults.add("pitch", span, f"more than {MOST_NOTES} notes are stacked")
            return None
        notes.sort(key=lambda note: note.pitch.midi if note.pitch else 0)
        return tuple(notes) or None

    def _note(self, cell: Cell, row: Row) -> Note | None:
        span = row.span(cell.column, max(cell.end, cell.column + 1))
        ghost = cell.text.startswith("(") and cell.text.endswith(")")
        text = cell.text[1:-1] if ghost else cell.text
        try:
            pitch = Pitch.read(text, self._octave)
        except ValueError as wrong:
            self._faults.add("pitch", span, str(wrong), hint=_hint(text))
            return None
        if not LOWEST <= pitch.midi <= HIGHEST:
            self._faults.add("pitch", span, f"{pitch} is out of reach of any instrument")
            return None
        self._octave = pitch.octave
        fingered = self._fingered(pitch) if self._fingered else None
        return Note(span, pitch, fingered, ghost=ghost)


def _hint(text: str) -> str:
    if re.fullmatch(r"[A-G][b#♭♯]*", text):
        return f'name the octave once: "{text}4" is in the octave of middle C'
    if re.match(r"[a-g](?![a-z])", text):
        return "write the letters of pitches as capitals"
    if text in ("R", "rest", "-", ""):
        return 'a rest is written "r"'
    return "write pitches as F5, Bb4, C#3, notes together as Eb4,Bb4, a rest as r"
