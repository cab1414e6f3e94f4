r"""The rows of a fretted part: one row a string, top string first.

A number is a fret, `x` a dead note, `<12>` a harmonic, `(5)` a ghost note, `r` a rest. Between
or after the numbers: `h` hammer-on, `p` pull-off, `/` `\` slides, `b` bend, `~` vibrato.
"""

import re
from fractions import Fraction

from msgspec import Struct
from msgspec.structs import replace

from sitegen.charts.grid.cells import Cell, lose_note, onset_of
from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.rows import Row
from sitegen.charts.grid.timeline import SystemTime
from sitegen.score.instrument import MOST_FRETS, Fretted
from sitegen.score.pitch import PitchName
from sitegen.source import Span

LONGEST_FRET = 2
_TOKEN = re.compile(
    r"(?P<note>\((?:\d{1,2}|x)\)|<\d{1,2}>|x)|(?P<number>[0-9]+)|(?P<technique>[hpb/\\~])"
    r"|(?P<rest>r)"
    r"|(?P<fill>[-\s|]+)|(?P<open>[(<][\dx]*)|(?P<other>[^-\s|0-9xhpb/\\~r]+|.)"
)


class Stopped(Struct, frozen=True):
    """One note of a string row with the signs right before and after it.

    `target` is the fret whose pitch a bend reaches, where one is written.
    """

    cell: Cell
    row: Row
    string: int
    fret: int = 0
    dead: bool = False
    ghost: bool = False
    harmonic: bool = False
    before: tuple[Cell, ...] = ()
    after: tuple[Cell, ...] = ()
    target: int | None = None

    @property
    def span(self) -> Span:
        """Where the note stands in the file."""
        return self.row.span(self.cell.column, self.cell.end)

    @property
    def is_bent(self) -> bool:
        """True when the last sign after the note is a bend."""
        return bool(self.after) and self.after[-1].text == "b"


class StringEvent(Struct, frozen=True):
    """What one string does at an onset: a note, or a rest (None)."""

    onset: Fraction
    note: Stopped | None
    span: Span


class StringReader:
    """Reads one string row from left to right."""

    def __init__(self, row: Row, string: int, time: SystemTime, faults: Faults) -> None:
        self._row, self._string, self._time, self._faults = row, string, time, faults
        self.events: list[StringEvent] = []
        self._waiting: list[Cell] = []
        # A note that had a fault: the signs behind it belong to it and are dropped with it.
        self._lost = False

    def read(self) -> list[StringEvent]:
        """Return the events of the row; what cannot be read is reported and left out."""
        for match in _TOKEN.finditer(self._row.text, self._row.start + 1):
            cell = Cell(match[0], match.start())
            if match.lastgroup == "technique":
                self._add_sign(cell)
            elif match.lastgroup == "note":
                self._add_note(cell)
            elif match.lastgroup == "number":
                self._add_number(cell)
            elif match.lastgroup == "rest":
                self._add_rest(cell)
            elif match.lastgroup == "open":
                self._report_open(cell)
            elif match.lastgroup == "other":
                self._report_sign(cell)
        for sign in self._waiting:
            report_loose(sign, self._row, self._faults)
        return self.events

    def _last(self) -> Stopped | None:
        return self.events[-1].note if self.events and not self._lost else None

    def _replace_last(self, note: Stopped) -> None:
        self.events[-1] = replace(self.events[-1], note=note)

    def _add_sign(self, cell: Cell) -> None:
        last = self._last()
        if last is not None and not _leads_to_next(cell, self._row):
            self._replace_last(replace(last, after=(*last.after, cell)))
        elif not self._lost:
            self._waiting.append(cell)

    def _add_note(self, cell: Cell) -> None:
        last = self._last()
        if last is not None and self._is_target(cell, last):
            self._replace_last(replace(last, target=int(cell.text)))
            return
        inner = cell.text.strip("()<>")
        stopped = Stopped(
            cell,
            self._row,
            self._string,
            fret=0 if inner == "x" else int(inner),
            dead=inner == "x",
            ghost=cell.text.startswith("("),
            harmonic=cell.text.startswith("<"),
            before=tuple(self._waiting),
        )
        self._waiting = []
        self._place(stopped)

    def _add_number(self, cell: Cell) -> None:
        """Read digits that touch: one fret, or one digit a note where counts touch as well."""
        columns = range(cell.column, cell.end)
        counted = [self._time.onset_at(column) is not None for column in columns]
        if len(columns) == 1 or not all(counted):
            self._add_fret(cell)
        elif len(columns) == LONGEST_FRET and cell.text[0] in "12":
            self._report_two_ways(cell)
        else:
            for digit, column in zip(cell.text, columns, strict=True):
                self._add_note(Cell(digit, column))

    def _add_fret(self, cell: Cell) -> None:
        if len(cell.text) <= LONGEST_FRET:
            self._add_note(cell)
            return
        self._lost = True
        lose_note(cell, self._row, self._time, self._faults)
        self._report_fret(self._row.span(cell.column, cell.end), cell.text)

    def _is_target(self, cell: Cell, last: Stopped) -> bool:
        """Tell whether a number right behind a bend sign, under no count, is what it reaches."""
        touching = last.is_bent and last.after[-1].end == cell.column
        return touching and cell.text.isdecimal() and self._time.onset_at(cell.column) is None

    def _place(self, stopped: Stopped) -> None:
        cell = stopped.cell
        if cell.text[0] in "(<" and self._time.onset_at(cell.column) is None:
            # The number itself may stand under the count instead of its bracket.
            inner = Cell(cell.text[1:], cell.column + 1)
            cell = inner if self._time.onset_at(inner.column) is not None else cell
        onset = onset_of(cell, self._row, self._time, self._faults)
        self._lost = onset is None or stopped.fret > MOST_FRETS
        if self._lost:
            lose_note(cell, self._row, self._time, self._faults)
        if onset is None:
            return
        if stopped.fret > MOST_FRETS:
            self._report_fret(stopped.span, str(stopped.fret))
        else:
            self.events.append(StringEvent(onset, stopped, stopped.span))

    def _report_fret(self, span: Span, fret: str) -> None:
        self._faults.add(
            "tab-fret",
            span,
            f"fret {fret} is past the end of any neck",
            hint="leave a - between two numbers that are two notes",
        )

    def _report_two_ways(self, cell: Cell) -> None:
        self._lost = True
        lose_note(cell, self._row, self._time, self._faults)
        self._faults.add(
            "tab-two-ways",
            self._row.span(cell.column, cell.end),
            f'"{cell.text}" may be fret {cell.text}, or frets {cell.text[0]} and {cell.text[1]}',
            hint="spread the count row out, 1 e & a, so that a fret has two columns",
        )

    def _add_rest(self, cell: Cell) -> None:
        onset = onset_of(cell, self._row, self._time, self._faults)
        self._lost = onset is None
        if onset is not None:
            span = self._row.span(cell.column, cell.end)
            self.events.append(StringEvent(onset, None, span))

    def _report_open(self, cell: Cell) -> None:
        self._lost = True
        lose_note(cell, self._row, self._time, self._faults)
        closing = {"(": ")", "<": ">"}[cell.text[0]]
        self._faults.add(
            "tab-sign",
            self._row.span(cell.column, cell.end),
            f'"{cell.text}" is never closed',
            hint=f"a ghost note is written (5), a harmonic <12>: put {closing} behind the number",
        )

    def _report_sign(self, cell: Cell) -> None:
        self._faults.add(
            "tab-sign",
            self._row.span(cell.column, cell.end),
            f'"{cell.text}" means nothing on a string',
            hint="frets are numbers; x <12> (5) r and h p / \\ b ~ are the signs beside them",
        )


def _leads_to_next(cell: Cell, row: Row) -> bool:
    """Tell whether a sign stands right before a note and away from the one before it."""
    following = row.text[cell.end : cell.end + 1]
    return row.text[cell.column - 1] in "- |" and bool(re.fullmatch(r"[\dx(<]", following))


def report_loose(sign: Cell, row: Row, faults: Faults) -> None:
    """Report a sign that belongs to no note of its string."""
    faults.add(
        "tab-join",
        row.span(sign.column, sign.end),
        f'"{sign.text}" belongs to no note of this string',
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
    wrong = [n for n, label in enumerate(labels) if not _is_called(label, letters[n])]
    if wrong:
        _report_label(rows, wrong[0], letters, faults)
    return list(range(1, len(rows) + 1))


def _numbered(rows: list[Row], strings: int, faults: Faults) -> list[int] | None:
    numbers = [int(row.label) for row in rows]
    for index, (row, number) in enumerate(zip(rows, numbers, strict=True)):
        if not 1 <= number <= strings or number in numbers[:index]:
            message = f"string {number} is written twice"
            if not 1 <= number <= strings:
                message = f"there is no string {number} among {strings}"
            faults.add("string-label", row.label_span, message, hint="string 1 is the top row")
            return None
    return numbers


def _letters(fretted: Fretted, string: int) -> tuple[PitchName, ...]:
    """Return what a string is called: by its own note, and by that of the standard tuning."""
    own = fretted.tuning.strings[-string].name
    if len(fretted.standard) != len(fretted.tuning):
        return (own,)
    return tuple(dict.fromkeys((own, fretted.standard.strings[-string].name)))


def _is_called(label: str, names: tuple[PitchName, ...]) -> bool:
    """Tell whether a label names a string; the bare letter and a respelling do as well."""
    text = label.rstrip("0123456789")
    try:
        read = PitchName.read(text[:1].upper() + text[1:])
    except ValueError:
        return False
    bare = read.alteration == 0 and read.letter in {name.letter for name in names}
    return bare or read.pitch_class in {name.pitch_class for name in names}


def _report_label(
    rows: list[Row], first: int, letters: list[tuple[PitchName, ...]], faults: Faults
) -> None:
    row = rows[first]
    expected = " or ".join(str(name) for name in letters[first])
    hint = f"the rows from the top are {' '.join(str(names[0]) for names in letters)}"
    if all(_is_called(row.label, names) for row, names in zip(rows[::-1], letters, strict=True)):
        hint = "write the highest string as the top row"
    message = f'string {first + 1} from the top is {expected}, not "{row.label}"'
    faults.add("string-label", row.label_span, message, hint=hint)
