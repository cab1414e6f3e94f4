"""YAML as a tree of texts, lists and fields that know their places, and nothing else.

Every scalar stays the text that was typed: YAML's own guesses (3:42 as a number to the base
60, `no` as false, dates) are not what an author means. Anchors, aliases and tags are faults,
so that no tree is larger than its text.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import accumulate

import yaml
from msgspec import Struct

from sitegen.article.decoding import without_unprintable
from sitegen.article.yaml_words import BracketsError, explain_syntax, place_of
from sitegen.diagnostics import Diagnostic, fault
from sitegen.source import Source, Span

DEEPEST = 6
_MOST_BRACKETS = 100
_LINE_ENDS = str.maketrans("\x85\u2028\u2029", "   ")  # line ends to YAML, none to anybody else
_Compiled = getattr(yaml, "CBaseLoader", yaml.BaseLoader)  # missing where it was not built
_PLAIN_TAGS = frozenset(f"tag:yaml.org,2002:{kind}" for kind in ("str", "seq", "map"))


class TextNode(Struct, frozen=True):
    """A text as it was typed, quotes and folding undone; `absent` where nothing was typed."""

    text: str
    span: Span
    absent: bool = False


class ListNode(Struct, frozen=True):
    """A list."""

    items: tuple["Node", ...]
    span: Span


class FieldNode(Struct, frozen=True):
    """One field: its name, where the name stands, and its value."""

    name: str
    name_span: Span
    value: "Node"


class FieldsNode(Struct, frozen=True):
    """Fields in the order in which they were typed; each name once."""

    fields: tuple[FieldNode, ...]
    span: Span


Node = TextNode | ListNode | FieldsNode


@dataclass
class TreeReader:
    """Reads one stretch of YAML in a file; `start` is its first code point's place there."""

    source: Source
    start: int
    faults: list[Diagnostic] = field(default_factory=list)

    def read(self, text: str) -> Node | None:
        """Return the tree of `text`, None where it is empty.

        Raises yaml.YAMLError for text that is no YAML.
        """
        if _bracket_depth(text) > _MOST_BRACKETS:  # the library takes minutes over some thousand
            raise BracketsError
        events = _events(text.translate(_LINE_ENDS))
        next(events)  # the start of the stream
        if isinstance(next(events), yaml.StreamEndEvent):
            return None
        node = self._node(next(events), events, 0)
        next(events)  # the end of the document
        more = next(events)
        if not isinstance(more, yaml.StreamEndEvent):
            self._report("front-syntax", more, "a second set of fields starts here")
        return node

    def report_syntax(self, wrong: yaml.YAMLError, text: str) -> None:
        """Add the fault for text that is no YAML."""
        told = explain_syntax(wrong, text)
        span = self.source.span(self.start + told.start, self.start + told.end)
        self.faults.append(fault("front-syntax", self.source, span, told.message, hint=told.hint))

    def _node(self, event: yaml.Event, events: Iterator[yaml.Event], depth: int) -> Node:
        self._check(event)
        if isinstance(event, yaml.MappingStartEvent | yaml.SequenceStartEvent):
            if depth >= DEEPEST:
                return self._too_deep(event, events)
            if isinstance(event, yaml.MappingStartEvent):
                return self._fields(event, events, depth + 1)
            return self._list(event, events, depth + 1)
        if isinstance(event, yaml.ScalarEvent):
            absent = not event.style and event.value in ("", "~", "null")
            return TextNode(self._text(event), self._span(event), absent)
        return TextNode("", self._span(event), absent=True)

    def _text(self, event: yaml.ScalarEvent) -> str:
        """Return a text without what cannot be printed, which quotes let one write as a number."""
        text = without_unprintable(event.value)
        if text != event.value:
            message = "a number in quotes stands for a character that cannot be printed"
            self._report("text-control", event, message, "delete the backslash and its number")
        return text

    def _list(self, opening: yaml.Event, events: Iterator[yaml.Event], depth: int) -> ListNode:
        items: list[Node] = []
        event = opening
        for event in events:
            if isinstance(event, yaml.SequenceEndEvent):
                break
            items.append(self._node(event, events, depth))
        return ListNode(tuple(items), self._span(opening))

    def _fields(self, opening: yaml.Event, events: Iterator[yaml.Event], depth: int) -> FieldsNode:
        fields: dict[str, FieldNode] = {}
        for event in events:
            if isinstance(event, yaml.MappingEndEvent):
                break
            name = self._node(event, events, depth)
            value = self._node(next(events), events, depth)
            if not isinstance(name, TextNode):
                self._report("front-syntax", event, "a field's name is one word, not a list")
                continue
            self._add(fields, FieldNode(name.text, name.span, value))
        return FieldsNode(tuple(fields.values()), self._span(opening))

    def _add(self, fields: dict[str, FieldNode], new: FieldNode) -> None:
        first = fields.setdefault(new.name, new)
        if first is not new:
            self.faults.append(double_fault(self.source, first, new))

    def _check(self, event: yaml.Event) -> None:
        if isinstance(event, yaml.AliasEvent) or getattr(event, "anchor", None):
            hint = 'put a text that starts with & or * in quotes: "*"'
            self._report("front-syntax", event, "marks with & and * mean nothing here", hint)
        tag = getattr(event, "tag", None)
        if tag is not None and tag not in _PLAIN_TAGS:
            hint = 'put a text that starts with ! in quotes: "!"'
            self._report("front-syntax", event, "a mark with ! means nothing here", hint)

    def _too_deep(self, opening: yaml.Event, events: Iterator[yaml.Event]) -> TextNode:
        """Skip a list or fields that lie deeper than any field of ours."""
        self._report("front-syntax", opening, f"more than {DEEPEST} levels inside one another")
        level = 1
        for event in events:
            if isinstance(event, yaml.MappingStartEvent | yaml.SequenceStartEvent):
                level += 1
            elif isinstance(event, yaml.MappingEndEvent | yaml.SequenceEndEvent):
                level -= 1
            if level == 0:
                break
        return TextNode("", self._span(opening), absent=True)

    def _span(self, event: yaml.Event) -> Span:
        """Return the place of a text, or the first line of a list or of fields."""
        start = self.start + place_of(event.start_mark)
        end = self.start + place_of(event.end_mark)
        if isinstance(event, yaml.CollectionStartEvent):
            end = self.source.text.find("\n", start)
        written = self.source.text[start:end].rstrip()
        return self.source.span(start, start + len(written))

    def _report(self, code: str, event: yaml.Event, message: str, hint: str = "") -> None:
        self.faults.append(fault(code, self.source, self._span(event), message, hint=hint))


def _events(text: str) -> Iterator[yaml.Event]:
    """Return what the library finds: by its compiled parser, which is several times as fast.

    What that one does not take is read again by the other, whose words for it are explained. The
    two differ on tabs.
    """
    if "\t" in text:
        return iter(yaml.parse(text, Loader=yaml.BaseLoader))
    try:
        return iter(list(yaml.parse(text, Loader=_Compiled)))
    except yaml.YAMLError:
        return iter(yaml.parse(text, Loader=yaml.BaseLoader))


def _bracket_depth(text: str) -> int:
    steps = ((char in "[{") - (char in "]}") for char in text if char in "[]{}")
    return max(accumulate(steps), default=0)


def double_fault(source: Source, first: FieldNode, second: FieldNode) -> Diagnostic:
    """Return the fault for a field that is written a second time."""
    return fault(
        "front-double",
        source,
        second.name_span,
        f'the field "{second.name}" is written twice',
        hint="keep one of the two",
        related=((first.name_span, "first here"),),
    )
