"""A note that goes through the chords: member of every one of them."""

from collections.abc import Iterator, Sequence

from sitegen.analysis.places import listed
from sitegen.analysis.reading import Fact
from sitegen.analysis.roots.chord_line import HeldChord, Passage
from sitegen.analysis.roots.wording import chords_said, places_of, stretch_said
from sitegen.score.pitch import PitchName

_FEWEST_CHORDS, _FEWEST_ROOTS = 4, 3

Stretch = Sequence[HeldChord]


def common_tone_facts(passages: Sequence[Passage]) -> list[Fact]:
    """Return the note of the longest stretch of chords, over three roots or more, that share one.

    Two notes that go through the same chords are named together. A note that is the bass of all
    of them is a pedal, and is left to the basses.
    """
    found = [
        (tone, stretch)
        for passage in passages
        if _shares_any(passage)
        for tone, stretch in _stretches(passage)
        if _is_telling(stretch, tone)
    ]
    if not found:
        return []
    longest = max((stretch for _, stretch in found), key=len)
    tones = [tone for tone, stretch in found if stretch == longest]
    return [_fact([_name(tone, longest) for tone in sorted(tones)], longest)]


def _fact(names: Sequence[PitchName], stretch: Stretch) -> Fact:
    text = listed(map(str, names))
    verb = "are" if len(names) > 1 else "is"
    sentence = f"{stretch_said(stretch)}: {text} {verb} in every chord, {chords_said(stretch)}."
    return Fact("common-tone", text, text, "", places_of(stretch), sentence)


def _shares_any(passage: Passage) -> bool:
    """Tell whether any four chords in a row share a note: a quick look before the long one."""
    shifted = (passage[start:] for start in range(_FEWEST_CHORDS))
    rows = zip(*shifted, strict=False)
    return any(a.tones & b.tones & c.tones & d.tones for a, b, c, d in rows)


def _stretches(passage: Passage) -> Iterator[tuple[int, Stretch]]:
    """Yield each note, as a pitch class, with every longest stretch of chords that have it."""
    started: dict[int, int] = {}
    sounding = 0
    for place, held in enumerate(passage):
        if sounding & ~held.tones:
            for tone in [tone for tone in started if not held.holds(tone)]:
                yield from _long_enough(tone, passage[started.pop(tone) : place])
        if held.tones & ~sounding:
            for tone in range(12):
                if held.holds(tone):
                    started.setdefault(tone, place)
        sounding = held.tones
    for tone, start in started.items():
        yield from _long_enough(tone, passage[start:])


def _long_enough(tone: int, stretch: Stretch) -> Iterator[tuple[int, Stretch]]:
    if len(stretch) >= _FEWEST_CHORDS:
        yield tone, stretch


def _is_telling(stretch: Stretch, tone: int) -> bool:
    roots = {held.root for held in stretch}
    in_bass = all(held.bass == tone for held in stretch)
    return len(roots) >= _FEWEST_ROOTS and not in_bass


def _name(tone: int, stretch: Stretch) -> PitchName:
    return next(name for name in stretch[0].chord.members if name.pitch_class == tone)
