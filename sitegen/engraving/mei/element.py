"""Elements of an MEI file, made with the standard library's ElementTree.

Names are written without a namespace; the root declares MEI's as the default one.
"""

from xml.etree.ElementTree import Element, SubElement

NAMESPACE = "http://www.music-encoding.org/ns/mei"
VERSION = "5.1"


def child(parent: Element, name: str, /, **attributes: str | int | None) -> Element:
    """Append and return an element; `_` in a name stands for a dot, None leaves one out.

    `id` becomes `xml:id`.
    """
    return SubElement(parent, name, _attributes(attributes))


def put(element: Element, /, **attributes: str | int | None) -> None:
    """Set attributes under the naming of `child`."""
    element.attrib.update(_attributes(attributes))


def text(parent: Element, content: str, /, **attributes: str | int | None) -> Element:
    """Append and return a `rend` element with text, its look given by `attributes`."""
    rend = child(parent, "rend", **attributes)
    rend.text = content
    return rend


def decimal(value: float) -> str:
    """Return a number as MEI takes it, short and without a trailing zero."""
    return f"{value:.5f}".rstrip("0").rstrip(".")


def _attributes(attributes: dict[str, str | int | None]) -> dict[str, str]:
    return {_NAMES[name]: str(value) for name, value in attributes.items() if value is not None}


class _Names(dict[str, str]):
    """The names of attributes by those that `child` knows them under; there are not many."""

    def __missing__(self, name: str) -> str:
        return self.setdefault(name, name.rstrip("_").replace("_", "."))


_NAMES = _Names(id="xml:id")
