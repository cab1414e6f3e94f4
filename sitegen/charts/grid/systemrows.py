"""The rows that speak of the whole system: chords, section names and remarks."""

from collections.abc import Iterable, Sequence
from fractions import Fraction

from msgspec.structs import replace

from sitegen.charts.chords import read_symbol
from sitegen.charts.grid.cells import onset_of, phrases, words
from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.rows import Row
from sitegen.charts.grid.timeline import SystemTime
from sitegen.score.chart import ChordEvent, Remark

Timed = Iterable[tuple[Sequence[Row], SystemTime]]


def read_chords(rows: Timed, faults: Faults) -> tuple[ChordEvent, ...]:
    """Return the chords of all systems; each sounds until the next or the end of its system.

    A chord sounds on into a system that follows at once and whose chord row begins later.
    """
    events: list[ChordEvent] = []
    for system_rows, time in rows:
        for row in system_rows:
            made = _read_chord_row(row, time, faults)
            if made and events and events[-1].onset + events[-1].duration == time.start:
                last = events.pop()
                events.append(replace(last, duration=made[0].onset - last.onset))
            events.extend(made)
    return tuple(events)


def _read_chord_row(row: Row, time: SystemTime, faults: Faults) -> list[ChordEvent]:
    struck: list[ChordEvent] = []
    for cell in words(row):
        if cell.is_fill:
            continue
        onset = onset_of(cell, row, time, faults)
        chord = read_symbol(cell.text, row.line, cell.column, faults)
        if onset is not None and chord is not None:
            span = row.span(cell.column, cell.end)
            struck.append(ChordEvent(onset, Fraction(0), chord, span))
    ends = [*(event.onset for event in struck), time.end][1:]
    return [
        replace(event, duration=end - event.onset) for event, end in zip(struck, ends, strict=True)
    ]


def read_remarks(rows: Timed, faults: Faults) -> tuple[Remark, ...]:
    """Return the texts of `section` or `say` rows, each at its onset."""
    remarks = []
    for system_rows, time in rows:
        for row in system_rows:
            for cell in phrases(row):
                onset = onset_of(cell, row, time, faults)
                if onset is not None:
                    remarks.append(Remark(onset, cell.text, row.span(cell.column, cell.end)))
    return tuple(remarks)
