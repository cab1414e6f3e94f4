"""What speaks for the name of a note that lies outside its signature, from the notes around it."""

from collections.abc import Sequence
from math import exp

from sitegen.harmony.spelling_profile import SpellingProfile, motion_place

# How many notes before and after a note tell the key of its passage: five chords of four parts
# each way. A window on either side, as in Meredith's ps13 (2006, Journal of New Music Research
# 35; from memory).
_PASSAGE = 20
# How many notes on either side are its chord and the next ones, and hold its goal and source.
_REACH = 8
# A note counts for the chord by how near it stands.
_NEARNESS = tuple(exp(-distance / 2) for distance in range(_REACH))
# Notes that speak for nothing, so that the shares among few notes do not say too much.
_UNHEARD_NEAR, _UNHEARD = 0.5, 4.0
_WHOLE_TONE = 2
# On the line of fifths the scale of a signature begins one below its major tonic.
_FIRST_OF_SCALE, _NOTES_OF_SCALE = -1, 7


def outside_place(number: int, signature: int) -> int | None:
    """Return which note outside a signature a MIDI number is, from 0 for its ♯4 to 4 for its ♯6.

    None for a note of its scale. From 0 they lie a fifth apart: ♯4 ♯1 ♯5 ♯2 ♯6.
    """
    place = (7 * number - signature - _FIRST_OF_SCALE) % 12
    return place - _NOTES_OF_SCALE if place >= _NOTES_OF_SCALE else None


def spelling_evidence(numbers: Sequence[int], index: int, outside: int) -> SpellingProfile:
    """Return the evidence for the name of a note.

    `numbers` are MIDI numbers; `outside` is the `outside_place` of the one at `index`.
    """
    here = numbers[index]
    before = [number - here for number in numbers[max(index - _PASSAGE, 0) : index]]
    before.reverse()
    after = [number - here for number in numbers[index + 1 : index + 1 + _PASSAGE]]
    return SpellingProfile(
        usual=_mark(outside, 5),
        motion=_mark(motion_place(sum(before[:1]), sum(after[:1])), 9),
        source=_mark(_WHOLE_TONE + _first_step(before), 5),
        goal=_mark(_WHOLE_TONE + _first_step(after), 5),
        near=_near(before, after),
        around=_around(before, after),
    )


def _mark(place: int, places: int) -> tuple[float, ...]:
    return (0.0,) * place + (1.0,) + (0.0,) * (places - 1 - place)


def _first_step(intervals: Sequence[int]) -> int:
    """Return the first interval of a semitone or a whole tone within reach; 0 without one."""
    return next((step for step in intervals[:_REACH] if 0 < abs(step) <= _WHOLE_TONE), 0)


def _near(*sides: Sequence[int]) -> tuple[float, ...]:
    weights, total = [0.0] * 12, _UNHEARD_NEAR
    for side in sides:
        for interval, nearness in zip(side, _NEARNESS, strict=False):
            weights[interval % 12] += nearness
            total += nearness
    return tuple([weight / total for weight in weights])


def _around(*sides: Sequence[int]) -> tuple[float, ...]:
    counts, total = [0] * 12, _UNHEARD
    for side in sides:
        total += len(side)
        for interval in side:
            counts[interval % 12] += 1
    return tuple([count / total for count in counts])
