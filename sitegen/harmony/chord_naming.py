"""Names for notes that sound together: ranked readings, each with its reason."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from sitegen.harmony.arguments import AnyKey, as_key
from sitegen.harmony.canonical import make_chord, name_quality
from sitegen.harmony.chord_degree import ChordDegree
from sitegen.harmony.readings import degrees_over_root, lacks_fifth, lacks_third
from sitegen.harmony.scales import is_diatonic
from sitegen.harmony.spelling import spell_note
from sitegen.score.chord import Chord
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch, PitchName

SoundingPitch = Pitch | PitchName | str | int
"""A pitch, its name alone, the text of either, or a MIDI number."""

# What a reading costs; the cheapest comes first. Chosen so that usage decides as musicians do
# (common practice, no source): a root in the bass outweighs a rarer quality, an inversion an
# alteration, and what is left out or added counts most.
_QUALITY_COST = {
    **dict.fromkeys(("", "m", "5"), 0.0),
    **dict.fromkeys(("7", "m7", "maj7"), 0.2),
    **dict.fromkeys(("sus4", "dim", "m7♭5", "dim7"), 0.3),
    **dict.fromkeys(("sus2", "6", "m6", "+", "7sus4"), 0.5),
    **dict.fromkeys(("9", "m9", "maj9", "add9", "madd9", "6/9", "9sus4", "mmaj7"), 0.6),
}
_QUALITY_COST |= dict.fromkeys(
    "7♭5 7♯5 7♭9 7♯9 7♯11 maj7♯5 maj7♯11 9♯11 maj9♯11 13♯11 maj13♯11 13♭9 7sus4♭9 "
    "add11 madd11 m7add11 7add13 maj7add13".split(),
    0.9,
)
_OTHER_QUALITY = 0.9
_MODIFIER = 1.6
_NO_THIRD = 1.5
_NO_FIFTH, _NO_FIFTH_OF_SEVENTH = 1.5, 0.5
_BASS_COST = {1: 0.0, 3: 1.0, 5: 1.0, 7: 1.2}
_COLOUR_IN_BASS = 2.3
_FOREIGN_BASS = 2.0
_OUTSIDE_KEY = 0.15
_OTHER_SPELLING = 0.1
_FEWEST_ADJACENT = 3


@dataclass(frozen=True)
class Naming:
    """One reading of notes that sound together.

    `chord` is None for notes that make a cluster and no chord; `rank` counts from 1; `cost` is
    what the ranking compares; `reason` says in words how the notes fit.
    """

    chord: Chord | None
    rank: int
    cost: float
    reason: str


def name_chord(pitches: Sequence[SoundingPitch], key: AnyKey | None = None) -> tuple[Naming, ...]:
    """Return the chords that `pitches` can be, the likeliest first.

    The bass is the lowest pitch, or the first where one has no octave; doublings do not count.
    Chords in root position, inversions, chords over a foreign bass, and chords without fifth or
    third are tried on every root; `key` prefers chords of the key and spells MIDI numbers. Three
    or more neighbouring semitones are a cluster, with or without a chord to be read into it.
    Fewer than two different notes are no chord and give nothing. Raises ValueError for text that
    is no pitch or no key.
    """
    home = as_key(key) if key is not None else None
    names = _names_from_bass(pitches, home)
    if len(names) < 2:  # noqa: PLR2004
        return ()
    found = [*_inversions(names, home), *_over_foreign_bass(names, home)]
    ranked = sorted(found, key=lambda reading: (reading.cost, str(reading.chord)))
    if _adjacent(names) >= _FEWEST_ADJACENT or not ranked:
        ranked.insert(0, Naming(None, 1, 0.0, f"a cluster: {' '.join(map(str, names))}"))
    return tuple(
        Naming(reading.chord, rank, round(reading.cost, 2), reading.reason)
        for rank, reading in enumerate(ranked, 1)
    )


def _names_from_bass(pitches: Sequence[SoundingPitch], key: Key | None) -> list[PitchName]:
    """Return the bass and then every other note, each pitch class once."""
    sounding = [_read(pitch, key) for pitch in pitches]
    if sounding and all(isinstance(pitch, Pitch) for pitch in sounding):
        sounding.sort(key=lambda pitch: pitch.midi if isinstance(pitch, Pitch) else 0)
    names = [pitch.name if isinstance(pitch, Pitch) else pitch for pitch in sounding]
    by_class: dict[int, PitchName] = {}
    for name in names:
        by_class.setdefault(name.pitch_class, name)
    return list(by_class.values())


def _read(pitch: SoundingPitch, key: Key | None) -> Pitch | PitchName:
    if isinstance(pitch, int):
        return spell_note(pitch, key)
    if isinstance(pitch, str):
        return Pitch.read(pitch) if pitch[-1:].isdigit() else PitchName.read(pitch)
    return pitch


def _inversions(names: Sequence[PitchName], key: Key | None) -> Iterator[Naming]:
    bass = names[0]
    for root in names:
        for degrees, chord, cost in _chords_on(root, names, bass, key):
            below = (bass.pitch_class - root.pitch_class) % 12
            in_bass = next(degree for degree in degrees if degree.semitones == below)
            cost_of_bass = _BASS_COST.get(in_bass.number, _COLOUR_IN_BASS)
            place = "the root" if root == bass else f"its {in_bass}"
            reason = f"{_inside(chord, degrees)}, with {place} in the bass"
            yield Naming(chord, 0, cost + cost_of_bass, reason)


def _over_foreign_bass(names: Sequence[PitchName], key: Key | None) -> Iterator[Naming]:
    bass, upper = names[0], names[1:]
    if len(upper) < 2:  # noqa: PLR2004
        return
    for root in upper:
        for degrees, chord, cost in _chords_on(root, upper, bass, key):
            reason = f"{_inside(chord, degrees)}, over {bass}, which is no note of it"
            yield Naming(chord, 0, cost + _FOREIGN_BASS, reason)


def _chords_on(
    root: PitchName, names: Sequence[PitchName], bass: PitchName, key: Key | None
) -> Iterator[tuple[frozenset[ChordDegree], Chord, float]]:
    """Yield what `names` are over `root`: the degrees, the chord and what its kind costs."""
    above = frozenset((name.pitch_class - root.pitch_class) % 12 for name in names)
    for degrees in degrees_over_root(above):
        chord = make_chord(root, degrees, bass)
        cost = _kind_cost(degrees) + _OTHER_SPELLING * len(set(chord.members) - set(names))
        if key is not None and not is_diatonic(chord, key):
            cost += _OUTSIDE_KEY
        yield degrees, chord, cost


@lru_cache(maxsize=4096)
def _kind_cost(degrees: frozenset[ChordDegree]) -> float:
    """Return how far a kind of chord lies from the everyday ones."""
    cost = _NO_THIRD if lacks_third(degrees) else 0.0
    if lacks_fifth(degrees):
        is_shell = {3, 7} <= {degree.number for degree in degrees}
        cost += _NO_FIFTH_OF_SEVENTH if is_shell else _NO_FIFTH
        degrees |= {ChordDegree(5)}
    quality = name_quality(degrees)
    if quality.text in _QUALITY_COST:
        return cost + _QUALITY_COST[quality.text]
    return cost + _QUALITY_COST.get(quality.base, _OTHER_QUALITY) + _MODIFIER * quality.cost


def _inside(chord: Chord, degrees: frozenset[ChordDegree]) -> str:
    """Return what of the chord sounds: its members, and what it goes without."""
    kind = f"{chord.root}{chord.quality}"
    gaps = [
        name for name, lacks in (("third", lacks_third), ("fifth", lacks_fifth)) if lacks(degrees)
    ]
    without = f" without a {' or a '.join(gaps)}" if gaps else ""
    return f"{' '.join(chord.degrees)} of {kind}{without}"


def _adjacent(names: Iterable[PitchName]) -> int:
    """Return the length of the longest row of neighbouring semitones."""
    classes = {name.pitch_class for name in names}
    return max(
        next(n for n in range(1, 13) if (start + n) % 12 not in classes or n == 12)  # noqa: PLR2004
        for start in classes
    )
