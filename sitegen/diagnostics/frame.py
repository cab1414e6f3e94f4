"""A diagnostic as text for a terminal: the line it speaks of with a caret under the fault."""

from sitegen.diagnostics.diagnostic import Diagnostic
from sitegen.source import Source, Span


def draw_frame(diagnostic: Diagnostic) -> str:
    """Return the diagnostic's place, message, line, caret and hint; no line feed at the end."""
    place = f"{diagnostic.source.path}:{diagnostic.span.line}:{diagnostic.span.column}"
    width = len(str(max([diagnostic.span.line, *(s.line for s, _ in diagnostic.related)])))
    head = f"{place}: {diagnostic.severity}[{diagnostic.code}]: {diagnostic.message}"
    parts = [head, f"{' ' * width} |", _marked(diagnostic.source, diagnostic.span, width)]
    parts[-1] += f" {diagnostic.label or 'here'}"
    for span, word in diagnostic.related:
        parts.append(f"{_marked(diagnostic.source, span, width)} {word}")
    if diagnostic.hint:
        parts.append(f"{' ' * width} hint: {diagnostic.hint}")
    return "\n".join(parts)


def _marked(source: Source, span: Span, width: int) -> str:
    """Return the line of `span` and, below it, carets under the marked code points."""
    line = source.lines[min(span.line, len(source.lines)) - 1]
    end = span.end_column if span.end_line == span.line else len(line) + 1
    before = line[: span.column - 1]
    # Keep tabs, so that the caret stands under its place however wide a tab is.
    space = "".join("\t" if char == "\t" else " " for char in before)
    carets = "^" * max(1, end - span.column)
    return f"{span.line:>{width}} | {line}\n{' ' * width} | {space}{carets}"
