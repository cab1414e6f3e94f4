"""Notes in the place where they are read: right after the block of text that leads to them."""

from collections.abc import Iterator, Sequence

from markdown_it.token import Token

_OPEN, _CLOSE = "footnote_block_open", "footnote_block_close"


def with_notes_in_place(tokens: Sequence[Token]) -> list[Token]:
    """Return the tokens of a body with each note behind the outermost block that names it first.

    The library puts all notes at the end. All notes of one block stand together, those that
    another note leads to among them.
    """
    start = next((place for place, token in enumerate(tokens) if token.type == _OPEN), None)
    if start is None:
        return list(tokens)
    notes = _notes(tokens[start + 1 : -1])
    placed: list[Token] = []
    asked: list[int] = []
    for token in tokens[:start]:
        placed.append(token)
        asked += _asked(token)
        if token.level == 0 and token.nesting <= 0:
            placed += _block(asked, notes)
            asked = []
    return placed


def _notes(tokens: Sequence[Token]) -> dict[int, list[Token]]:
    """Return the tokens of each note by its number from 0."""
    notes: dict[int, list[Token]] = {}
    for token in tokens:
        if token.type == "footnote_open":
            notes[int(token.meta["id"])] = current = []
        current.append(token)
    return notes


def _block(asked: list[int], notes: dict[int, list[Token]]) -> Iterator[Token]:
    """Yield the notes that are asked for and not yet placed, in a block of their own."""
    waiting = list(asked)
    inner: list[Token] = []
    while waiting:
        for token in notes.pop(waiting.pop(0), ()):
            inner.append(token)
            waiting += _asked(token)
    if inner:
        yield from (Token(_OPEN, "", 1), *inner, Token(_CLOSE, "", -1))


def _asked(token: Token) -> list[int]:
    """Return the numbers of the notes that a block's text leads to."""
    children = token.children or ()
    return [int(child.meta["id"]) for child in children if child.type == "footnote_ref"]
