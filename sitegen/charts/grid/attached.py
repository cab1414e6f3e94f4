"""The rows that speak of the part above them: words, degrees and marks."""

import re
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from sitegen.charts.grid.cells import Cell, onset_of, own_bar_lines, words
from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.rows import Row
from sitegen.charts.grid.timeline import SystemTime
from sitegen.score.chart import Bar, Event, HeardDegree, StretchMark, Syllable
from sitegen.score.pitch import signs

SIGNS = {
    ">": "accent",
    ".": "staccato",
    "_": "tenuto",
    "^": "marcato",
    "fermata": "fermata",
}
_STRETCHES = {
    "P.M.": "palm mute",
    "let ring": "let ring",
    "<": "crescendo",
    ">": "diminuendo",
}
_MARK = re.compile(r"(?P<stretch>P\.M\.|let ring|[<>](?=-))(?P<dashes>[\s]?-*)|[^\s|]+")
_DEGREE = re.compile(r"(?:R|[b#♭♯]{0,2}(?:1[0-5]|[1-9]))(?:,(?:R|[b#♭♯]{0,2}(?:1[0-5]|[1-9])))*")


def deal_words(
    row: Row,
    verse: int,
    time: SystemTime,
    bars: Sequence[Bar],
    events: list[Event],
    faults: Faults,
) -> None:
    """Give the syllables of a words row to the notes of `events`, in order within each bar.

    `events` are changed in place; `bars` are those of the system. Syllables without a note are
    reported.
    """
    stretches = _bar_stretches(row, time, bars)
    for bar, (left, right) in zip(bars, stretches, strict=True):
        syllables = [cell for cell in words(row) if left < cell.column < right]
        ends = (
            bisect_left(events, at, key=lambda event: event.onset) for at in (bar.start, bar.end)
        )
        notes = [n for n in range(*ends) if events[n].notes]
        for cell, index in zip(syllables, notes, strict=False):
            syllable = _syllable(cell, verse, row)
            events[index] = replace(events[index], syllables=(*events[index].syllables, syllable))
        if len(syllables) > len(notes) + _lost_notes(time, bar, faults):
            _report_surplus(syllables, len(notes), bar, row, faults)


def _bar_stretches(row: Row, time: SystemTime, bars: Sequence[Bar]) -> list[tuple[int, int]]:
    """Return the columns between which each bar's syllables stand.

    A row with all bar lines of its own has its bars between them, wherever they stand.
    """
    own = own_bar_lines(row, len(bars))
    if own is not None:
        return list(pairwise(own))
    lines = sorted(time.bar_lines)
    return [
        (
            next(c for c in lines if time.bar_lines[c] == bar.start),
            next((c for c in lines if time.bar_lines[c] >= bar.end), len(row.text)),
        )
        for bar in bars
    ]


def _lost_notes(time: SystemTime, bar: Bar, faults: Faults) -> int:
    """Return how many notes of a bar were reported: their syllables are not too many."""
    columns = [count.column for count in time.columns if bar.start <= count.onset < bar.end]
    rows = {line.line.number for line in time.rows.lines if isinstance(line, Row)}
    right = min((c for c in time.bar_lines if c > columns[-1]), default=columns[-1] + 1)
    return sum(line in rows and columns[0] <= column < right for line, column in faults.lost_cells)


def _syllable(cell: Cell, verse: int, row: Row) -> Syllable:
    span = row.span(cell.column, cell.end)
    if cell.text == "_":
        return Syllable("", verse, span, held=True)
    joined = cell.text.endswith("-") and len(cell.text) > 1
    return Syllable(cell.text.removesuffix("-") if joined else cell.text, verse, span, joined)


def _report_surplus(syllables: list[Cell], notes: int, bar: Bar, row: Row, faults: Faults) -> None:
    first = syllables[notes]
    counted = "1 note" if notes == 1 else f"{notes} notes"
    faults.add(
        "words-many",
        row.span(first.column, syllables[-1].end),
        f"bar {bar.number} has {len(syllables)} syllables for {counted}",
        label="no note for this",
        hint="a syllable belongs to the bar it stands in; hold one over a note with _",
    )


def read_degrees(
    row: Row, part: str, time: SystemTime, events: Sequence[Event], faults: Faults
) -> list[HeardDegree]:
    """Return the degrees that the author heard, each at a note of the part."""
    onsets = {event.onset for event in events if event.notes} | faults.lost
    heard = []
    for cell in words(row):
        if cell.is_fill:
            continue
        text = cell.text.removesuffix("!")
        span = row.span(cell.column, cell.end)
        if not _DEGREE.fullmatch(text):
            hint = "degrees are R b3 3 4 5 b7 7 9 #11 13, stacked ones joined by commas"
            faults.add("degree-text", span, f'"{text}" is not a degree', hint=hint)
            continue
        onset = onset_of(cell, row, time, faults)
        if onset is None:
            continue
        if onset not in onsets:
            message = f'"{text}" stands where {part} starts no note'
            hint = "write a degree in the column of the note it names"
            faults.add("degree-nowhere", span, message, hint=hint)
            continue
        heard.append(HeardDegree(onset, signs(text), cell.text.endswith("!"), part, span))
    return heard


def read_marks(
    row: Row, time: SystemTime, events: list[Event], faults: Faults
) -> list[StretchMark]:
    """Return the stretches of a mark row; signs are added to `events` in place."""
    stretches = []
    for match in _MARK.finditer(row.text, row.start + 1):
        cell = Cell(match[0].rstrip(), match.start())
        if match["stretch"]:
            stretch = _stretch(cell, match["stretch"], row, time, faults)
            if stretch is not None:
                stretches.append(stretch)
        elif not cell.is_fill:
            _add_sign(cell, row, time, events, faults)
    return stretches


def _stretch(
    cell: Cell, word: str, row: Row, time: SystemTime, faults: Faults
) -> StretchMark | None:
    onset = onset_of(cell, row, time, faults)
    if onset is None:
        return None
    end = time.end_after(max(cell.end - 1, cell.column))
    return StretchMark(_STRETCHES[word], onset, end, row.span(cell.column, cell.end))  # type: ignore[arg-type]


def _add_sign(cell: Cell, row: Row, time: SystemTime, events: list[Event], faults: Faults) -> None:
    span = row.span(cell.column, cell.end)
    if cell.text not in SIGNS:
        hint = f"marks are {' '.join(SIGNS)}, P.M.---, let ring---, <--- and >---"
        faults.add("mark-sign", span, f'no mark is written "{cell.text}"', hint=hint)
        return
    onset = onset_of(cell, row, time, faults)
    if onset is None:
        return
    index = bisect_left(events, onset, key=lambda event: event.onset)
    if index < len(events) and events[index].onset == onset and events[index].notes:
        marked = (*events[index].marks, SIGNS[cell.text])
        events[index] = replace(events[index], marks=marked)
        return
    if onset in faults.lost:
        return
    faults.add(
        "mark-nowhere",
        span,
        f'"{cell.text}" stands where no note starts',
        hint="write a mark in the column of the note it belongs to",
    )
