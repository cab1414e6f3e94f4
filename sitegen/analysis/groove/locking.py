"""Who plays with whom: bass and bass drum, parts in one rhythm, answers to the voice.

Two onsets coincide when they are written at the same time.
"""

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from sitegen.analysis.groove.line import Line
from sitegen.analysis.groove.wording import said_count
from sitegen.analysis.places import listed
from sitegen.analysis.reading import Fact
from sitegen.analysis.wording import capitalised, percent

_FEWEST = 4
# A bass with this many times the bass drum's hits meets them whatever they are.
_TOO_MANY = 2


def kick_facts(bass: Line, kick: Line, snare: Line | None) -> list[Fact]:
    """Return how far a bass and the bass drum play together, both ways."""
    if not kick.struck or not bass.struck:
        return []
    both = [tick for tick in kick.struck if tick in bass.struck]
    of_kick, of_bass = (Fraction(len(both), len(line.struck)) for line in (kick, bass))
    places = kick.places(both)
    sentence = _lock_sentence(bass, kick, snare) if of_kick == 1 else ""
    return [
        Fact(
            f"{bass.prefix}.with-kick-share",
            of_kick,
            percent(of_kick),
            "of the bass drum",
            places,
            sentence,
        ),
        Fact(
            f"{bass.prefix}.on-kick-share",
            of_bass,
            percent(of_bass),
            "of the bass",
            bass.places(both),
        ),
    ]


def _lock_sentence(bass: Line, kick: Line, snare: Line | None) -> str:
    alone = [tick for tick in bass.struck if tick not in kick.struck]
    if len(kick.struck) < _FEWEST or len(bass.struck) > _TOO_MANY * len(kick.struck):
        return ""
    if not alone:
        if len({after - before for before, after in pairwise(bass.struck)}) == 1:
            return ""
        return f"{capitalised(bass.name)} and the bass drum play the same rhythm."
    start = f"Every hit of the bass drum has a note of {bass.name} with it"
    beats = {bass.struck[tick][0].beat for tick in alone}
    if len(beats) > 1:
        return f"{start}."
    counted = said_count(beats.pop())
    if snare is not None and all(tick in snare.struck for tick in alone):
        return f"{start}; {bass.name} meets the snare on {counted}."
    return f"{start}; {bass.name} is without it on {counted}."


def together_facts(lines: Sequence[Line]) -> list[Fact]:
    """Return for each two parts how many onsets of the one the other plays too."""
    facts = []
    struck = [set(line.struck) for line in lines]
    for line, own in zip(lines, struck, strict=True):
        for other, theirs in zip(lines, struck, strict=True):
            both = len(own & theirs)
            if line is not other and both:
                share = Fraction(both, len(theirs))
                path = f"{line.prefix}.with-{other.prefix}-share"
                facts.append(Fact(path, share, percent(share), f"of {other.name}"))
    return facts + _same_rhythm(lines)


def _same_rhythm(lines: Sequence[Line]) -> list[Fact]:
    """Return the first parts that start all their notes together.

    Only a rhythm of unlike note values is worth a sentence.
    """
    groups: dict[tuple[int, ...], list[Line]] = {}
    for line in lines:
        if len(line.struck) >= _FEWEST:
            groups.setdefault(tuple(line.struck), []).append(line)
    for ticks, group in groups.items():
        if len(group) > 1:
            names = listed(line.plain_name for line in group)
            is_even = len({after - before for before, after in pairwise(ticks)}) == 1
            told = "" if is_even else f"{capitalised(names)} move in the same rhythm."
            return [Fact("same-rhythm", names, names, "", (), told)]
    return []
