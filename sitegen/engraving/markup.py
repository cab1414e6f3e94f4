"""Elements as text: names and values as XML writes them.

The standard library's writer looks for namespaces in every element first; nothing here has any.
"""

import re
from collections.abc import Iterable
from xml.etree.ElementTree import Element

_UNSAFE, _UNSAFE_VALUE = re.compile("[&<>]"), re.compile('[&<>"\r\n\t]')
_TEXT = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;"})
_VALUE = str.maketrans(
    {"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;"}
    | {"\r": "&#13;", "\n": "&#10;", "\t": "&#09;"}
)


def escaped(content: str) -> str:
    """Return what stands between tags."""
    return content.translate(_TEXT) if _UNSAFE.search(content) else content


def quoted(value: str) -> str:
    """Return what stands between the quotation marks of an attribute."""
    return value.translate(_VALUE) if _UNSAFE_VALUE.search(value) else value


def attributes(pairs: Iterable[tuple[str, str]]) -> str:
    """Return the attributes of an opening tag, a space before each."""
    return "".join(
        [f' {name}="{value if value.isalnum() else quoted(value)}"' for name, value in pairs]
    )


def markup(name: str, pairs: Iterable[tuple[str, str]], inside: str) -> str:
    """Return an element with what stands inside it, as markup; an empty one is closed at once."""
    opening = f"<{name}{attributes(pairs)}"
    return f"{opening}>{inside}</{name}>" if inside else f"{opening} />"


def serialise(root: Element) -> str:
    """Return an element with everything in it as text."""
    written: list[str] = []
    _write(root, written)
    return "".join(written)


def _write(element: Element, written: list[str]) -> None:
    tag, content, own = element.tag, element.text, element.items()
    opening = f"<{tag}{attributes(own)}" if own else f"<{tag}"
    if content or len(element):
        written.append(f"{opening}>{escaped(content)}" if content else f"{opening}>")
        for inner in element:
            _write(inner, written)
        written.append(f"</{tag}>")
    else:
        written.append(f"{opening} />")
    if element.tail:
        written.append(escaped(element.tail))
