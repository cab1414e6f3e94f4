"""Breaking a title into lines of a size that fits."""

from collections.abc import Sequence

from sitegen.figures.card.faces import text_width

# More letters than the last size has room for, however narrow they are in practice.
_MOST_LETTERS = 400


def set_title(
    text: str, room: float, sizes: Sequence[tuple[int, int]]
) -> tuple[int, tuple[str, ...]]:
    """Return the first size at which a title fits into lines of `room`, and those lines.

    `sizes` are tried in turn, each with the most lines that it may take; what fits at no size is
    cut short and ends in "…".
    """
    text = text[:_MOST_LETTERS]
    for size, most in sizes:
        lines = break_lines(text, room, size)
        if len(lines) <= most and all(text_width(line, size) <= room for line in lines):
            return size, lines
    size, most = sizes[-1]
    lines = break_lines(text, room, size)
    whole, rest = lines[: most - 1], " ".join(lines[most - 1 :])
    kept = (cut_short(line, room, size) for line in (*whole, rest))
    return size, tuple(line for line in kept if line)


def break_lines(text: str, room: float, size: float) -> tuple[str, ...]:
    """Return the words of a text in as few lines as can be, and those as even as can be.

    Only a word that is longer than `room` makes a line longer than that.
    """
    words = text.split()
    fewest = len(_fill(words, room, size))
    narrow, wide = 0.0, room
    while wide - narrow > 1:
        middle = (narrow + wide) / 2
        if len(_fill(words, middle, size)) == fewest:
            wide = middle
        else:
            narrow = middle
    return _fill(words, wide, size)


def cut_short(text: str, room: float, size: float, *, italic: bool = False) -> str:
    """Return a text that fits into `room`: cut where it must be, with "…" at its end."""
    if text_width(text, size, italic=italic) <= room:
        return text
    text = text[:_MOST_LETTERS]
    cuts = (f"{text[:end].rstrip()}…" for end in range(len(text) - 1, 0, -1))
    return next((cut for cut in cuts if text_width(cut, size, italic=italic) <= room), "")


def _fill(words: list[str], room: float, size: float) -> tuple[str, ...]:
    lines: list[str] = []
    for word in words:
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size) <= room:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines)
