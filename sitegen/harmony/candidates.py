"""The chords that notes can be: in any inversion, over a foreign bass, without their root."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

from sitegen.harmony.canonical import make_chord
from sitegen.harmony.chord_degree import ROOT, ChordDegree
from sitegen.harmony.chord_usage import foreign_bass_cost, inversion_cost, kind_cost
from sitegen.harmony.naming_words import say_foreign_bass, say_inversion, say_rootless
from sitegen.harmony.readings import degrees_over_root
from sitegen.harmony.sounding import Sounding
from sitegen.harmony.spelling import spell_note
from sitegen.score.chord import Chord
from sitegen.score.pitch import PitchName

_FEWEST_OVER_FOREIGN_BASS = 3
_FEWEST_WITHOUT_ROOT = 3
_WITHOUT_ROOT = 2.2
# From G♭ to G♯: where two names are in use the chord decides (C♯m and D♭).
_USUAL_ROOTS = range(-6, 9)
_DOUBLE, _DOUBLE_SIGN = 2, 3


@dataclass(frozen=True)
class Candidate:
    """A chord that notes can be, what it costs to read it into them, and why it fits."""

    chord: Chord
    cost: float
    reason: str
    without: tuple[str, ...] = ()


def candidates(sounding: Sounding) -> Iterator[Candidate]:
    """Yield every chord that the notes can be, in no order; see `chord_usage` for the costs."""
    yield from _inversions(sounding)
    if len(sounding.names) > _FEWEST_OVER_FOREIGN_BASS - 1:
        yield from _over_foreign_bass(sounding)
    if len(sounding.names) >= _FEWEST_WITHOUT_ROOT:
        yield from _without_root(sounding)


def _inversions(sounding: Sounding) -> Iterator[Candidate]:
    for root in sounding.names:
        for degrees in degrees_over_root(sounding.over(root)):
            in_bass = _degree_in_bass(root, degrees, sounding)
            chord = _spelled(root, degrees, sounding)
            cost = kind_cost(degrees) + inversion_cost(degrees, in_bass)
            yield Candidate(chord, cost, say_inversion(chord, degrees, in_bass))


def _over_foreign_bass(sounding: Sounding) -> Iterator[Candidate]:
    bass, upper = sounding.bass, sounding.names[1:]
    for root in upper:
        above = sounding.over(root) - {(bass.pitch_class - root.pitch_class) % 12}
        for degrees in degrees_over_root(above):
            chord = _spelled(root, degrees, sounding)
            distance = (bass.pitch_class - root.pitch_class) % 12
            cost = kind_cost(degrees) + foreign_bass_cost(degrees, distance)
            yield Candidate(chord, cost, say_foreign_bass(chord, degrees))


def _without_root(sounding: Sounding) -> Iterator[Candidate]:
    """Yield the chords with third and seventh whose root is missing, as pianists voice them."""
    for absent in set(range(12)) - sounding.classes:
        root = PitchName.at_fifths((7 * absent + 5) % 12 - 5)
        for degrees in degrees_over_root(sounding.over(root) | {0}):
            if not {3, 7} <= {degree.number for degree in degrees}:
                continue
            in_bass = _degree_in_bass(root, degrees, sounding)
            chord = _spelled(root, degrees, sounding, root_sounds=False)
            cost = kind_cost(degrees) + _WITHOUT_ROOT
            reason = say_rootless(chord, degrees, in_bass)
            yield Candidate(chord, cost, reason, (str(ROOT),))


def _degree_in_bass(
    root: PitchName, degrees: frozenset[ChordDegree], sounding: Sounding
) -> ChordDegree:
    below = (sounding.bass.pitch_class - root.pitch_class) % 12
    return next(degree for degree in degrees if degree.semitones == below)


def _spelled(
    root: PitchName,
    degrees: frozenset[ChordDegree],
    sounding: Sounding,
    *,
    root_sounds: bool = True,
) -> Chord:
    """Return the chord over the bass, spelled as its notes are, or else as plainly as can be."""
    if sounding.spelled and root == sounding.bass:
        return _chord(root, degrees)
    names = {PitchName.at_fifths(place) for place in _USUAL_ROOTS}
    names = {name for name in names if name.pitch_class == root.pitch_class}
    if sounding.spelled and root_sounds:
        names.add(root)
    chords = [_chord(name, degrees) for name in names]
    chord = min(chords, key=lambda chord: (_oddity(chord, sounding), chord.root != root))
    return replace(chord, bass=_bass_of(chord, sounding))


def _oddity(chord: Chord, sounding: Sounding) -> int:
    """Return what speaks against a spelling: its signs, and names that a writer did not give."""
    others = len(set(chord.members) - set(sounding.names)) if sounding.spelled else 0
    alterations = [abs(name.alteration) for name in chord.members]
    return others + sum(_DOUBLE_SIGN * n if n > 1 else n for n in alterations)


def _bass_of(chord: Chord, sounding: Sounding) -> PitchName:
    if sounding.spelled:
        return sounding.bass
    number = sounding.bass.pitch_class
    name = spell_note(number, None, chord).name
    is_plain = name in chord.members or abs(name.alteration) < _DOUBLE
    return name if is_plain else spell_note(number).name


@lru_cache(maxsize=8192)
def _chord(
    root: PitchName, degrees: frozenset[ChordDegree], bass: PitchName | None = None
) -> Chord:
    return make_chord(root, degrees, bass)
