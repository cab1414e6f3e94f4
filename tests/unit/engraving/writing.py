"""Writing one bar from a line of lengths, and reading back what was written."""

from fractions import Fraction
from xml.etree import ElementTree as ET

from sitegen.engraving.hierarchy import metrical_cells
from sitegen.engraving.rhythm import Stretch, Written, write_bar
from sitegen.score.meter import Meter


def written(meter: str, lengths: str, skipped: str = "0") -> tuple[Written, ...]:
    """Write a bar of notes (and rests, with a leading `r`) of the given lengths in quarters."""
    at = Fraction(skipped)
    stretches = []
    for number, item in enumerate(lengths.split()):
        length = Fraction(item.removeprefix("r"))
        stretches.append(Stretch(at, at + length, number, is_rest=item.startswith("r")))
        at += length
    return write_bar(metrical_cells(Meter.read(meter)), tuple(stretches))


def shorthand(pieces: tuple[Written, ...]) -> str:
    """Return pieces as `4. 8~ r2 8[3:2]`: value, dot, tie, tuplet."""
    return " ".join(
        f"{'r' if piece.is_rest else ''}{piece.value.dur}{'.' * piece.value.dots}"
        f"{'~' if piece.tied else ''}"
        + (f"[{piece.tuplet.count}:{piece.tuplet.time_of}]" if piece.tuplet else "")
        for piece in pieces
    )


def parsed(xml: str) -> ET.Element:
    """Return the root of a file that sitegen has written."""
    return ET.fromstring(xml)  # noqa: S314 - our own output
