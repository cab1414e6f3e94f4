"""A drawn sheet as a tree of SVG elements in which notes can be found by their ids."""

import re
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from xml.etree import ElementTree as ET
from xml.etree.ElementTree import Element

_NAMESPACE = ' xmlns="http://www.w3.org/2000/svg"'
_BOX = re.compile(r'viewBox="([^"]+)"')
_MARGIN = re.compile(r'class="page-margin" transform="translate\((-?[\d.]+), (-?[\d.]+)\)"')
_PLACE = re.compile(r"translate\((-?[\d.]+),\s*(-?[\d.]+)\)")
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


@dataclass(frozen=True)
class Spot:
    """Where something stands: `x` and `y` in the sheet's units, y downward."""

    x: float
    y: float


class Sheet:
    """One page as verovio has drawn it; its units are a ninetieth of half a staff space.

    `svg` is its text, `size` its width and height as it is shown, `box` the rectangle of what is
    drawn, `margin` how far the music is moved from the left and top edge. Nothing else is read
    before it is asked for: many a sheet is only drawn to learn how wide it is.
    """

    def __init__(self, svg: str) -> None:
        self.svg = svg
        outer, margin = _BOX.search(svg), _MARGIN.search(svg)
        inner = _BOX.search(svg, outer.end()) if outer else None
        if outer is None or inner is None or margin is None:
            raise ValueError("not a page of verovio's")
        self.size = numbers(outer[1])[2:]
        self.box = numbers(inner[1])
        self.margin = float(margin[1]), float(margin[2])

    @cached_property
    def root(self) -> Element:
        """The outer `svg`; without its namespace tags are plain names."""
        return ET.fromstring(self.svg.replace(_NAMESPACE, "", 1))  # noqa: S314 - the engraver's

    @cached_property
    def music(self) -> Element:
        """The group of everything that is drawn."""
        music = self.root.find("svg/g")
        if music is None:
            raise ValueError("not a page of verovio's")
        return music

    @cached_property
    def by_id(self) -> dict[str, Element]:
        """Every group that has an id."""
        return {identity: e for e in self.music.iter("g") if (identity := e.get("id"))}

    @cached_property
    def _by_name(self) -> dict[str, list[Element]]:
        named: dict[str, list[Element]] = defaultdict(list)
        for group in self.music.iter("g"):
            named[group.get("class", "")].append(group)
        return named

    def groups(self, name: str) -> Sequence[Element]:
        """Return the groups whose only class is `name`, in the order of the file."""
        return self._by_name.get(name, ())

    @cached_property
    def _measures(self) -> dict[Element, Element]:
        """The measure that each group stands in."""
        return {
            inner: measure for measure in self.groups("measure") for inner in measure.iter("g")
        }

    def measure_of(self, group: Element) -> Element | None:
        """Return the measure around a group."""
        return self._measures.get(group)

    def spot(self, identity: str) -> Spot | None:
        """Return where a note stands: the left end of its head, or the middle of its number."""
        element = self.by_id.get(identity)
        if element is None:
            return None
        text = element.find("text")
        if text is not None and text.get("x"):
            return Spot(float(text.get("x", 0)), float(text.get("y", 0)))
        return next(_places(element), None)

    def left_edge(self, element: Element) -> float:
        """Return how far a note with its accidental and dots reaches to the left."""
        return min(place.x for place in _places(element))


def _places(element: Element) -> Iterator[Spot]:
    """Yield where the glyphs of an element stand."""
    for use in element.iter("use"):
        match = _PLACE.match(use.get("transform", ""))
        if match:
            yield Spot(float(match[1]), float(match[2]))


def numbers(text: str) -> list[float]:
    """Return all numbers of a path or transform."""
    return [float(number) for number in _NUMBER.findall(text)]
