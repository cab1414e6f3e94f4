"""Chord symbols, degrees and Roman numerals as they are lettered.

What a note is to its chord shows in the lettering first: a chord tone upright, a tension in
italics, a non-chord tone in parentheses. Colour may be added by a page's style.
"""

import re
from xml.etree.ElementTree import Element

from sitegen.engraving.mei.element import child, text
from sitegen.score.chord import Chord, NoChord
from sitegen.score.role import Role

# The sign for minor stays on the line beside the root; the rest of a quality is raised.
_QUALITY = re.compile(r"(m(?!aj))?(.*)", re.DOTALL)
# A numeral: any accidental and the letters on the line, figures raised, an applied chord's goal.
_NUMERAL = re.compile(r"((?:sub)?[♭♯]*[IViv]+|It|Fr|Ger)([^/]*)(.*)", re.DOTALL)

# Verovio sets what is raised at 58 per cent of the line; this brings it to 70.
_RAISED = "120%"


def write_chord_symbol(home: Element, chord: Chord | NoChord) -> None:
    """Write a chord symbol: root and minor sign on the line, the rest raised."""
    if isinstance(chord, NoChord):
        home.text = str(chord)
        return
    match = _QUALITY.fullmatch(chord.quality)
    minor, raised = (match[1] or "", match[2]) if match else ("", chord.quality)
    bass = f"/{chord.bass}" if chord.bass != chord.root else ""
    _write_raised(home, f"{chord.root}{minor}", raised, bass)


def write_numeral(home: Element, roman: str) -> None:
    """Write a Roman numeral with its figures raised: `V` and a small `7`, then `/ii`."""
    match = _NUMERAL.fullmatch(roman)
    if match is None:
        home.text = roman
        return
    _write_raised(home, match[1], match[2], match[3])


def write_degree(home: Element, degree: str, role: Role | None) -> None:
    """Write a degree in the lettering of its role."""
    if role is Role.TENSION:
        text(home, degree, fontstyle="italic")
    elif role is Role.NON_CHORD_TONE:
        home.text = f"({degree})"
    else:
        home.text = degree


def _write_raised(home: Element, base: str, raised: str, after: str) -> None:
    home.text = base
    if raised:
        sup = child(home, "rend", rend="sup", fontsize=_RAISED)
        sup.text, sup.tail = raised, after
    else:
        home.text += after
