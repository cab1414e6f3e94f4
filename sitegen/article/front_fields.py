"""Fields of the front matter being read: each taken once, everything wrong collected."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from typing import TypeVar

from sitegen.article.yaml_tree import FieldNode, FieldsNode, ListNode, Node, TextNode
from sitegen.diagnostics import Diagnostic, did_you_mean, fault
from sitegen.source import Source, Span

Value = TypeVar("Value")
LONGEST_TEXT = 2000


@dataclass
class Fields:
    """Some fields that belong together; `name` says of what, "" for the front matter itself.

    Takers return what a field says. What cannot be used is a fault, and the taker then returns
    the same as for a field that is not there.
    """

    source: Source
    node: FieldsNode
    faults: list[Diagnostic]
    name: str = ""
    _taken: set[str] = field(default_factory=set)

    def text(self, name: str) -> str:
        """Return a text, line breaks turned into spaces; "" without one."""
        return self.take(name, read_text, "")

    def take(self, name: str, read: Callable[[str], Value], default: Value) -> Value:
        """Return the value that `read` makes of a text; it raises ValueError with a sentence."""
        found = self.find(name)
        return default if found is None else self._read(found.value, name, read, default)

    def texts(self, name: str, read: Callable[[str], str] | None = None) -> tuple[str, ...]:
        """Return the texts of a list; a single text is a list of one."""
        found = self.find(name)
        if found is None:
            return ()
        nodes = found.value.items if isinstance(found.value, ListNode) else (found.value,)
        each = (self._read(node, name, read or read_text, "") for node in nodes)
        return tuple(text for text in each if text)

    def group(self, name: str) -> "Fields":
        """Return the fields inside field `name`."""
        found = self.find(name)
        if found is None:
            return self._empty(name)
        return self._inner(found.value, name)

    def rows(self, name: str) -> Iterator["Fields | TextNode"]:
        """Return the items of a list of fields; an item may also be one text."""
        found = self.find(name)
        if found is None:
            return
        if not isinstance(found.value, ListNode):
            what = _kind(found.value)
            self.report(found.value.span, f'"{name}" takes a list, not {what}',
                        hint="start each item with a hyphen on a line of its own")  # fmt: skip
            return
        for item in found.value.items:
            yield item if isinstance(item, TextNode) else self._inner(item, name)

    def find(self, name: str) -> FieldNode | None:
        """Return field `name` and count it as taken; None where nothing is typed."""
        self._taken.add(name)
        found = next((entry for entry in self.node.fields if entry.name == name), None)
        if found is None or (isinstance(found.value, TextNode) and found.value.absent):
            return None
        return found

    def has(self, name: str) -> bool:
        """Return whether field `name` is written, with or without a value."""
        return any(entry.name == name for entry in self.node.fields)

    def reported(self, name: str) -> bool:
        """Return whether the value of field `name` has a fault."""
        return any(wrong.span == self.span_of(name) for wrong in self.faults)

    def span_of(self, name: str) -> Span:
        """Return where the value of field `name` stands, or these fields where it is not there."""
        found = next((entry for entry in self.node.fields if entry.name == name), None)
        return self.node.span if found is None else found.value.span

    def finish(self) -> None:
        """Report every field that nobody took."""
        whose = f' of "{self.name}"' if self.name else " of the front matter"
        for entry in self.node.fields:
            if entry.name not in self._taken:
                self.report(
                    entry.name_span,
                    f'no field{whose} is called "{entry.name}"',
                    code="front-field",
                    hint=did_you_mean(entry.name, self._taken),
                )

    def report(
        self, span: Span, message: str, *, code: str = "front-value", hint: str = ""
    ) -> None:
        """Add a fault."""
        self.faults.append(fault(code, self.source, span, message, hint=hint))

    def _read(self, node: Node, name: str, read: Callable[[str], Value], default: Value) -> Value:
        if not isinstance(node, TextNode):
            self.report(node.span, f'"{name}" takes one text, not {_kind(node)}')
            return default
        text = " ".join(node.text.split())
        if not text:
            return default
        try:
            return read(text)
        except ValueError as wrong:
            message, _, hint = str(wrong).partition("; ")
            self.report(node.span, f"{name}: {message}", hint=hint)
            return default

    def _inner(self, node: Node, name: str) -> "Fields":
        if isinstance(node, FieldsNode):
            return Fields(self.source, node, self.faults, name)
        self.report(node.span, f'"{name}" takes fields of its own, not {_kind(node)}',
                    hint="write them as name: value, indented below it")  # fmt: skip
        return self._empty(name)

    def _empty(self, name: str) -> "Fields":
        return Fields(self.source, FieldsNode((), self.node.span), self.faults, name)


def read_text(text: str) -> str:
    """Return a text; raises ValueError when it is overlong."""
    if len(text) > LONGEST_TEXT:
        raise ValueError(f"more than {LONGEST_TEXT} characters")
    return text


def _kind(node: Node) -> str:
    if isinstance(node, ListNode):
        return "a list"
    return "fields" if isinstance(node, FieldsNode) else "one text"
