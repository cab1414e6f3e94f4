"""Text without the nest of spans that verovio sets it in."""

from xml.etree.ElementTree import Element

from sitegen.engraving.markup import attributes, escaped, markup
from sitegen.engraving.svg.brackets import with_brackets

_INHERITED = ("font-size", "font-style", "font-weight", "font-family")
_PLACES = ("x", "y", "dx", "dy")
_SIGNS = "Leipzig"
FRET_SIZE = "324"
"""The size of fret numbers, which the style gives them by their class."""
USUAL_SIZE = "405"
"""The size of most text, in the sheet's units: set once, on the drawing."""

Look = dict[str, str]


def text_markup(text: Element, *, bracketed: bool) -> str:
    """Return a text with one span a run of one look, and none where it has only one run.

    With `bracketed`, the brackets around it become spans of their own.
    """
    runs = _joined(_runs(text, {}))
    contents = [content for _, content in runs]
    written = with_brackets(contents) if bracketed else [escaped(each) for each in contents]
    own = {name: value for name in ("x", "y") if (value := text.get(name)) is not None}
    if len(runs) == 1:
        own = own | {name: value for name, value in runs[0][0].items() if name not in own}
    else:
        looks = (attributes(look.items()) for look, _ in runs)
        pairs = zip(looks, written, strict=True)
        written = [f"<tspan{look}>{each}</tspan>" for look, each in pairs]
    _set_anchor(own, text.get("text-anchor"))
    return markup("text", own.items(), "".join(written))


def _set_anchor(own: Look, anchor: str | None) -> None:
    if own.get("font-size") == FRET_SIZE and anchor == "middle":
        del own["font-size"]
        own["class"] = "fret"
    elif anchor and anchor != "start":
        own["text-anchor"] = anchor


def _runs(span: Element, look: Look) -> list[tuple[Look, str]]:
    """Return the pieces of text with the attributes that hold for each."""
    own, found = look.copy(), span.attrib
    for name in _INHERITED:
        if name in found:
            own[name] = found[name].removesuffix("px")
    if span.tag == "tspan":
        for name in _PLACES:
            if name in found:
                own[name] = found[name].removesuffix("px")
    runs = [(own, span.text)] if span.text else []
    for child in span:
        runs += _runs(child, own)
        if child.tail or len(span) > 1:
            own = {name: value for name, value in own.items() if name in _INHERITED}
        if child.tail:
            runs.append((own, child.tail))
    return runs


def _joined(runs: list[tuple[Look, str]]) -> list[tuple[Look, str]]:
    joined: list[tuple[Look, str]] = []
    for look, content in runs:
        looks = _plain(look)
        if joined and joined[-1][0] == looks and looks.keys().isdisjoint(_PLACES):
            joined[-1] = (looks, joined[-1][1] + content)
        else:
            joined.append((looks, content))
    return joined


def _plain(look: Look) -> Look:
    """Return the attributes that a span needs: the music font as a class, nothing usual."""
    plain = {name: value for name, value in look.items() if value != "normal"}
    if plain.get("font-size") == USUAL_SIZE:
        del plain["font-size"]
    if plain.pop("font-family", "") == _SIGNS:
        plain["class"] = "sign"
    if look.get("font-style") == "normal":
        plain["font-style"] = "normal"
    return plain
