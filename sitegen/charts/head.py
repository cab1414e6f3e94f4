"""The head of a chart block: its leading `name: value` lines."""

import re
from collections.abc import Callable, Collection
from dataclasses import dataclass, field
from typing import TypeVar

from sitegen.diagnostics import Diagnostic, did_you_mean, fault
from sitegen.source import Line, Passage, Span

Value = TypeVar("Value")
ID = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
LONGEST_ID = 60
LONGEST_VALUE = 500
# What to write, by field.
_HINTS = {
    "id": "such as opening, chorus-2",
    "key": "a tonic and a mode: Eb minor, G, D dorian",
    "meter": "such as 4/4, 6/8, 7/8 (2+2+3)",
    "tempo": "such as 96, dotted quarter = 58",
    "at": "minutes and seconds in the recording: 1:23",
    "bars": "the number of the first bar: 17",
    "roman": "write on or off",
}
_FIELD = re.compile(r"\s*([^:|]*?)\s*:(?:\s+|$)(.*?)\s*$")


class UnfitValueError(ValueError):
    """A head value that cannot be read: `word` is the faulty word in it, `hint` what to do."""

    def __init__(self, message: str, *, word: str = "", hint: str = "") -> None:
        super().__init__(message)
        self.word = word
        self.hint = hint


@dataclass(frozen=True)
class HeadField:
    """One line of the head; the spans are those of its name and of its value."""

    name: str
    value: str
    name_span: Span
    value_span: Span
    line: Line
    value_start: int

    def span_of(self, word: str) -> Span:
        """Return where `word` stands in the value; the whole value when it does not."""
        found = re.search(rf"(?<![^\s,(]){re.escape(word)}(?![^\s,)])", self.value)
        if not word or found is None:
            return self.value_span
        start, end = found.span()
        return self.line.span(self.value_start + start, self.value_start + end)


@dataclass
class Head:
    """The head of one block while it is read.

    `fields` are the lines as written, `body` the lines after the head. `take` reads a field and
    collects what is wrong with it in `faults`; `finish` adds the fields that nobody took.
    """

    passage: Passage
    fields: tuple[HeadField, ...]
    body: tuple[Line, ...]
    faults: list[Diagnostic] = field(default_factory=list)
    _taken: set[str] = field(default_factory=set)
    _failed: set[str] = field(default_factory=set)

    def take(self, name: str, read: Callable[[str], Value], default: Value) -> Value:
        """Return the value of field `name` as `read` makes it, `default` when it is not there.

        `read` raises ValueError with a sentence for the author.
        """
        found = self.find(name)
        if found is None:
            return default
        try:
            return read(found.value)
        except UnfitValueError as wrong:
            span = found.span_of(wrong.word)
            self.report("head-value", span, f"{name}: {wrong}", hint=wrong.hint)
        except ValueError as wrong:
            hint = _HINTS.get(name, "")
            self.report("head-value", found.value_span, f"{name}: {wrong}", hint=hint)
        self._failed.add(name)
        return default

    def has_fault_in(self, name: str) -> bool:
        """Tell whether field `name` was taken and could not be read."""
        return name in self._failed

    def find(self, name: str) -> HeadField | None:
        """Return the field with this name and count it as taken; a second one is a fault."""
        name = name.lower()
        found = [entry for entry in self.fields if entry.name.lower() == name]
        if name in self._taken:
            return found[0] if found and found[0].value else None
        self._taken.add(name)
        for double in found[1:]:
            self.report(
                "head-double", double.name_span, f'the head says "{name}" twice', related=found[0]
            )
        if found and not found[0].value:
            hint = _HINTS.get(name, "write a value after the colon, or leave the line out")
            self.report("head-value", found[0].name_span, f'"{name}" has no value', hint=hint)
            return None
        return found[0] if found else None

    def names(self) -> tuple[str, ...]:
        """Return the names in the head, in order, as written."""
        return tuple(dict.fromkeys(entry.name for entry in self.fields))

    def finish(self, known: Collection[str]) -> None:
        """Report every field that was not taken as unknown; `known` are offered instead."""
        for entry in self.fields:
            if entry.name.lower() not in self._taken:
                message = f'no head line is called "{entry.name}"'
                hint = did_you_mean(entry.name, known)
                self.report("head-field", entry.name_span, message, hint=hint)

    def report(
        self,
        code: str,
        span: Span,
        message: str,
        *,
        hint: str = "",
        related: HeadField | None = None,
    ) -> None:
        """Add a fault of the head."""
        others = ((related.name_span, "first here"),) if related else ()
        self.faults.append(
            fault(code, self.passage.source, span, message, hint=hint, related=others)
        )


def split_head(passage: Passage) -> Head:
    """Return the head of a block; it ends at the first line that is not `name: value`."""
    fields: list[HeadField] = []
    for index, line in enumerate(passage.lines):
        if not line.text.strip():
            continue
        match = _FIELD.match(line.text)
        if match is None:
            return Head(passage, tuple(fields), passage.lines[index:])
        start, end = match.span(1)
        name_span = line.span(start, max(end, start + 1))
        value_span = line.span(*match.span(2))
        place = (name_span, value_span, line, match.start(2))
        fields.append(HeadField(match[1], match[2], *place))
    return Head(passage, tuple(fields), ())


def read_id(text: str) -> str:
    """Return a chart's id; raises ValueError when it cannot be one."""
    if not ID.fullmatch(text):
        raise ValueError(f'"{text}" is not an id: small letters, digits and single hyphens')
    if len(text) > LONGEST_ID:  # files to take away are called by it
        raise ValueError(f"an id has up to {LONGEST_ID} characters")
    return text


def read_text(text: str) -> str:
    """Return a title or another short text; raises ValueError when it is overlong."""
    if len(text) > LONGEST_VALUE:
        raise ValueError(f"more than {LONGEST_VALUE} characters")
    return text
