"""Chord symbols in a chart: read, or reported at the very letters that are wrong."""

from sitegen.charts.grid.faults import Faults
from sitegen.harmony import ChordSymbolError, find_two_readings, read_chord
from sitegen.score.chord import Chord, NoChord
from sitegen.source import Line, Span


def read_symbol(text: str, line: Line, column: int, faults: Faults) -> Chord | NoChord | None:
    """Return the chord written as `text` at index `column` of `line`; None when it has a fault."""
    try:
        chord = read_chord(text)
    except ChordSymbolError as wrong:
        span = line.span(column + wrong.start, column + max(wrong.end, wrong.start + 1))
        faults.add(wrong.code, span, wrong.message, hint=wrong.hint)
        return None
    _note_two_readings(text, line.span(column, column + len(text)), faults)
    return chord


def _note_two_readings(text: str, span: Span, faults: Faults) -> None:
    """Note, once a block, that other writers mean another chord by the symbol."""
    two = find_two_readings(text)
    if two is None:
        return
    message, hint = two.say(text)
    if all(found.message != message for found in faults.found):
        faults.add("chord-read-as", span, message, hint=hint)
