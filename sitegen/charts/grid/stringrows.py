r"""The rows of a fretted part: one row a string, top string first.

A number is a fret, `x` a dead note, `<12>` a harmonic, `(5)` a ghost note, `r` a rest. Between
or after the numbers: `h` hammer-on, `p` pull-off, `/` `\` slides, `b` bend, `~` vibrato.
"""

import re
from dataclasses import dataclass, replace
from fractions import Fraction

from sitegen.charts.grid.cells import Cell, report_off_count
from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.rows import Row
from sitegen.charts.grid.timeline import SystemTime
from sitegen.score.instrument import MOST_FRETS, Fretted
from sitegen.source import Span

REST = "r"
_TOKEN = re.compile(
    r"(?P<note>\((?:\d{1,2}|x)\)|<\d{1,2}>|\d{1,2}|x)|(?P<technique>[hpb/\\~])|(?P<rest>r)"
    r"|(?P<fill>[-\s|]+)|(?P<other>[^-\s|0-9xhpb/\\~r]+|.)"
)
WHOLE_STEP = 2
MOST_BEND = 5


@dataclass(frozen=True)
class Stopped:
    """One note of a string row; `target` is the fret a bend reaches, where one is written."""

    cell: Cell
    row: Row
    string: int
    fret: int = 0
    dead: bool = False
    ghost: bool = False
    harmonic: bool = False
    before: str = ""
    after: str = ""
    target: int | None = None

    @property
    def span(self) -> Span:
        """Where the note stands in the file."""
        return self.row.span(self.cell.column, self.cell.end)


@dataclass(frozen=True)
class StringEvent:
    """What one string does at an onset: a note, or a rest (None)."""

    onset: Fraction
    note: Stopped | None
    span: Span


def read_string_row(row: Row, string: int, time: SystemTime, faults: Faults) -> list[StringEvent]:
    """Return the events of the row of `string`, counted from 1 at the top."""
    events: list[StringEvent] = []
    last: Stopped | None = None
    before = ""
    for match in _TOKEN.finditer(row.text, row.start + 1):
        cell = Cell(match[0], match.start())
        kind = match.lastgroup
        if kind == "technique":
            if last is None or _touches_next_only(cell, row):
                before += cell.text
            else:
                last = _hang(cell, last, events)
        elif kind == "note":
            if _is_bend_target(cell, last, time):
                last = _set_target(cell, last, events)
                continue
            stopped = _stopped(cell, row, string, before)
            before = ""
            last = _place(stopped, time, events, faults)
        elif kind == "rest":
            _place_rest(cell, row, time, events, faults)
            last = None
        elif kind == "other":
            _report_other(cell, row, faults)
    if before and last is None:
        _report_loose(before, row, faults)
    return events


def _touches_next_only(cell: Cell, row: Row) -> bool:
    """Tell whether a sign stands right before a note and away from the one before it."""
    following = row.text[cell.end : cell.end + 1]
    return row.text[cell.column - 1] in "- |" and bool(re.fullmatch(r"[\dx(<]", following))


def _hang(cell: Cell, last: Stopped, events: list[StringEvent]) -> Stopped:
    hung = replace(last, after=last.after + cell.text)
    events[-1] = replace(events[-1], note=hung)
    return hung


def _is_bend_target(cell: Cell, last: Stopped | None, time: SystemTime) -> bool:
    return (
        last is not None
        and last.after.endswith("b")
        and cell.text.isdecimal()
        and time.onset_at(cell.column) is None
        and last.row.text[cell.column - 1] == "b"
    )


def _set_target(cell: Cell, last: Stopped | None, events: list[StringEvent]) -> Stopped | None:
    if last is None:
        return None
    last = replace(last, target=int(cell.text))
    events[-1] = replace(events[-1], note=last)
    return last


def _stopped(cell: Cell, row: Row, string: int, before: str) -> Stopped:
    inner = cell.text.strip("()<>")
    return Stopped(
        cell,
        row,
        string,
        fret=0 if inner == "x" else int(inner),
        dead=inner == "x",
        ghost=cell.text.startswith("("),
        harmonic=cell.text.startswith("<"),
        before=before,
    )


def _place(
    stopped: Stopped, time: SystemTime, events: list[StringEvent], faults: Faults
) -> Stopped | None:
    onset = time.onset_at(stopped.cell.column)
    if onset is None and stopped.cell.text[0] in "(<":
        # The number itself may stand under the count instead of its bracket.
        onset = time.onset_at(stopped.cell.column + 1)
    if onset is None:
        report_off_count(stopped.cell, stopped.row, time, faults)
        return None
    if stopped.fret > MOST_FRETS:
        faults.add(
            "tab-fret",
            stopped.span,
            f"fret {stopped.fret} is past the end of any neck",
            hint="leave a - between two numbers that are two notes",
        )
        return None
    events.append(StringEvent(onset, stopped, stopped.span))
    return stopped


def _place_rest(
    cell: Cell, row: Row, time: SystemTime, events: list[StringEvent], faults: Faults
) -> None:
    onset = time.onset_at(cell.column)
    if onset is None:
        report_off_count(cell, row, time, faults)
        return
    events.append(StringEvent(onset, None, row.span(cell.column, cell.end)))


def _report_other(cell: Cell, row: Row, faults: Faults) -> None:
    faults.add(
        "tab-sign",
        row.span(cell.column, cell.end),
        f'"{cell.text}" means nothing on a string',
        hint="frets are numbers; x <12> (5) r and h p / \\ b ~ are the signs beside them",
    )


def _report_loose(before: str, row: Row, faults: Faults) -> None:
    at = row.text.find(before[0], row.start + 1)
    faults.add(
        "tab-join",
        row.span(at, at + len(before)),
        f'"{before}" belongs to no note of this string',
        hint="write it after the number it starts from, or before the one it leads to",
    )


def string_order(rows: list[Row], fretted: Fretted, faults: Faults) -> list[int] | None:
    """Return the string each row writes, from 1 at the top, by the rows' labels.

    Rows labelled with letters stand for all strings from the top down; numbered rows may leave
    strings out. Wrong labels are reported; None when the rows cannot be told apart.
    """
    labels = [row.label for row in rows]
    if all(label.isdecimal() for label in labels):
        return _numbered(rows, len(fretted.tuning), faults)
    if len(rows) != len(fretted.tuning):
        faults.add(
            "string-count",
            rows[0].label_span.until(rows[-1].label_span),
            f"{len(rows)} rows are written for {len(fretted.tuning)} strings",
            hint="write a row for each string, or number the rows you need",
        )
        return None
    letters = [_letters(fretted, string) for string in range(1, len(rows) + 1)]
    wrong = [n for n, label in enumerate(labels) if _letter(label) not in letters[n]]
    if wrong:
        _report_label(rows, wrong[0], letters, faults)
    return list(range(1, len(rows) + 1))


def _numbered(rows: list[Row], strings: int, faults: Faults) -> list[int] | None:
    numbers = [int(row.label) for row in rows]
    for row, number in zip(rows, numbers, strict=True):
        if not 1 <= number <= strings or numbers.count(number) > 1:
            message = f"string {number} is written twice"
            if not 1 <= number <= strings:
                message = f"there is no string {number} among {strings}"
            faults.add("string-label", row.label_span, message, hint="string 1 is the top row")
            return None
    return numbers


def _letters(fretted: Fretted, string: int) -> set[str]:
    names = {fretted.tuning.strings[-string].name}
    if len(fretted.standard) == len(fretted.tuning):
        names.add(fretted.standard.strings[-string].name)
    return {_letter(str(name)) for name in names}


def _letter(label: str) -> str:
    return label.rstrip("0123456789")[:1].upper() + label.rstrip("0123456789")[1:].replace(
        "b", "♭"
    ).replace("#", "♯")


def _report_label(rows: list[Row], first: int, letters: list[set[str]], faults: Faults) -> None:
    row = rows[first]
    labels = [_letter(row.label) for row in rows]
    expected = " ".join(sorted(letters[first]))
    hint = f"the rows from the top are {' '.join(min(names) for names in letters)}"
    if all(label in names for label, names in zip(labels[::-1], letters, strict=True)):
        hint = "write the highest string as the top row"
    message = f'string {first + 1} from the top is {expected}, not "{row.label}"'
    faults.add("string-label", row.label_span, message, hint=hint)
