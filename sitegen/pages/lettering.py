"""How single words are set on a page: dates, chord qualities, drawings' sizes."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from sitegen.score.chord import Chord

_MONTHS = (
    "January February March April May June July August September October November December"
).split()
# What stays on the line behind the root; the rest of a quality is raised. Common practice in
# lead sheets, no source.
_ON_THE_LINE = re.compile(r"m(?!aj)")
_HEAD = "(?:It|Fr|Ger|(?:sub)?[♭♯]*[IViv]+)"
_NUMERAL = re.compile(_HEAD)
_FIGURES = r"(?:[°ø+]|[♭♯]?\d|add|maj|sus)*"
_NUMERAL_IN_TEXT = re.compile(rf"(?<![\w♭♯])({_HEAD}{_FIGURES}(?:/{_HEAD}{_FIGURES})*)(?![\w♭♯])")
_NOTHING = "(?!)"
_NO_BREAK = "\N{NO-BREAK SPACE}"
_BEFORE_PER_CENT = re.compile(r"(?<=\d) (?=%)")
_VIEW_BOX = re.compile(
    r"""viewBox\s*=\s*["']\s*[-\d.]+[\s,]+[-\d.]+[\s,]+([\d.]+)[\s,]+([\d.]+)"""
)
_OWN_WIDTH = re.compile(r"<svg[^>]*max-width:\s*([\d.]+)rem")
_REM = 16
_ID = re.compile(r"""(?<![\w-])id=(["'])(.+?)\1""")


def spoken_date(day: date) -> str:
    """Return a date as it stands in running text: 4 May 2026, its day kept beside its month."""
    return f"{day.day}\N{NO-BREAK SPACE}{_MONTHS[day.month - 1]} {day.year}"


def symbol_levels(quality: str) -> tuple[str, str]:
    """Return the part of a chord's quality that stands on the line and the part that is raised."""
    match = _ON_THE_LINE.match(quality)
    cut = match.end() if match else 0
    return quality[:cut], quality[cut:]


@dataclass(frozen=True)
class TextPart:
    """A stretch of text: on the line, raised, or the symbol of a `chord`."""

    text: str
    raised: bool = False
    chord: Chord | None = None


def numeral_parts(roman: str) -> tuple[TextPart, ...]:
    """Return a Roman numeral in stretches: figures and signs behind a numeral are raised."""
    stretches = (
        stretch for part in re.split("(/)", roman) for stretch in _numeral_stretches(part)
    )
    return tuple(stretch for stretch in stretches if stretch.text)


def sentence_parts(sentence: str, chords: Sequence[Chord] = ()) -> tuple[TextPart, ...]:
    """Return a sentence in stretches, with its apostrophes as they are printed.

    The symbols of `chords` stand by themselves, figures behind Roman numerals are raised.
    """
    symbols = {str(chord): chord for chord in chords}
    longest_first = sorted(map(re.escape, symbols), key=len, reverse=True)
    known = "|".join(longest_first) or _NOTHING
    stretches = re.split(rf"(?<![\w♭♯/])({known})(?![\w♭♯/])", printed(sentence))
    parts = (
        part
        for place, stretch in enumerate(stretches)
        for part in (
            (TextPart(stretch, chord=symbols[stretch]),) if place % 2 else _in_text(stretch)
        )
    )
    return tuple(part for part in parts if part.text)


def printed(sentence: str) -> str:
    """Return a sentence with the apostrophes of print, no per cent sign parted from its number."""
    return _BEFORE_PER_CENT.sub(_NO_BREAK, sentence.replace("'", "’"))


def _in_text(text: str) -> Iterator[TextPart]:
    for place, stretch in enumerate(_NUMERAL_IN_TEXT.split(text)):
        yield from numeral_parts(stretch) if place % 2 else (TextPart(stretch),)


def _numeral_stretches(text: str) -> tuple[TextPart, TextPart]:
    match = _NUMERAL.match(text)
    cut = match.end() if match else len(text)
    return TextPart(text[:cut]), TextPart(text[cut:], raised=True)


def natural_size(svg: str, scale: float = 4 / 3) -> str:
    """Return as CSS how wide a drawing usually is, in rem, and how high for its width.

    So a browser knows the room of a drawing that it has not laid out. A width that the drawing
    sets itself counts; else `scale` is CSS pixels for a unit of the outermost view box, on a page
    of the usual size. "" when there is no view box.
    """
    box = _VIEW_BOX.search(svg)
    width, height = (float(box[1]), float(box[2])) if box else (0.0, 0.0)
    if not width:
        return ""
    own = _OWN_WIDTH.match(svg)
    natural = float(own[1]) if own else width * scale / _REM
    return f"--natural-width: {natural:.7g}rem; --rise: {height / width:.7g}"


def with_ids_under(svg: str, prefix: str) -> str:
    """Return `svg` with `prefix` before each of its own ids and before what refers to them.

    So the same drawing can stand twice on a page.
    """
    ids = {match[2] for match in _ID.finditer(svg)}
    if not ids:
        return svg
    known = "|".join(re.escape(name) for name in sorted(ids, key=len, reverse=True))
    svg = re.sub(rf"""((?<![\w-])id=["'])(?={known})""", rf"\g<1>{prefix}", svg)
    svg = re.sub(rf"""(href=["']#|url\(#)({known})(?=["')])""", rf"\g<1>{prefix}\g<2>", svg)
    return re.sub(
        r"""(aria-(?:labelledby|describedby)=["'])([^"']+)""",
        lambda match: match[1] + " ".join(_renamed(match[2].split(), ids, prefix)),
        svg,
    )


def _renamed(names: list[str], own: set[str], prefix: str) -> list[str]:
    return [prefix + name if name in own else name for name in names]
