"""Names for a line of notes that come as MIDI numbers, each from its context."""

from collections import Counter
from collections.abc import Sequence

from sitegen.harmony.key_finding import find_key
from sitegen.score.pitch import Pitch, PitchName

# How many notes before and after one, itself included, speak for its name: the window that
# Meredith found best (2006, The ps13 pitch spelling algorithm, Journal of New Music Research 35;
# from memory).
_BEFORE, _AFTER = 10, 42
# The chromatic scale of a tonic runs from its ♭2 to its ♯4 on the line of fifths (the same paper).
_FLATTEST = -5
# The twelve names at home in a signature, from its major tonic: ♭3 to ♯5, the leading tone of
# the relative minor.
_SIGNATURE_FLATTEST = -3


def spell(midi_numbers: Sequence[int], signature: int | None = None) -> tuple[Pitch, ...]:
    """Return the notes with names, in the same order.

    Every note near a note counts as a tonic that would name it; the name with most voices is
    taken. `signature` is the key signature, sharps positive, which says where on the line of
    fifths those tonics lie, and decides when voices are even; without it, that of the key that
    `find_key` finds. Notes that sound together stand one after the other, from low to high.
    """
    if signature is None:
        found = find_key((number, 1) for number in midi_numbers)
        signature = found[0].key.fifths if found else 0
    places = [_home_place(number, signature) for number in midi_numbers]
    names = [_name(places, index) for index in range(len(places))]
    return tuple(Pitch.of(name, n) for name, n in zip(names, midi_numbers, strict=True))


def _home_place(number: int, signature: int) -> int:
    """Return the place of a note's usual name under a signature on the line of fifths."""
    lowest = signature + _SIGNATURE_FLATTEST
    return lowest + (7 * number - lowest) % 12


def _name(places: Sequence[int], index: int) -> PitchName:
    voices: Counter[int] = Counter()
    for tonic in places[max(index - _BEFORE, 0) : index + _AFTER]:
        lowest = tonic + _FLATTEST
        voices[lowest + (places[index] - lowest) % 12] += 1
    home = places[index]
    return PitchName.at_fifths(max(voices, key=lambda p: (voices[p], -abs(p - home), -p)))
