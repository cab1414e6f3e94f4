"""Where the front matter of a file stands: between a first line `---` and the next one."""

from dataclasses import dataclass

from sitegen.diagnostics import Diagnostic, fault
from sitegen.source import Source, Span

_MARK = "---"


@dataclass(frozen=True)
class FrontBlock:
    """The front matter's text, the place of its first code point, and the body's first line.

    `body_line` counts from 0. `text` is "" where there is none.
    """

    text: str
    start: int
    body_line: int
    diagnostics: tuple[Diagnostic, ...] = ()


def find_front(source: Source) -> FrontBlock:
    """Return where the front matter of `source` stands.

    One that is not closed is a fault and is taken to end at its first empty line.
    """
    lines = source.lines
    if lines[0].rstrip() != _MARK:
        return FrontBlock("", 0, 0, (_missing(source),))
    marks = (n for n, line in enumerate(lines[1:], start=1) if line.rstrip() == _MARK)
    close = next(marks, None)
    if close is not None:
        return _block(lines, close, close + 1)
    blanks = (n for n, line in enumerate(lines[1:], start=1) if not line.strip())
    end = next(blanks, len(lines))
    message = "the front matter opens here and never closes"
    hint = "write a line --- below its last field"
    wrong = fault("front-open", source, source.line_span(1), message, hint=hint)
    return _block(lines, end, end, (wrong,))


def _block(
    lines: tuple[str, ...], end: int, body_line: int, faults: tuple[Diagnostic, ...] = ()
) -> FrontBlock:
    return FrontBlock("\n".join(lines[1:end]), len(lines[0]) + 1, body_line, faults)


def _missing(source: Source) -> Diagnostic:
    return fault(
        "front-missing",
        source,
        Span(1, 1, 1, max(len(source.lines[0]), 1) + 1),
        "the file does not start with front matter",
        hint="begin with a line ---, a line title: with the title, and a line ---",
    )
