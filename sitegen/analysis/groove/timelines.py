"""Rhythms that have a name: timelines of African, Cuban and Brazilian music.

Patterns as G. T. Toussaint gives them, *The Geometry of Musical Rhythm* (2013), from memory: the
pulses of a cycle and those that are struck. A cycle is a bar here, or half of one, or two. The
shiko is the cinquillo at half the speed and has no name of its own here.
"""

from fractions import Fraction

from sitegen.analysis.groove.line import Line, Offsets
from sitegen.analysis.reading import Fact
from sitegen.analysis.wording import capitalised

Timeline = tuple[int, Offsets]
Cycle = tuple[int, Offsets]

TIMELINES: dict[str, Timeline] = {
    "tresillo": (8, (0, 3, 6)),
    "cinquillo": (8, (0, 2, 3, 5, 6)),
    "habanera": (8, (0, 3, 4, 6)),
    "3-2 son clave": (16, (0, 3, 6, 10, 12)),
    "2-3 son clave": (16, (2, 4, 8, 11, 14)),
    "3-2 rumba clave": (16, (0, 3, 7, 10, 12)),
    "2-3 rumba clave": (16, (2, 4, 8, 11, 15)),
    "soukous": (16, (0, 3, 6, 10, 11)),
    "bossa nova clave": (16, (0, 3, 6, 10, 13)),
    "gahu": (16, (0, 3, 6, 10, 14)),
    "bembé": (12, (0, 2, 4, 5, 7, 9, 11)),
}
_BY_STROKES = {
    count: [(name, line) for name, line in TIMELINES.items() if len(line[1]) == count]
    for count in {len(struck) for _, struck in TIMELINES.values()}
}
# As many as two cycles in a bar have.
_MOST_STROKES = 2 * max(_BY_STROKES)
# Other five strokes come about by chance as well; only these are told unasked.
_TOLD = ("tresillo", "cinquillo", "habanera", "clave", "bembé")
_PULSES = {Fraction(1, 2): "eighths", Fraction(1, 4): "sixteenths"}


def timeline_facts(line: Line, path: str) -> list[Fact]:
    """Return the timeline that a line plays in all the whole bars it plays in."""
    bars = [(bar.meter.length, offsets) for bar, offsets in line.played]
    if not bars or len(bars[0][1]) > _MOST_STROKES:
        return []
    for cycles in (_halves(bars), bars, _doubles(line)):
        name = _common_name(cycles)
        if name:
            pulse = Fraction(cycles[0][0], TIMELINES[name][0] * line.grid.ticks)
            ticks = [bar.origin + o for bar, offsets in line.played for o in offsets]
            sentence = _sentence(line, name, pulse) if pulse in _PULSES else ""
            return [Fact(path, name, name, "", line.places(ticks), sentence)]
    return []


def _halves(bars: list[Cycle]) -> list[Cycle]:
    cycles = []
    for length, offsets in bars:
        half = length // 2
        if length % 2:
            return []
        cycles.append((half, tuple([o for o in offsets if o < half])))
        cycles.append((length - half, tuple([o - half for o in offsets if o >= half])))
    return cycles


def _doubles(line: Line) -> list[Cycle]:
    """Return pairs of bars that stand side by side; none where a bar is left over."""
    if len(line.played) % 2:
        return []
    cycles = []
    for n in range(0, len(line.played), 2):
        (first, early), (second, late) = line.played[n], line.played[n + 1]
        if first.meter is not second.meter or first.end != second.start:
            return []
        length = first.meter.length
        cycles.append((2 * length, (*early, *[length + offset for offset in late])))
    return cycles


def _common_name(cycles: list[Cycle]) -> str:
    """Return the timeline that all cycles are, "" if there is none."""
    if not cycles:
        return ""
    name = _name(*cycles[0])
    return name if name and all(_name(*cycle) == name for cycle in cycles) else ""


def _name(length: int, struck: Offsets) -> str:
    for name, (pulses, wanted) in _BY_STROKES.get(len(struck), ()):
        if all(a * pulses == b * length for a, b in zip(struck, wanted, strict=True)):
            return name
    return ""


def _sentence(line: Line, name: str, pulse: Fraction) -> str:
    if not name.endswith(_TOLD):
        return ""
    counted = f", 3 + 3 + 2 {_PULSES[pulse]}" if name == "tresillo" else ""
    return f"{capitalised(line.name)} plays the {name}{counted}."
