"""Chord symbols in a chart: read, or reported at the very letters that are wrong."""

from sitegen.charts.grid.faults import Faults
from sitegen.harmony import ChordSymbolError, read_chord
from sitegen.score.chord import Chord, NoChord
from sitegen.source import Line


def read_symbol(text: str, line: Line, column: int, faults: Faults) -> Chord | NoChord | None:
    """Return the chord written as `text` at index `column` of `line`; None when it has a fault."""
    try:
        return read_chord(text)
    except ChordSymbolError as wrong:
        span = line.span(column + wrong.start, column + max(wrong.end, wrong.start + 1))
        faults.add(wrong.code, span, wrong.message, hint=wrong.hint)
        return None
