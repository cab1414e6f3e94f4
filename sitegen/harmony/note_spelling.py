"""Names for a line of notes that come as MIDI numbers, each from its context."""

from collections.abc import Sequence
from statistics import fmean

from sitegen.harmony.key_finding import find_key
from sitegen.harmony.spelling_evidence import outside_place, spelling_evidence
from sitegen.harmony.spelling_profile import WEIGHTS
from sitegen.score.pitch import Pitch, PitchName

_WEIGHTS = WEIGHTS.numbers
# The scale of a signature lies from one fifth below its major tonic to five above; the five notes
# outside it are its ♯4 ♯1 ♯5 ♯2 ♯6, or flats twelve fifths below these.
_FIRST_OF_SCALE = -1
_SHARP_TO_FLAT = 12
# The same note near by mostly has the same name: what speaks for the name of those at most so
# many notes away counts by half, and none of it for more than the bound.
_NEAR_BY = 16
_SHARE_OF_OTHERS = 0.5
_MOST_CERTAIN = 6.0

_Leanings = dict[int, float]


def spell(midi_numbers: Sequence[int], signature: int | None = None) -> tuple[Pitch, ...]:
    """Return the notes with names, in the same order.

    Notes of the signature have its names. Each of the five others is sharp or flat by what speaks
    for either: how it moves, where it goes to and comes from by step, the chord and the passage
    around it, which name is usual, all with the weights of `spelling_profile`, and what the same
    note is near by. `signature` is the key signature, sharps positive; without it, that of the key
    that `find_key` finds for notes of even length. Notes that sound together stand one after the
    other, from low to high.
    """
    if signature is None:
        found = find_key((number, 1) for number in midi_numbers)
        signature = found[0].key.fifths if found else 0
    places = [_highest_place(number, signature) for number in midi_numbers]
    for index, leaning in _leanings(midi_numbers, signature).items():
        places[index] -= _SHARP_TO_FLAT * (leaning <= 0)
    names = map(PitchName.at_fifths, places)
    return tuple(Pitch.of(name, n) for name, n in zip(names, midi_numbers, strict=True))


def _highest_place(number: int, signature: int) -> int:
    """Return where a note lies on the line of fifths: in the scale, or as its sharp."""
    lowest = signature + _FIRST_OF_SCALE
    return lowest + (7 * number - lowest) % 12


def _leanings(numbers: Sequence[int], signature: int) -> _Leanings:
    """Return by index how much speaks for the sharp, or when negative the flat, of notes outside.

    The unit is natural log-odds.
    """
    outside = [outside_place(number, signature) for number in numbers]
    alone = {
        index: _weigh(spelling_evidence(numbers, index, place).numbers)
        for index, place in enumerate(outside)
        if place is not None
    }
    return {index: _beside_others(index, alone, outside) for index in alone}


def _weigh(evidence: Sequence[float]) -> float:
    return sum([found * weight for found, weight in zip(evidence, _WEIGHTS, strict=True) if found])


def _beside_others(index: int, alone: _Leanings, outside: Sequence[int | None]) -> float:
    others = [
        max(-_MOST_CERTAIN, min(_MOST_CERTAIN, alone[other]))
        for other in range(max(index - _NEAR_BY, 0), min(index + _NEAR_BY + 1, len(outside)))
        if other != index and outside[other] == outside[index]
    ]
    return alone[index] + (_SHARE_OF_OTHERS * fmean(others) if others else 0.0)
