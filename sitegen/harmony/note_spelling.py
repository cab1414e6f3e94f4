"""Names for a line of notes that come as MIDI numbers, each from its context."""

from collections.abc import Iterable, Sequence

from sitegen.harmony.key_finding import find_key
from sitegen.harmony.spelling_profile import GOAL, NEXT, PREVIOUS, SOURCE, SURROUNDINGS, USUAL
from sitegen.score.pitch import Pitch, PitchName

# The scale of a signature lies from one fifth below its major tonic to five above; the five notes
# outside it are its ♯4 ♯1 ♯5 ♯2 ♯6, or flats twelve fifths below these.
_FIRST_OF_SCALE = -1
_FIRST_SHARP = 6
_SHARP_TO_FLAT = 12
# How many notes on either side may hold the note's goal and source: two chords of four parts.
_REACH = 8
# How many notes before and after one are its surroundings; as in Meredith's ps13 (2006, Journal of
# New Music Research 35; from memory), more of what follows than of what went before.
_BEFORE, _AFTER = 20, 42


def spell(midi_numbers: Sequence[int], signature: int | None = None) -> tuple[Pitch, ...]:
    """Return the notes with names, in the same order.

    Notes of the signature have its names. Each of the five others is sharp or flat by what speaks
    for either: where it goes and comes from by step, what sounds around it, and which name is
    usual, with the weights of `spelling_profile`. `signature` is the key signature, sharps
    positive; without it, that of the key that `find_key` finds for notes of even length. Notes
    that sound together stand one after the other, from low to high.
    """
    if signature is None:
        found = find_key((number, 1) for number in midi_numbers)
        signature = found[0].key.fifths if found else 0
    names = [_name(midi_numbers, index, signature) for index in range(len(midi_numbers))]
    return tuple(Pitch.of(name, n) for name, n in zip(names, midi_numbers, strict=True))


def _name(numbers: Sequence[int], index: int, signature: int) -> PitchName:
    lowest = signature + _FIRST_OF_SCALE
    place = lowest + (7 * numbers[index] - lowest) % 12
    outside = place - signature - _FIRST_SHARP
    if outside >= 0 and USUAL[outside] + _sharpness(numbers, index) <= 0:
        place -= _SHARP_TO_FLAT
    return PitchName.at_fifths(place)


def _sharpness(numbers: Sequence[int], index: int) -> float:
    """Return how much the context of a note speaks for a sharp, or when negative for a flat."""
    later = [number - numbers[index] for number in numbers[index + 1 : index + 1 + _AFTER]]
    earlier = [number - numbers[index] for number in numbers[max(index - _BEFORE, 0) : index]]
    earlier.reverse()
    return (
        sum(NEXT.get(interval, 0.0) for interval in later[:1])
        + sum(PREVIOUS.get(interval, 0.0) for interval in earlier[:1])
        + GOAL.get(_first_step(later), 0.0)
        + SOURCE.get(_first_step(earlier), 0.0)
        + _surroundings([*earlier, *later])
    )


def _first_step(intervals: Iterable[int]) -> int:
    """Return the first interval of a semitone or a whole tone within reach; 0 without one."""
    return next((step for step in list(intervals)[:_REACH] if step in GOAL), 0)


def _surroundings(intervals: Sequence[int]) -> float:
    if not intervals:
        return 0.0
    return sum(SURROUNDINGS[interval % 12] for interval in intervals) / len(intervals)
