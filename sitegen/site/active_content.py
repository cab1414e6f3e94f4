"""What in a picture or a score, written as XML, would run or load something.

An SVG picture on the page is shown and no more, but it is published as a file: opened by
itself it is a document of the site, and its scripts may do there whatever the site's own may.
Elements and attributes: SVG 2, chapters 15 (scripting) and 16 (linking); HTML Standard, 8.1.8
(event handlers).
"""

import re
from collections.abc import Iterator
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from lxml import etree

_SVG = "http://www.w3.org/2000/svg"
_DRAWN = frozenset({_SVG, "http://www.w3.org/1999/xhtml", "http://www.w3.org/1998/Math/MathML"})
_RUNNING = frozenset(
    "script handler listener foreignobject iframe frame embed object applet audio video canvas "
    "link base meta portal form".split()
)
_ANIMATIONS = frozenset({"animate", "set", "animatemotion", "animatetransform"})
_ENCODING = re.compile(rb"""\s*<\?xml\s[^>]*?encoding\s*=\s*["']([A-Za-z0-9._-]+)["']""")
_DECLARED = re.compile("<!(ENTITY|ATTLIST)")
_PLAIN_ENCODINGS = frozenset({b"utf-8", b"us-ascii"})
_PICTURE_DATA = re.compile(r"data:image/(png|jpeg|gif|webp|avif);base64,", re.IGNORECASE)
_LOADING_STYLE = re.compile(
    r"@import|(?:url|image|src)\s*\(\s*[\"']?\s*(?!#|\s|[\"'])", re.IGNORECASE
)
_ESCAPED_STYLE = re.compile(r"\\[0-9A-Fa-f]")


def find_active(data: bytes, *, is_picture: bool) -> str:
    """Return what is not harmless in an XML file, in words; "" where all of it is.

    `is_picture` is for SVG; in any other file nothing may be drawn by a browser.
    """
    from lxml import etree  # noqa: PLC0415 - only write-ups with such files need it

    wrong = _form_fault(data)
    if wrong:
        return wrong
    parser = etree.XMLParser(
        resolve_entities=False, no_network=True, load_dtd=False, huge_tree=False
    )
    try:
        root = etree.fromstring(data, parser)
    except etree.XMLSyntaxError as error:
        return f"it cannot be read, line {error.lineno}"
    if is_picture and root.tag not in {f"{{{_SVG}}}svg", "svg"}:
        return "it is no SVG picture"
    found = _active_parts(root, is_picture=is_picture)
    return next((f"{what}, line {line}" for line, what in found if what), "")


def _form_fault(data: bytes) -> str:
    """Return what is wrong before anything is parsed: nothing may hide what is looked for."""
    declared = _ENCODING.match(data.removeprefix(b"\xef\xbb\xbf"))
    try:
        text = data.decode()
    except UnicodeDecodeError:
        return "it is not UTF-8"
    if "\0" in text or (declared and declared[1].lower() not in _PLAIN_ENCODINGS):
        return "it is not UTF-8"
    return "it declares entities or attributes" if _DECLARED.search(text) else ""


def _active_parts(root: "etree._Element", *, is_picture: bool) -> Iterator[tuple[int, str]]:
    for node in (*root.itersiblings(preceding=True), *root.iter()):
        line = node.sourceline or 1
        if not isinstance(node.tag, str):
            target = getattr(node, "target", "")
            yield line, "it names a style sheet" if target == "xml-stylesheet" else ""
            continue
        space, _, name = node.tag.rpartition("}")
        yield line, _element_fault(space.lstrip("{"), name.lower(), is_picture=is_picture)
        if is_picture and name.lower() == "style":
            yield line, _style_fault("".join(str(text) for text in node.itertext()))
        for attribute, value in node.attrib.items() if is_picture else ():
            yield line, _attribute_fault(name.lower(), str(attribute), str(value))


def _element_fault(space: str, name: str, *, is_picture: bool) -> str:
    is_drawn = space in _DRAWN and not (is_picture and space == _SVG)
    if is_drawn or (is_picture and name in _RUNNING):
        return f"it holds <{name}>"
    return ""


def _attribute_fault(element: str, attribute: str, value: str) -> str:
    name = attribute.rpartition("}")[2].lower()
    value = re.sub(r"[\x00-\x20]+", "", value)
    if name.startswith("on") and name.isalpha():
        return f'it holds the attribute "{name}"'
    if name == "attributename" and element in _ANIMATIONS:
        changed = value.rpartition(":")[2].lower()
        is_active = changed == "href" or changed.startswith("on")
        return f'it changes "{changed}"' if is_active else ""
    if name in {"href", "src"}:
        return "" if _is_harmless_address(element, value) else f'it leads to "{value[:60]}"'
    # What another program keeps for itself is nothing to a browser.
    return "" if attribute.startswith("{") else _style_fault(value)


def _is_harmless_address(element: str, address: str) -> bool:
    """Return whether an address is a place in the picture, a picture in it, or of a page."""
    if not address or address.startswith("#") or _PICTURE_DATA.match(address):
        return True
    return element == "a" and bool(re.match(r"https?://", address, re.IGNORECASE))


def _style_fault(style: str) -> str:
    loads = _LOADING_STYLE.search(style) or _ESCAPED_STYLE.search(style)
    return "its style loads something" if loads else ""
