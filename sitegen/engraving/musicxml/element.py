"""Elements of a MusicXML file, made with the standard library's ElementTree.

The order of children is the schema's, so that every function writes in that order.
"""

from fractions import Fraction
from xml.etree.ElementTree import Element, SubElement

from sitegen.engraving import markup

_HEAD = (
    '<?xml version="1.0" encoding="UTF-8"?>\n'
    '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" '
    '"http://www.musicxml.org/dtds/partwise.dtd">\n'
)


def child(
    parent: Element, name: str, content: str | int | None = None, /, **attributes: str | int | None
) -> Element:
    """Append and return an element; `_` in a name stands for a hyphen, None leaves one out."""
    own = {
        key.replace("_", "-"): str(each) for key, each in attributes.items() if each is not None
    }
    element = SubElement(parent, name, own) if own else SubElement(parent, name)
    if content is not None:
        element.text = str(content)
    return element


def ticks(length: Fraction, divisions: int) -> int:
    """Return a length of quarter notes in the file's divisions of a quarter."""
    return length.numerator * divisions // length.denominator


def decimal(value: Fraction) -> str:
    """Return a number as MusicXML takes it, short and without a trailing zero."""
    return f"{float(value):.5f}".rstrip("0").rstrip(".")


def serialise(root: Element) -> str:
    """Return the file's text."""
    return f"{_HEAD}{markup.serialise(root)}\n"
