"""The head of a chart block: its leading `name: value` lines."""

import re
from collections.abc import Callable, Collection
from dataclasses import dataclass, field
from typing import TypeVar

from sitegen.diagnostics import Diagnostic, did_you_mean, fault
from sitegen.source import Line, Passage, Span

Value = TypeVar("Value")
ID = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
LONGEST_VALUE = 500
_FIELD = re.compile(r"\s*([^:|]*?)\s*:(?:\s+|$)(.*?)\s*$")


@dataclass(frozen=True)
class HeadField:
    """One line of the head; the spans are those of its name and of its value."""

    name: str
    value: str
    name_span: Span
    value_span: Span


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

    def take(self, name: str, read: Callable[[str], Value], default: Value) -> Value:
        """Return the value of field `name` as `read` makes it, `default` when it is not there.

        `read` raises ValueError with a sentence for the author.
        """
        found = self.find(name)
        if found is None:
            return default
        try:
            return read(found.value)
        except ValueError as wrong:
            self.report("head-value", found.value_span, f"{name}: {wrong}")
            return default

    def find(self, name: str) -> HeadField | None:
        """Return the field with this name and count it as taken; a second one is a fault."""
        self._taken.add(name)
        found = [entry for entry in self.fields if entry.name == name]
        for double in found[1:]:
            self.report(
                "head-double", double.name_span, f'the head says "{name}" twice', related=found[0]
            )
        if found and not found[0].value:
            self.report("head-value", found[0].name_span, f'"{name}" has no value')
            return None
        return found[0] if found else None

    def names(self) -> tuple[str, ...]:
        """Return the names in the head, in order, as written."""
        return tuple(dict.fromkeys(entry.name for entry in self.fields))

    def finish(self, known: Collection[str]) -> None:
        """Report every field that was not taken as unknown; `known` are offered instead."""
        for entry in self.fields:
            if entry.name not in self._taken:
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
        fields.append(HeadField(match[1], match[2], name_span, value_span))
    return Head(passage, tuple(fields), ())


def read_id(text: str) -> str:
    """Return a chart's id; raises ValueError when it cannot be one."""
    if not ID.fullmatch(text):
        raise ValueError(f'"{text}" is not an id: small letters, digits and single hyphens')
    return text


def read_text(text: str) -> str:
    """Return a title or another short text; raises ValueError when it is overlong."""
    if len(text) > LONGEST_VALUE:
        raise ValueError(f"more than {LONGEST_VALUE} characters")
    return text
