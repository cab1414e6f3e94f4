"""A diagnostic as text for a terminal: the line it speaks of with a caret under the fault."""

from sitegen.diagnostics.diagnostic import Diagnostic
from sitegen.diagnostics.printable import printable
from sitegen.source import Source, Span

LONGEST_LINE = 200


def draw_frame(diagnostic: Diagnostic) -> str:
    """Return the diagnostic's place, message, line, caret and hint; no line feed at the end.

    What a terminal would obey and not show has U+FFFD in its place.
    """
    place = f"{_one_line(diagnostic.source.path)}:{diagnostic.span.line}:{diagnostic.span.column}"
    width = len(str(max([diagnostic.span.line, *(s.line for s, _ in diagnostic.related)])))
    head = f"{place}: {diagnostic.severity}[{diagnostic.code}]: {_one_line(diagnostic.message)}"
    parts = [head, f"{' ' * width} |", _marked(diagnostic.source, diagnostic.span, width)]
    parts[-1] += f" {_one_line(diagnostic.label) or 'here'}"
    for span, word in diagnostic.related:
        parts.append(f"{_marked(diagnostic.source, span, width)} {_one_line(word)}")
    if diagnostic.hint:
        parts.append(f"{' ' * width} hint: {_one_line(diagnostic.hint)}")
    return "\n".join(parts)


def _one_line(text: str) -> str:
    return printable(text).replace("\n", " ")


def _marked(source: Source, span: Span, width: int) -> str:
    """Return the line of `span` and, below it, carets under the marked code points."""
    line = source.lines[min(span.line, len(source.lines)) - 1]
    start = span.column - 1
    end = span.end_column - 1 if span.end_line == span.line else len(line)
    line, start, end = _shortened(line, start, end)
    # Keep tabs, so that the caret stands under its place however wide a tab is.
    space = "".join("\t" if char == "\t" else " " for char in line[:start])
    carets = "^" * max(1, end - start)
    return f"{span.line:>{width}} | {printable(line)}\n{' ' * width} | {space}{carets}"


def _shortened(line: str, start: int, end: int) -> tuple[str, int, int]:
    """Cut a long line to what stands around `start`, each cut marked by an ellipsis."""
    if len(line) <= LONGEST_LINE:
        return line, start, end
    first = max(0, min(start - LONGEST_LINE // 2, len(line) - LONGEST_LINE))
    last = first + LONGEST_LINE
    before, after = "…" if first else "", "…" if last < len(line) else ""
    moved = len(before) - first
    return f"{before}{line[first:last]}{after}", start + moved, min(end, last) + moved
