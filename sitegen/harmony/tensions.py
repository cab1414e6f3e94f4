"""Which colours a chord takes: the 9 11 13 family, and the thirds and sevenths it leaves open."""

from sitegen.harmony.chord_degree import ChordDegree, read_degrees

# The first row whose degrees are all in the chord gives its tensions. After the usual chord
# scales of jazz teaching, from memory (Nettles and Graf, The Chord Scale Theory and Jazz
# Harmony, 1997): a tension lies a whole step over a chord tone, altered ones on dominants. The
# 13 over minor chords is that of dorian and m6. The rows without a third: common practice,
# no source; there a major 13, a 9 and, where no 4 sounds, the 11 do no harm.
_TABLE = tuple(
    (read_degrees(members), read_degrees(tensions))
    for members, tensions in (
        ("♭3 ♭5", "9 11 ♭13"),
        ("♭3", "9 11 13"),
        ("3 ♭7", "♭9 9 ♯9 ♯11 ♭13 13"),
        ("3", "9 ♯11 13"),
        ("4 ♭7", "♭9 9 13"),
        ("4", "9 13"),
        ("2", "11 13"),
        ("R", "9 11 13"),
    )
)

# What a symbol leaves open and a melody may fill in without a clash: a third over chords that
# state none (a suspended fourth stands in its place), a seventh over chords without a sixth or
# seventh. Common practice, no source.
_THIRDS = read_degrees("♭3 3")
_SEVENTHS = read_degrees("♭7 7")
_DIMINISHED_SEVENTHS = read_degrees("♭♭7 ♭7")
_THIRD, _FOURTH, _FIFTH, _SIXTH, _SEVENTH = 3, 4, 5, 6, 7


def available_tensions(degrees: frozenset[ChordDegree]) -> frozenset[ChordDegree]:
    """Return the tensions of a chord with these degrees, those it holds itself left out.

    A chord that states a 9 or 13 does not take the same number altered another way: no 9 over
    7♭9, no ♭13 over 13. ♭9 and ♯9 go together (common practice, no source).
    """
    row = next(tensions for members, tensions in _TABLE if members <= degrees)
    stated = {degree for degree in degrees if degree.number in {9, 13}}
    taken = frozenset(t for t in row if not any(_excludes(degree, t) for degree in stated))
    return taken | _left_open(degrees)


def _left_open(degrees: frozenset[ChordDegree]) -> frozenset[ChordDegree]:
    numbers = {degree.number for degree in degrees}
    found: frozenset[ChordDegree] = frozenset()
    if not numbers & {_THIRD, _FOURTH}:
        found |= _THIRDS
    if not numbers & {_SIXTH, _SEVENTH}:
        diminished = ChordDegree(_FIFTH, -1) in degrees and ChordDegree(_THIRD, -1) in degrees
        found |= _DIMINISHED_SEVENTHS if diminished else _SEVENTHS
    return found


def _excludes(stated: ChordDegree, tension: ChordDegree) -> bool:
    return stated.number == tension.number and 0 in {
        stated.alteration * tension.alteration,
        stated.alteration - tension.alteration,
    }
