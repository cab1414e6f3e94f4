"""The front matter's YAML as fields; one broken field does not hide the others."""

import re
from itertools import pairwise

import yaml

from sitegen.article.front_block import FrontBlock
from sitegen.article.yaml_tree import FieldNode, FieldsNode, Node, TreeReader, double_fault
from sitegen.diagnostics import Diagnostic, fault
from sitegen.source import Source, Span

# A line that opens a field of the front matter itself, as far as one can tell in broken text.
_FIELD_LINE = re.compile(r"^(?=[^\s#\-])", re.MULTILINE)


def read_tree(source: Source, block: FrontBlock) -> tuple[FieldsNode, tuple[Diagnostic, ...]]:
    """Return the fields of a front matter and what is wrong in its form."""
    reader = TreeReader(source, block.start)
    try:
        node = reader.read(block.text)
    except yaml.YAMLError:
        return _read_apart(source, block)
    fields = _as_fields(source, node, reader.faults)
    return fields, tuple(reader.faults)


def _read_apart(source: Source, block: FrontBlock) -> tuple[FieldsNode, tuple[Diagnostic, ...]]:
    """Read each field of a text by itself, because the whole is no YAML."""
    fields: dict[str, FieldNode] = {}
    faults: list[Diagnostic] = []
    cuts = {0, len(block.text)} | {match.start() for match in _FIELD_LINE.finditer(block.text)}
    for start, end in pairwise(sorted(cuts)):
        reader = TreeReader(source, block.start + start)
        for new in _read_piece(reader, block.text[start:end]):
            first = fields.setdefault(new.name, new)
            if first is not new:
                faults.append(double_fault(source, first, new))
        faults += reader.faults
    if not faults:  # the fault lies between the pieces, where only the whole shows it
        faults += _whole_fault(source, block)
    return FieldsNode(tuple(fields.values()), _span(source, block)), tuple(faults)


def _read_piece(reader: TreeReader, text: str) -> tuple[FieldNode, ...]:
    """Return the fields of one piece; of a broken one, what its first line says by itself."""
    try:
        node = reader.read(text)
    except yaml.YAMLError as wrong:
        reader.report_syntax(wrong, text)
        first, _, more = text.partition("\n")
        return _read_quietly(reader, first) if more.strip() else ()
    return _as_fields(reader.source, node, reader.faults).fields


def _read_quietly(reader: TreeReader, text: str) -> tuple[FieldNode, ...]:
    try:
        node = TreeReader(reader.source, reader.start).read(text)
    except yaml.YAMLError:
        return ()
    return node.fields if isinstance(node, FieldsNode) else ()


def _whole_fault(source: Source, block: FrontBlock) -> list[Diagnostic]:
    reader = TreeReader(source, block.start)
    try:
        reader.read(block.text)
    except yaml.YAMLError as wrong:
        reader.report_syntax(wrong, block.text)
    return reader.faults


def _as_fields(source: Source, node: Node | None, faults: list[Diagnostic]) -> FieldsNode:
    if isinstance(node, FieldsNode):
        return node
    if node is not None:
        message = "these lines are not fields"
        hint = "write each field as name: value"
        faults.append(fault("front-syntax", source, node.span, message, hint=hint))
    return FieldsNode((), Span(1, 1, 1, 1))


def _span(source: Source, block: FrontBlock) -> Span:
    return source.span(block.start, block.start + len(block.text))
