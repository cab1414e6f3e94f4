"""The brackets of labels as spans of their own, so that a page can leave them out of sight."""

from xml.etree.ElementTree import Element

BRACKET = "bracket"
"""The class of an opening or closing bracket around the label of a non-chord tone."""


def mark_brackets(music: Element) -> None:
    """Put each bracket around the label of a non-chord tone into a span of class `bracket`."""
    for label in music.iter("g"):
        if {"harm", "non-chord"} <= set(label.get("class", "").split()):
            for text in label.iter("text"):
                _mark_opening(_ends(text)[0])
                _mark_closing(_ends(text)[1])


def _ends(text: Element) -> tuple[Element, Element]:
    """Return what holds the first and the last letters of a text: its spans or itself."""
    runs = [child for child in text if child.get("class") != BRACKET]
    return (runs[0], runs[-1]) if runs else (text, text)


def _mark_opening(run: Element) -> None:
    if run.text and run.text.startswith("("):
        bracket = _bracket("(")
        bracket.tail, run.text = run.text[1:], None
        run.insert(0, bracket)


def _mark_closing(run: Element) -> None:
    before = run[-1].tail if len(run) else run.text
    if before and before.endswith(")"):
        if len(run):
            run[-1].tail = before[:-1]
        else:
            run.text = before[:-1]
        run.append(_bracket(")"))


def _bracket(sign: str) -> Element:
    bracket = Element("tspan", {"class": BRACKET})
    bracket.text = sign
    return bracket
