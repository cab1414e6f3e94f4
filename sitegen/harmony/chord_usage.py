"""How usual chords are: what a kind of chord, a colour or a bass costs when notes are named.

Small costs are everyday chords. The order is common practice, no source, but where a rule is
named: it was laid down by family and colour and not by single chords, so that chords which no
list holds find their place too.
"""

from functools import lru_cache

from sitegen.harmony.chord_degree import ChordDegree, read_degrees
from sitegen.harmony.readings import lacks_fifth

_FIFTH, _SEVENTH, _NINTH = 5, 7, 9
_USUAL, _KNOWN, _RARE, _STRANGE = 0.2, 0.45, 0.9, 1.4
_UNHEARD_OF = 2.2
_NO_FIFTH, _NO_FIFTH_OF_SEVENTH = 1.2, 0.7
# Where no 5 sounds, what would be ♯11 or ♭13 is rather heard as the altered fifth.
_LIKE_ALTERED_FIFTHS, _ALTERED_FIFTH_IN_DOUBT = read_degrees("♯11 ♭13"), 0.3
# What a seventh chord pays for a 13 or 11 that does not stand on the thirds below it.
_GAP_IN_STACK = 0.3
_MINOR_THIRD, _ELEVENTH, _THIRTEENTH = ChordDegree(3, -1), ChordDegree(11), ChordDegree(13)

# The core of a chord, what it costs, and the colours that players add to it as a matter of
# course, those they know and those that are rare; all other colours are strange to it. Over
# dominants every altered ninth, eleventh and thirteenth is usual; an 11 over a major third is
# avoided, and so is a ♭9 or ♭13 over minor chords (the avoid notes of jazz teaching: Nettles and
# Graf, The Chord Scale Theory and Jazz Harmony, 1997, from memory). ♭9 and ♭13 over a suspended
# seventh are those of the phrygian scale. Without a fifth, perfect or
# altered, a core counts as if it had the fifth.
_CORES = (
    ("R 3 5", 0.0, "", "9 11", "♯11"),
    ("R ♭3 5", 0.0, "", "9 11", ""),
    ("R 5", 0.0, "", "", ""),
    ("R ♭3 ♭5", 0.3, "", "", "11"),
    ("R 3 ♯5", 0.5, "", "", "9"),
    ("R 3 ♭5", 1.1, "", "", ""),
    ("R ♭3 ♯5", 1.6, "", "", ""),
    ("R 4 5", 0.3, "", "9", ""),
    ("R 2 5", 0.5, "", "", ""),
    ("R 2 5 6", 0.9, "", "", ""),
    ("R 4 5 6", 1.4, "", "9", ""),
    ("R 5 6", 1.4, "", "", ""),
    ("R 3 5 6", 0.4, "9", "", "♯11"),
    ("R ♭3 5 6", 0.5, "9", "", "11"),
    ("R ♭3 ♭5 ♭♭7", 0.3, "", "", ""),
    ("R 3 5 ♭7", 0.2, "♭9 9 ♯9 ♯11 ♭13 13", "", "11"),
    ("R 3 ♭5 ♭7", 0.5, "♭9 9 ♯9", "13", "♭13"),
    ("R 3 ♯5 ♭7", 0.5, "♭9 9 ♯9", "13", "♯11"),
    ("R ♭3 5 ♭7", 0.2, "9 11", "13", "♭9"),
    ("R ♭3 ♭5 ♭7", 0.3, "9 11", "", ""),
    ("R ♭3 ♯5 ♭7", 1.6, "", "9 11", ""),
    ("R 3 5 7", 0.2, "9 ♯11", "13 ♯9", "11"),
    ("R 3 ♭5 7", 0.7, "9", "13", ""),
    ("R 3 ♯5 7", 0.6, "9", "♯11", "13"),
    ("R ♭3 5 7", 0.4, "9", "11 13", ""),
    ("R ♭3 ♭5 7", 1.0, "", "", "9"),
    ("R 4 5 ♭7", 0.4, "9 13", "♭9 ♭13", ""),
    ("R 2 5 ♭7", 1.1, "", "13", ""),
    ("R 5 ♭7", 1.0, "", "", "♭9"),
    ("R 4 5 7", 1.2, "", "9 13", ""),
    ("R 2 5 7", 1.3, "", "13", ""),
    ("R 5 7", 1.2, "", "", ""),
)
_CORE_COST = {read_degrees(core): cost for core, cost, *_ in _CORES}
_COLOUR_COST = {
    (read_degrees(core), colour): cost
    for core, _, usual, known, rare in _CORES
    for colours, cost in ((usual, _USUAL), (known, _KNOWN), (rare, _RARE))
    for colour in read_degrees(colours)
}

# The bass: figured bass ranks the inversions so, and a suspension, which is heard against the
# bass, stands in root position (common practice, no source).
_INVERSION = {2: 0.9, 3: 0.6, 4: 0.9, 5: 0.7, 6: 0.8, 7: 0.8}
_COLOUR_IN_BASS, _ALTERED_COLOUR_IN_BASS = 0.9, 1.1
_OF_A_SUSPENSION = 0.1
# Chords that divide the octave evenly sound alike over each of their notes; the bass is taken
# for the root unless the key has another.
_EVEN = {read_degrees("R ♭3 ♭5 ♭♭7"), read_degrees("R 3 ♯5")}
_OF_AN_EVEN_CHORD = 0.3
# A foreign bass, by semitones above the root: the 9 and 11 are written most (C/D, C/F), then the
# 13; a seventh is rather read into the chord; the rest are pedals and passing notes.
_FOREIGN_BASS = {2: 0.8, 5: 0.8, 9: 1.0, 10: 1.2, 11: 1.2}
_OTHER_FOREIGN_BASS = 1.4
# Over a foreign bass stand plain triads and sevenths, hardly what is open or rich already.
_UNDER_AN_OPEN_CHORD, _UNDER_A_SUSPENSION, _UNDER_COLOURS = 0.8, 0.4, 0.3


@lru_cache(maxsize=4096)
def kind_cost(degrees: frozenset[ChordDegree]) -> float:
    """Return how far a kind of chord, with all that it holds and lacks, is from everyday ones."""
    gap = _gap_cost(degrees)
    if gap:
        degrees |= {ChordDegree(_FIFTH)}
    colours = frozenset(degree for degree in degrees if degree.number >= _NINTH)
    core = degrees - colours
    cost = _CORE_COST.get(core, _UNHEARD_OF) + gap
    cost += sum(_COLOUR_COST.get((core, colour), _STRANGE) for colour in colours)
    return cost + (_GAP_IN_STACK if _has_gap_in_stack(core, colours) else 0.0)


def _has_gap_in_stack(core: frozenset[ChordDegree], colours: frozenset[ChordDegree]) -> bool:
    """Tell whether a seventh chord has an 11 or 13 and lacks a third below it.

    That is the 9, altered or not, and the 11 below the 13 of a minor chord.
    """
    if all(degree.number != _SEVENTH for degree in core):
        return False
    numbers = {degree.number for degree in colours}
    if _MINOR_THIRD in core and _THIRTEENTH in colours and _ELEVENTH.number not in numbers:
        return True
    return bool({_ELEVENTH, _THIRTEENTH} & colours) and _NINTH not in numbers


def _gap_cost(degrees: frozenset[ChordDegree]) -> float:
    if not lacks_fifth(degrees):
        return 0.0
    is_shell = {3, 7} <= {degree.number for degree in degrees}
    doubt = _ALTERED_FIFTH_IN_DOUBT if degrees & _LIKE_ALTERED_FIFTHS else 0.0
    return doubt + (_NO_FIFTH_OF_SEVENTH if is_shell else _NO_FIFTH)


def inversion_cost(degrees: frozenset[ChordDegree], in_bass: ChordDegree) -> float:
    """Return what it costs a chord of these degrees to have one of them in the bass."""
    if in_bass.number == 1:
        return 0.0
    if degrees in _EVEN:
        return _OF_AN_EVEN_CHORD
    cost = _OF_A_SUSPENSION if {2, 4} & {degree.number for degree in degrees} else 0.0
    if in_bass.number >= _NINTH:
        return cost + (_ALTERED_COLOUR_IN_BASS if in_bass.alteration else _COLOUR_IN_BASS)
    return cost + _INVERSION[in_bass.number]


def foreign_bass_cost(degrees: frozenset[ChordDegree], semitones: int) -> float:
    """Return what a bass that is no note of the chord costs, so many semitones over its root."""
    numbers = {degree.number for degree in degrees}
    cost = _FOREIGN_BASS.get(semitones, _OTHER_FOREIGN_BASS)
    if {2, 4} & numbers:
        cost += _UNDER_A_SUSPENSION
    elif 3 not in numbers:  # noqa: PLR2004 - the third
        cost += _UNDER_AN_OPEN_CHORD
    return cost + (_UNDER_COLOURS if max(numbers) >= _NINTH else 0.0)
