"""Keys for looking up: equal texts for progressions that are equal in one sense or another.

A shape names each chord by its sign and, between two chords, the semitones from root to root
upwards: ii7 V7 Imaj7 in any key is "037a 5 047a 5 047b", up to extensions "minor 5 major 5
major". Shapes of loops end with the way back to the first chord. Signs are those of
`sitegen.harmony.progressions.cores.Core`. The shape of a progression without chords is "".
"""

from collections.abc import Sequence

from sitegen.harmony.progressions.loops import least_rotation
from sitegen.harmony.progressions.progression import Progression
from sitegen.harmony.progressions.rows import Row


def shape(progression: Progression) -> str:
    """Return a text that is equal for progressions that are the same in any key.

    Chords, qualities and basses count; durations, spelling and how often a loop is played
    do not.
    """
    return _line(progression.reduced.row.reduced)


def core_shape(progression: Progression) -> str:
    """Return a text that is equal for progressions that are the same up to extensions."""
    return _line(progression.reduced.core_row.reduced)


def loop_shape(progression: Progression) -> str:
    """Return a text that is equal for loops that are the same wherever they start."""
    return _circle(progression.reduced.row.reduced)


def core_loop_shape(progression: Progression) -> str:
    """Return a text that is equal for loops that are the same up to start and extensions."""
    return _circle(progression.reduced.core_row.reduced)


def _line(row: Row) -> str:
    return _print(list(zip(row.signs, row.motions, strict=True))).rpartition(" ")[0]


def _circle(row: Row) -> str:
    places = list(zip(row.signs, row.motions, strict=True))
    start = least_rotation(places)
    return _print(places[start:] + places[:start])


def _print(places: Sequence[tuple[str, int]]) -> str:
    return " ".join(f"{sign} {motion}" for sign, motion in places)
