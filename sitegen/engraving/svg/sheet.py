"""A drawn sheet as a tree of SVG elements in which notes can be found by their ids."""

import re
from dataclasses import dataclass
from functools import cached_property
from xml.etree import ElementTree as ET
from xml.etree.ElementTree import Element

_SVG = "{http://www.w3.org/2000/svg}"
_PLACE = re.compile(r"translate\((-?[\d.]+),\s*(-?[\d.]+)\)")
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


@dataclass(frozen=True)
class Spot:
    """Where something stands: `x` and `y` in the sheet's units, y downward."""

    x: float
    y: float


class Sheet:
    """One page as verovio has drawn it; its units are a ninetieth of half a staff space.

    `root` is the outer `svg`, `music` the group of everything that is drawn.
    """

    def __init__(self, svg: str) -> None:
        self.root = ET.fromstring(svg)  # noqa: S314 - made by the engraver
        for element in self.root.iter():
            element.tag = element.tag.removeprefix(_SVG)
        inner = self.root.find("svg")
        music = inner.find("g") if inner is not None else None
        if inner is None or music is None:
            raise ValueError("not a page of verovio's")
        self.box = [float(n) for n in inner.get("viewBox", "").split()]
        self.size = [float(n) for n in self.root.get("viewBox", "").split()][2:]
        self.music = music

    @property
    def margin(self) -> tuple[float, float]:
        """How far the music is moved from the sheet's left and top edge."""
        left, top = numbers(self.music.get("transform", "translate(0, 0)"))
        return left, top

    @cached_property
    def by_id(self) -> dict[str, Element]:
        """Every element that has an id."""
        return {e.get("id", ""): e for e in self.music.iter() if e.get("id")}

    @cached_property
    def parents(self) -> dict[Element, Element]:
        """The parent of every element."""
        return {inner: outer for outer in self.music.iter() for inner in outer}

    def enclosing(self, element: Element, name: str) -> Element | None:
        """Return the nearest group of class `name` around an element."""
        above: Element | None = element
        while above is not None and name not in above.get("class", "").split():
            above = self.parents.get(above)
        return above

    def spot(self, identity: str) -> Spot | None:
        """Return where a note stands: the left end of its head, or the middle of its number."""
        element = self.by_id.get(identity)
        if element is None:
            return None
        text = element.find("text")
        if text is not None and text.get("x"):
            return Spot(float(text.get("x", 0)), float(text.get("y", 0)))
        for use in element.iter("use"):
            match = _PLACE.match(use.get("transform", ""))
            if match:
                return Spot(float(match[1]), float(match[2]))
        return None

    def left_edge(self, element: Element) -> float:
        """Return how far a note with its accidental and dots reaches to the left."""
        places = (_PLACE.match(use.get("transform", "")) for use in element.iter("use"))
        return min(float(match[1]) for match in places if match)


def numbers(text: str) -> list[float]:
    """Return all numbers of a path or transform."""
    return [float(number) for number in _NUMBER.findall(text)]
