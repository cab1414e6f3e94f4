"""What a group holds, written: neighbouring strokes of one look as one path."""

import re
from xml.etree.ElementTree import Element

_STROKE = re.compile(r"M(-?\d+) (-?\d+) L(-?\d+) (-?\d+)")
_APART = frozenset({"id", "d"})
USUAL_STROKE = "18"
"""The width of most strokes, in the sheet's units: set once, on the drawing."""


class Content:
    """The markup of what follows one another in a group; false while there is nothing."""

    def __init__(self) -> None:
        self._written: list[str] = []
        # Straight strokes that are still open to more of their look.
        self._look = ""
        self._strokes: list[str] = []

    def __bool__(self) -> bool:
        return bool(self._written or self._strokes)

    def __str__(self) -> str:
        self._close()
        return "".join(self._written)

    def add(self, markup: str) -> None:
        """Put finished markup behind what is there."""
        self._close()
        self._written.append(markup)

    def add_path(self, path: Element) -> None:
        """Put a path there: a straight stroke is joined to those of its look before it."""
        line, look = path.get("d", ""), look_of(path)
        if "C" in line:
            self.add(f'<path d="{line}"{look} />')
            return
        if look != self._look:
            self._close()
            self._look = look
        self._strokes.append(_short(line))

    def _close(self) -> None:
        if self._strokes:
            self._written.append(f'<path d="{"".join(self._strokes)}"{self._look} />')
            self._strokes.clear()


def look_of(element: Element) -> str:
    """Return the attributes of a shape but for its id, its line and the usual width.

    They are numbers and words of the standard, which need no escape.
    """
    return "".join(
        [
            f' {name}="{value}"'
            for name, value in element.items()
            if name not in _APART and not (name == "stroke-width" and value == USUAL_STROKE)
        ]
    )


def _short(line: str) -> str:
    match = _STROKE.fullmatch(line)
    if match is None:
        return line
    x1, y1, x2, y2 = match.groups()
    end = f"H{x2}" if y1 == y2 else f"V{y2}" if x1 == x2 else f"L{x2} {y2}"
    return f"M{x1} {y1}{end}"
