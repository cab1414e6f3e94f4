"""The letters of a form: which sections return, and which return varied.

Letters stand in order of first appearance, a prime marks a varied return (A B A′): the usual
textbook convention, common practice, no source. Here sections share a letter when one is
written `=` the other, when their names differ in count or place only ("Chorus 1", "Last
chorus"), or when they name the very same charts for as many bars. A return is varied when its
bars, its meter, its charts or its own name ("half chorus") differ from the first of its letter;
returns that vary alike share their primes. After Z come AA, BB, ... as in rehearsal letters.
"""

import re
from collections.abc import Sequence
from fractions import Fraction
from string import ascii_uppercase

from sitegen.score.form import Section
from sitegen.score.meter import Meter

Variation = tuple[str, ...]
PRIME = "′"
MOST_PRIMES = 3
_PLACE_WORDS = frozenset(
    "first second third fourth fifth sixth last final opening closing intro outro".split()
)
_VARYING_WORDS = frozenset(
    "half short shortened long extended double varied variation reprise breakdown quiet "
    "stripped instrumental acoustic half-time double-time".split()
)
# "Part 1" and "Part 2" are told apart by their number, unlike "Verse 1" and "Verse 2".
_NUMBERED_KINDS = frozenset("part section theme strain movement episode".split())
_COUNT = re.compile(r"#?\d+[a-z]?|i|ii|iii|iv|v|vi")
_BRACKETED = re.compile(r"\([^()]*\)")


def stem(name: str) -> str:
    """Return what a section's name calls it: "chorus" for "Chorus 2" and for "Last chorus"."""
    words = _BRACKETED.sub(" ", name).casefold().split()
    kept = [word for word in words if word not in _PLACE_WORDS | _VARYING_WORDS]
    if kept and kept[0] not in _NUMBERED_KINDS:
        kept = [word for word in kept if not _COUNT.fullmatch(word)]
    return " ".join(kept or words) or name.casefold()


def section_letters(sections: Sequence[Section]) -> tuple[str, ...]:
    """Return one letter for each section, primes included: "A", "B", "A′"."""
    named = _places_by_name(sections)
    roots = _roots(sections, named)
    order = list(dict.fromkeys(roots))
    variants: dict[int, list[Variation]] = {root: [()] for root in order}
    found: list[Variation] = []
    for place, section in enumerate(sections):
        model = named.get(section.same_as.casefold(), place)
        varied = _variation(section, sections[roots[place]])
        if model < place and _measure(sections[model]) == _measure(section):
            varied = found[model]
        if varied not in variants[roots[place]]:
            variants[roots[place]].append(varied)
        found.append(varied)
    return tuple(
        _letter(order.index(root)) + _primes(variants[root].index(varied))
        for root, varied in zip(roots, found, strict=True)
    )


def _places_by_name(sections: Sequence[Section]) -> dict[str, int]:
    places: dict[str, int] = {}
    for place, section in enumerate(sections):
        places.setdefault(section.name.casefold(), place)
    return places


def _roots(sections: Sequence[Section], named: dict[str, int]) -> list[int]:
    """Return for each section the place of the first section that it is joined with."""
    root = list(range(len(sections)))

    def find(place: int) -> int:
        while root[place] != place:
            place = root[place]
        return place

    seen: dict[object, int] = {}
    for place, section in enumerate(sections):
        same = named.get(section.same_as.casefold(), place)
        ties: list[object] = [stem(section.name)]
        if _charts(section):
            ties.append((_charts(section), _measure(section)))
        for other in (same, *(seen.setdefault(tie, place) for tie in ties)):
            first, second = sorted((find(other), find(place)))
            root[second] = first
    return [find(place) for place in range(len(sections))]


def _charts(section: Section) -> frozenset[str]:
    """Return the ids of the charts that show the section; `see` only points to one."""
    return frozenset(chart.id for chart in section.charts if chart.word != "see")


def _measure(section: Section) -> tuple[Fraction, Meter]:
    return section.bars, section.meter


def _variation(section: Section, first: Section) -> Variation:
    """Return what sets a return apart from the first of its letter, () when nothing does."""
    found: list[str] = []
    if section.bars != first.bars:
        found.append(f"{section.bars} bars")
    if section.meter != first.meter:
        found.append(str(section.meter))
    if section.same_as:
        return tuple(found)
    charts, first_charts = _charts(section), _charts(first)
    if charts and first_charts and not charts & first_charts:
        found.extend(sorted(charts))
    words = _varying_words(section.name)
    if words != _varying_words(first.name):
        found.append(words)
    return tuple(found)


def _varying_words(name: str) -> str:
    """Return the words of a name that tell of a variation, "" when they are all its name."""
    words = _BRACKETED.sub(" ", name).casefold().split()
    varying = [word for word in words if word in _VARYING_WORDS]
    return " ".join([*varying, *_BRACKETED.findall(name)]) if len(varying) < len(words) else ""


def _letter(place: int) -> str:
    return ascii_uppercase[place % 26] * (1 + place // 26)


def _primes(count: int) -> str:
    return PRIME * count if count <= MOST_PRIMES else f"{PRIME}{count}"


def letter_words(letter: str) -> str:
    """Return a letter with its primes in words: "B", "B varied", "B varied, way 2".

    Screen readers pass over primes.
    """
    plain, *primes = letter.split(PRIME)
    if not primes:
        return plain
    way = int(primes[-1] or len(primes))
    return f"{plain} varied" if way == 1 else f"{plain} varied, way {way}"
