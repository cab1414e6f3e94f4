"""Text without the nest of spans that verovio sets it in."""

from xml.etree.ElementTree import Element

_INHERITED = ("font-size", "font-style", "font-weight", "font-family")
_SIGNS = "Leipzig"
FRET_SIZE = "324"
"""The size of fret numbers, which the style gives them by their class."""
USUAL_SIZE = "405"
"""The size of most text, in the sheet's units: set once, on the drawing."""


def shorten_text(music: Element) -> None:
    """Give every text one span a run of one look, and none where it has only one run."""
    for text in music.iter("text"):
        runs = _runs(text, {})
        anchor = text.get("text-anchor")
        place: dict[str, str] = {n: text.attrib[n] for n in ("x", "y") if n in text.attrib}
        for child in list(text):
            text.remove(child)
        text.attrib.clear()
        text.attrib.update(place)
        _fill(text, _joined(runs))
        if text.get("font-size") == FRET_SIZE and anchor == "middle":
            del text.attrib["font-size"]
            text.set("class", "fret")
        elif anchor and anchor != "start":
            text.set("text-anchor", anchor)


def _runs(element: Element, look: dict[str, str]) -> list[tuple[dict[str, str], str]]:
    """Return the pieces of text with the attributes that hold for each."""
    own = dict(look)
    for name in (*_INHERITED, "x", "y", "dx", "dy"):
        value = element.get(name)
        if value is not None and (element.tag == "tspan" or name in _INHERITED):
            own[name] = value.removesuffix("px")
    runs = [(own, element.text)] if element.text else []
    for child in element:
        runs += _runs(child, own)
        own = {name: value for name, value in own.items() if name in _INHERITED}
        if child.tail:
            runs.append((own, child.tail))
    return runs


def _joined(runs: list[tuple[dict[str, str], str]]) -> list[tuple[dict[str, str], str]]:
    joined: list[tuple[dict[str, str], str]] = []
    for look, content in runs:
        looks = _plain(look)
        if joined and joined[-1][0] == looks and not {"x", "y", "dx", "dy"} & looks.keys():
            joined[-1] = (looks, joined[-1][1] + content)
        else:
            joined.append((looks, content))
    return joined


def _plain(look: dict[str, str]) -> dict[str, str]:
    """Return the attributes that a span needs: the music font as a class, nothing usual."""
    attributes = {name: value for name, value in look.items() if value != "normal"}
    if attributes.get("font-size") == USUAL_SIZE:
        del attributes["font-size"]
    if attributes.pop("font-family", "") == _SIGNS:
        attributes["class"] = "sign"
    if look.get("font-style") == "normal":
        attributes["font-style"] = "normal"
    return attributes


def _fill(text: Element, runs: list[tuple[dict[str, str], str]]) -> None:
    if len(runs) == 1:
        text.attrib.update({**runs[0][0], **{k: v for k, v in text.attrib.items() if k in "xy"}})
        text.text = runs[0][1]
        return
    for attributes, content in runs:
        span = Element("tspan", attributes)
        span.text = content
        text.append(span)
