"""Elements as text, held against the standard library's own writer."""

from xml.etree.ElementTree import Element, SubElement, tostring

from hypothesis import given
from hypothesis import strategies as st

from sitegen.engraving.markup import serialise

# What XML 1.0 takes as characters, the signs that have to be escaped more often than others.
_OFTEN = st.sampled_from("&<>\"'\t\n\r é♭𝄪a")
TEXT = st.text(_OFTEN | st.characters(codec="utf-8", min_codepoint=32))


@given(TEXT, TEXT, TEXT, TEXT)
def test_elements_are_written_as_the_standard_library_writes_them(
    content: str, tail: str, first: str, second: str
) -> None:
    root = Element("rend", {"n": first, "label": second})
    root.text = content
    inner = SubElement(root, "symbol", {"glyph.num": second})
    inner.tail = tail
    SubElement(inner, "empty").text = content
    assert serialise(root) == tostring(root, encoding="unicode")
