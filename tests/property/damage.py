"""Articles damaged in the ways that editors, disks, pastes and people damage them.

`damage` depends on nothing but its arguments: the same seed gives the same articles.
"""

from collections.abc import Callable, Sequence
from pathlib import Path
from random import Random

from sitegen.diagnostics import CATALOGUE
from sitegen.kinds import KINDS

CONTENT = Path(__file__).parents[2] / "content"
FRONT = "---\ntitle: An example\nsummary: Made for a test.\nstatus: draft\n---\n\n"
MOST_WOUNDS = 4
_LONGEST = 60_000
_OFTEN = 15  # as often as the many short examples of the catalogue, all in all

ODD = (
    "\0", "\x1b[2J", "\r", "\ufeff", "\u202e", "\u2066", "\u0301" * 40, "\u00ad", "\u2028", "\x85",
    "\U0001f3b8", "\u05d0\u05d1", "\uac01", "\ud800", "\t", "\\", "`", "```", "~~~", "{", "}", "|",
    "---", ">", "- ", "[", "](", "<b>", "<!--", "&#0;", "%00", "../", "#" * 9, "*" * 50, "(" * 50,
    "0", "-1", "1e9", "9" * 400, "1/0", "0/4", "1/1000", "²", "٣", "𝟜", "∞", "NaN", "99:99",
    "♭" * 30, "#b#b", "C/C/C", "!!x", "&a", "*a", "'", '"', '"\\ud800"', ": ", "  ", "",
)  # fmt: skip
"""What is put in, or in the place of something: signs that mean something somewhere."""

Wound = Callable[[Random, bytes, Sequence[bytes]], bytes]


def originals() -> tuple[bytes, ...]:
    """Return sound and faulty articles: the demo's, each kind's example, the catalogue's."""
    demo = [path.read_bytes() for path in sorted(CONTENT.rglob("*.md"))]
    kinds = [f"{FRONT}```{kind.name}\n{kind.example}\n```\n".encode() for kind in KINDS]
    texts = [
        text
        for code in CATALOGUE.values()
        if code.file.endswith(".md")
        for text in (code.bad, code.good)
    ]
    whole = (text if text.startswith("---") else FRONT + text for text in texts)
    catalogue = [text.encode("utf-8", "surrogateescape") for text in whole]
    many = (demo + kinds) * _OFTEN
    return tuple(text for text in (*many, *catalogue) if len(text) <= _LONGEST)


def damage(rng: Random, articles: Sequence[bytes]) -> bytes:
    """Return one of the articles with one wound, half of the time, or a few."""
    text = rng.choice(articles)
    for _ in range(rng.choice([1, 1, 2, MOST_WOUNDS])):
        text = rng.choice(WOUNDS)(rng, text, articles)
    return text[:_LONGEST]


def _byte(rng: Random, text: bytes, _: Sequence[bytes]) -> bytes:
    """Change, drop or add one byte, or turn over one bit."""
    if not text:
        return bytes([rng.randrange(256)])
    at = rng.randrange(len(text))
    new = rng.choice([b"", bytes([rng.randrange(256)]), bytes([text[at] ^ 1 << rng.randrange(8)])])
    return text[:at] + new + text[at + rng.randrange(2) :]


def _piece(rng: Random, pieces: list[bytes], others: list[bytes]) -> bytes:
    """Drop, repeat, exchange, replace or spoil some of the pieces that make up a text."""
    if not pieces:
        return b""
    first, second = sorted(rng.choices(range(len(pieces)), k=2))
    match rng.randrange(6):
        case 0:
            del pieces[first : min(second + 1, first + 4)]
        case 1:
            pieces[first:first] = [pieces[second]] * rng.choice([1, 2, 30])
        case 2:
            pieces[first], pieces[second] = pieces[second], pieces[first]
        case 3:
            pieces[first] = rng.choice(others or pieces)
        case 4:
            pieces[first] = _odd(rng)
        case _:
            pieces.insert(first, _odd(rng))
    return b"".join(pieces)


def _tokens(rng: Random, text: bytes, articles: Sequence[bytes]) -> bytes:
    """Wound one line in its words and signs."""
    lines = text.splitlines(keepends=True)
    if not lines:
        return _odd(rng)
    at = rng.randrange(len(lines))
    others = rng.choice(articles).split()
    lines[at] = _piece(rng, _words(lines[at]), others)
    return b"".join(lines)


def _words(line: bytes) -> list[bytes]:
    """Return words, blanks and single signs, of which the line is made."""
    words: list[bytes] = []
    for number in line:
        one = bytes([number])
        if words and one.isalnum() and words[-1].isalnum():
            words[-1] += one
        else:
            words.append(one)
    return words


def _lines(rng: Random, text: bytes, articles: Sequence[bytes]) -> bytes:
    others = rng.choice(articles).splitlines(keepends=True)
    return _piece(rng, text.splitlines(keepends=True), others)


def _blocks(rng: Random, text: bytes, articles: Sequence[bytes]) -> bytes:
    blocks = [block + b"\n\n" for block in text.split(b"\n\n")]
    others = [block + b"\n\n" for block in rng.choice(articles).split(b"\n\n")]
    return _piece(rng, blocks, others)


def _truncate(rng: Random, text: bytes, _: Sequence[bytes]) -> bytes:
    cut = rng.randint(0, len(text))
    return text[:cut] if rng.randrange(4) else text[cut:]


def _splice(rng: Random, text: bytes, articles: Sequence[bytes]) -> bytes:
    """Put the start of one article before the end of another."""
    other = rng.choice(articles)
    return text[: rng.randint(0, len(text))] + other[rng.randint(0, len(other)) :]


def _indent(rng: Random, text: bytes, _: Sequence[bytes]) -> bytes:
    """Put a run of lines into a list or a quote, or indent it."""
    lines = text.splitlines(keepends=True)
    first, second = sorted(rng.choices(range(len(lines) + 1), k=2))
    mark = rng.choice([b" ", b"  ", b"    ", b"\t", b"> ", b"- ", b"1. ", b">" * 40 + b" "])
    lines[first:second] = [mark + line for line in lines[first:second]]
    return b"".join(lines)


def _odd(rng: Random) -> bytes:
    return rng.choice(ODD).encode("utf-8", "surrogatepass") * rng.choice([1, 1, 1, 2, 50])


WOUNDS: tuple[Wound, ...] = (_byte, _tokens, _tokens, _lines, _blocks, _truncate, _splice, _indent)
