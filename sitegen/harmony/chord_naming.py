"""Names for notes that sound together: ranked readings, each with its reason."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from sitegen.harmony.arguments import AnyKey, as_key
from sitegen.harmony.candidates import Candidate, candidates
from sitegen.harmony.naming_words import say_cluster, say_interval, say_melody, say_no_chord
from sitegen.harmony.scales import is_diatonic
from sitegen.harmony.sounding import (
    Melody,
    Sounding,
    SoundingPitch,
    hear,
    is_row_of_seconds,
    longest_row_of_semitones,
)
from sitegen.score.chord import Chord
from sitegen.score.key import Key

_OUTSIDE_KEY = 0.3
_ON_TONIC = -0.15
# Spelling breaks ties, no more: lists of notes are often spelled by habit.
_OTHER_SPELLING, _MOST_SPELLINGS = 0.1, 2
# Twelve fifths up is the same note by another name.
_ENHARMONIC, _RESPELLINGS = 12, range(-2, 3)
# Where a cluster stands among the chords that could be read into it: three neighbouring semitones
# are hardly ever a chord, a row of seconds can be one (common practice, no source).
_CLUSTER_OF_SEMITONES, _CLUSTER_OF_SECONDS = 1.0, 1.7
_FEWEST_OF_CLUSTER = 3
_INTERVAL_COST = 2.0
# Readings that cost so much more than the first are left out.
_FARTHEST = 3.0
_FEWEST = 2


@dataclass(frozen=True)
class Naming:
    """One reading of notes that sound together.

    `chord` is None for notes that make a cluster or a bare interval and no chord; `rank` counts
    from 1; `cost` is what the ranking compares; `reason` says in words how the notes fit;
    `without` names the degrees of the chord that do not sound though its symbol says nothing of
    it, which is the root of a rootless reading and else nothing.
    """

    chord: Chord | None
    rank: int
    cost: float
    reason: str
    without: tuple[str, ...] = ()


def name_chord(
    pitches: Sequence[SoundingPitch], key: AnyKey | None = None, melody: Melody = "in"
) -> tuple[Naming, ...]:
    """Return the chords that `pitches` can be, the likeliest first.

    The bass is the lowest pitch, or the first where one has no octave; order and doublings do
    not count. Tried on every root are chords in root position and inversion, without fifth or
    third, over a bass that is no note of them, and, ranked low, chords whose root does not sound.

    - The bass decides between everyday chords of the same notes: C6 or Am7, Csus2 or Gsus4,
      Gm6 or Em7♭5. An inversion of an everyday chord outranks a rare chord on the bass: F/A and
      not Am♯5, Fmaj7/A and not Am♭6.
    - Where bass and upper chord both have a name, the fuller one is taken: Dm7 over G is G9sus4,
      F over G is F/G, with G9sus4no5 after it. A ninth in the bass is a slash chord, C/D.
    - `key` prefers chords of the key and on its tonic, and spells MIDI numbers; without it the
      root of MIDI numbers is the one with the fewest accidentals in its chord.
    - Three or more neighbouring semitones are a cluster; so, behind chords that are near at hand,
      are three or more notes in a row of seconds within a fifth.
    - With `melody="out"` the top note, the last where a pitch has no octave, is left out of the
      chord, unless another voice doubles it, and named over it.

    Fewer than two different notes are no chord and give nothing. Raises ValueError for text that
    is no pitch or no key.
    """
    home = as_key(key) if key is not None else None
    sounding = hear(pitches, home, melody)
    if len(sounding.names) < _FEWEST:
        return ()
    found = [_weigh(candidate, sounding, home) for candidate in candidates(sounding)]
    found.extend(_no_chords(sounding, bool(found)))
    found.sort(key=_order)
    near = [reading for reading in found if reading.cost <= found[0].cost + _FARTHEST]
    return tuple(_finish(reading, rank, sounding) for rank, reading in enumerate(near, 1))


def _order(reading: Naming) -> tuple[float, int, str]:
    """Return what ranks a reading; of equals, the root nearest above the bass comes first.

    No name of a note takes part, so that the order is the same in every key.
    """
    if reading.chord is None:
        return round(reading.cost, 2), 0, ""
    chord = reading.chord
    distance = (chord.root.pitch_class - chord.bass.pitch_class) % 12
    return round(reading.cost, 2), distance, chord.quality


def _weigh(candidate: Candidate, sounding: Sounding, key: Key | None) -> Naming:
    """Return a candidate as a reading, with what its spelling and its key cost it."""
    chord, cost = candidate.chord, candidate.cost
    if sounding.spelled:
        cost += _OTHER_SPELLING * min(_spelled_otherwise(chord, sounding), _MOST_SPELLINGS)
    if key is not None:
        cost += 0.0 if is_diatonic(chord, key) else _OUTSIDE_KEY
        cost += _ON_TONIC if chord.root == key.tonic else 0.0
    return Naming(chord, 0, cost, candidate.reason, candidate.without)


def _spelled_otherwise(chord: Chord, sounding: Sounding) -> int:
    """Return how many of the names that sound are no members of the chord.

    The chord counts in whichever enharmonic name of it fits best, D♭ or C♯: which of them is
    printed hangs on the signs it would need, and must not rank it higher in one key than another.
    """
    heard = {name.fifths for name in sounding.names}
    members = {name.fifths for name in chord.members}
    respelled = ({fifth + _ENHARMONIC * n for fifth in members} for n in _RESPELLINGS)
    return min(len(heard - fifths) for fifths in respelled)


def _no_chords(sounding: Sounding, has_chords: bool) -> Iterator[Naming]:
    names = sounding.names
    if len(names) < _FEWEST_OF_CLUSTER:
        yield Naming(None, 0, _INTERVAL_COST, say_interval(names))
        return
    if longest_row_of_semitones(sounding.classes) >= _FEWEST_OF_CLUSTER:
        yield Naming(None, 0, _CLUSTER_OF_SEMITONES, say_cluster(names))
    elif is_row_of_seconds(sounding.classes):
        yield Naming(None, 0, _CLUSTER_OF_SECONDS, say_cluster(names))
    elif not has_chords:
        yield Naming(None, 0, _CLUSTER_OF_SECONDS, say_no_chord(names))


def _finish(reading: Naming, rank: int, sounding: Sounding) -> Naming:
    reason = reading.reason
    if sounding.melody is not None:
        reason += say_melody(sounding.melody, reading.chord)
    return replace(reading, rank=rank, cost=round(reading.cost, 2), reason=reason)
