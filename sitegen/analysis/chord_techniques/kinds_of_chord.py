"""Which kinds of chord a chart uses: shares of its changes of chord.

A chord that is repeated, or held over several bars, counts once. A power chord is root and fifth;
a suspended chord has a fourth or second and no third; a seventh chord has a seventh, whatever else
it holds (6 chords have none); an inversion has another of its own members in the bass, and so has
a triad over its own minor seventh, B♭/A♭, which is a seventh chord in third inversion.
"""

from collections.abc import Callable, Sequence
from fractions import Fraction

from sitegen.analysis.reading import Fact
from sitegen.analysis.roots.chord_line import HeldChord
from sitegen.analysis.roots.wording import count_fact, places_of
from sitegen.analysis.wording import number_word, percent
from sitegen.harmony.figures import seventh_in_bass
from sitegen.score.chord import Chord

_THIRDS, _SUSPENDED = {"3", "♭3"}, {"2", "♭2", "4", "♯4"}
_SEVENTHS = {"7", "♭7", "♭♭7"}
_FEWEST_TOLD = 3


def kind_facts(changes: Sequence[HeldChord]) -> list[Fact]:
    """Return the different roots and the share of each kind of chord that there is."""
    facts = [_roots(changes)]
    degrees = [(held, set(held.chord.degrees)) for held in changes]
    for path, is_kind in _KINDS.items():
        found = [held for held, names in degrees if is_kind(names)]
        if found:
            facts.append(_share(path, found, changes))
    slashed = [(held, _has_foreign_bass(held.chord)) for held in changes if held.bass != held.root]
    inverted = [held for held, is_foreign in slashed if not is_foreign]
    foreign = [held for held, is_foreign in slashed if is_foreign]
    if inverted:
        facts.append(_share("inversion-share", inverted, changes))
        facts.append(count_fact("inversions", inverted))
    if foreign:
        facts.append(count_fact("foreign-basses", foreign))
    return facts


def _roots(changes: Sequence[HeldChord]) -> Fact:
    first: dict[int, HeldChord] = {}
    for held in changes:
        first.setdefault(held.root, held)
    return count_fact("roots", list(first.values()), "different roots")


def _share(path: str, found: Sequence[HeldChord], changes: Sequence[HeldChord]) -> Fact:
    share = Fraction(len(found), len(changes))
    sentence = ""
    if share == 1 and len({str(held.chord) for held in found}) >= _FEWEST_TOLD:
        sentence = _WHOLE.get(path, "").format(count=number_word(len(_different(found))))
    return Fact(path, share, percent(share), "of the chords", places_of(found), sentence)


def _different(found: Sequence[HeldChord]) -> set[str]:
    return {str(held.chord) for held in found}


def _has_foreign_bass(chord: Chord) -> bool:
    return chord.bass not in seventh_in_bass(chord).members


_KINDS: dict[str, Callable[[set[str]], bool]] = {
    "power-chord-share": lambda degrees: degrees == {"R", "5"},
    "suspended-share": lambda degrees: not degrees & _THIRDS and bool(degrees & _SUSPENDED),
    "third-less-share": lambda degrees: not degrees & _THIRDS,
    "seventh-chord-share": lambda degrees: bool(degrees & _SEVENTHS),
}
_WHOLE = {
    "third-less-share": "None of the {count} chords has a third.",
    "seventh-chord-share": "Every one of the {count} chords has a seventh.",
}
