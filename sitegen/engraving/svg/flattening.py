"""Groups that nothing needs are taken out; what they hold moves up."""

from collections.abc import Collection
from xml.etree.ElementTree import Element

# Groups that a page can find by their ids while the music plays; the notes of a chord go with it.
_FOUND = {"note", "chord", "tabGrp", "rest", "mRest", "measure"}
_TOGETHER = {"chord", "tabGrp"}
# Groups that the style names; all others only mirror the file.
_STYLED = {"dir", "dynam", "ending", "harm", "mNum", "reh", "tempo", "label"}
# Half a staff space: less is no line. And how far above a syllable's foot its line may lie.
_STUMP, _NEAR_FOOT = 90, 45


def flatten(music: Element, prefix: str, found: Collection[str] = ()) -> None:
    """Remove needless groups and ids below `music`; kept ids get `prefix` before them.

    `found` are the ids of notes of chords that a page has to find one by one.
    """
    _drop_stumps(music)
    _lift_words(music)
    _thin_endings(music)
    _flatten(music, prefix, found)


def _drop_stumps(music: Element) -> None:
    """Remove the line after a held syllable where it is so short that it looks a full stop.

    A hyphen stands higher than the foot of its syllable, such a line on it.
    """
    for syllable in music.iter("g"):
        text = syllable.find("text")
        if syllable.get("class") == "syl" and text is not None:
            foot = float(text.get("y", 0)) - _NEAR_FOOT
            for line in syllable.findall("rect"):
                if float(line.get("width", 0)) < _STUMP and float(line.get("y", 0)) > foot:
                    syllable.remove(line)


def _lift_words(parent: Element) -> None:
    """Move words out of their notes, so that what marks a note does not mark them."""
    for place, child in reversed(list(enumerate(parent))):
        _lift_words(child)
        if child.get("class", "").split(" ")[0] in ("note", "chord"):
            for verse in [inner for inner in child if inner.get("class") == "verse"]:
                child.remove(verse)
                parent.insert(place + 1, verse)


def _thin_endings(music: Element) -> None:
    """Leave each ending the bracket over the top staff; verovio repeats it over others."""
    for ending in music.iter("g"):
        if ending.get("class", "").split(" ")[0] == "ending":
            for bracket in ending.findall("g")[1:]:
                ending.remove(bracket)


def _flatten(
    parent: Element, prefix: str, found: Collection[str], *, together: bool = False
) -> None:
    children: list[Element] = []
    for child in parent:
        name = child.get("class", "").split(" ")[0]
        _flatten(child, prefix, found, together=together or name in _TOGETHER)
        alone = not together or child.get("id") in found
        children.extend(_kept(child, prefix, alone=alone))
    for child in list(parent):
        parent.remove(child)
    parent.extend(children)


def _kept(element: Element, prefix: str, *, alone: bool) -> list[Element]:
    """Return what stays of an element: itself, what it holds, or nothing.

    `alone` says that it is found by itself, and not with the chord that it is in.
    """
    classes = element.get("class", "").split()
    identity = element.attrib.pop("id", None)
    if element.tag == "title":
        return []
    if element.tag != "g":
        return [element]
    if "placeholder" in classes:
        return []
    if not classes or classes[0] not in _FOUND | _STYLED or (not alone and len(classes) == 1):
        return list(element)
    if classes[0] in _FOUND and identity and alone:
        element.set("id", f"{prefix}-{identity}")
    return [element] if len(element) else []
