"""Words that findings on roots, basses and chords share."""

from collections.abc import Iterable, Sequence

from sitegen.analysis.places import bars_said, listed
from sitegen.analysis.reading import Fact, Place
from sitegen.analysis.roots.chord_line import HeldChord
from sitegen.analysis.wording import number_word
from sitegen.score.pitch import PitchName

_MOST_NAMED = 6


def names_said(names: Iterable[PitchName]) -> str:
    """Return the names of a line one after the other: "E A D G"."""
    return " ".join(map(str, names))


def stretch_said(line: Sequence[HeldChord]) -> str:
    """Return the bars from the first to the last chord of a line: "Bars 1 to 4"."""
    return bars_said(range(line[0].home, line[-1].home + 1)).capitalize()


def chords_said(line: Iterable[HeldChord]) -> str:
    """Return the different chords of a line in order, or how many there are of a long one."""
    names = dict.fromkeys(str(held.chord) for held in line)
    if len(names) > _MOST_NAMED:
        return f"{number_word(len(names))} different chords"
    return listed(names)


def places_of(line: Iterable[HeldChord]) -> tuple[Place, ...]:
    """Return where the chords of a line stand."""
    return tuple(held.place for held in line)


def count_fact(path: str, found: Sequence[HeldChord], unit: str = "", sentence: str = "") -> Fact:
    """Return a fact that counts chords."""
    return Fact(path, len(found), str(len(found)), unit, places_of(found), sentence)
