"""Applied chords in a line: what each chord is applied to, with the chords after it in view.

To what `sitegen.harmony.applied` says of a chord by itself, the line adds:

- A triad outside the key is applied only when it resolves (`resolution.resolves`); D in C is V/V
  before G and II before F, as rock writers have it (de Clercq and Temperley 2011 name all roots
  against the major scale; from memory). Seventh and diminished chords stay applied, for they
  point where they do not go; but a half-diminished one that does not resolve is named by its
  root, ♯ivø7.
- C7 in C is V7/IV on its way to IV, and I7 where it is at home: all through a line in which it
  goes elsewhere, or in which IV7 shows a blues.
- A dominant seventh of the key, or of no key, is applied when it falls a fifth to a chord that
  is not the tonic: ♭VII7 before ♭III in minor is V7/♭III, E♭7 before A♭ in C is V7/♭VI. IV7
  before ♭VII is so only in minor, since elsewhere it is the blues' own chord.
- In minor keys triads are applied where they bring a leading tone that resolves: the tonic's
  major triad before iv; ♭VII6 before ♭III, the relative major; the diminished triads, ii° before
  ♭III and vi° before ♭VII (Kostka and Payne, secondary functions; from memory). Other inversions
  and root positions of the key's own triads stay as they are, ♭VII ♭III and ♭III6 ♭VI. After a
  cadence from V the major tonic is the Picardy I, wherever it goes on to.
- A dominant seventh that falls a semitone is a tritone substitute: subV7 before the tonic,
  subV7/ii before ii, as jazz teaching has it. On ♭6 before V it is an augmented sixth first.
- A minor or half-diminished seventh a fifth above an applied dominant that follows and resolves
  is its ii, as in jazz teaching: ii7/IV V7/IV IV. A minor seventh of the key stays its own
  degree, vi7 V7/V V, unless the line comes from that goal too, V ii7/V V7/V V.
- A suspended chord before an applied dominant on its root belongs to it: V7sus4/ii V7/ii.
- Chains are named against the key only, V7/ii V7/V V7, never V7/V/V.
"""

from collections.abc import Sequence

from sitegen.harmony.applied import (
    DIMINISHED_TRIAD,
    FOURTH,
    SEMITONE,
    Target,
    find_target,
    is_dominant_seventh,
    is_leading,
    is_major_triad,
    target_at,
)
from sitegen.harmony.chord_degree import ChordDegree
from sitegen.harmony.resolution import find_answer, resolves, semitones_up
from sitegen.harmony.scales import is_diatonic
from sitegen.score.chord import Chord
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

_SUBDOMINANT, _DOMINANT = ChordDegree(4), ChordDegree(5)
_FALLING_SEMITONE = 11


def find_goals(line: Sequence[Chord], key: Key) -> tuple[Target | None, ...]:
    """Return what each chord of a line is applied to; None for a chord of its own degree.

    A chord that repeats the one before it is expected to be left out of the line.
    """
    tonic_is_seventh = _has_home_seventh(line, key)
    goals: list[Target | None] = [None] * (len(line) + 1)
    for place in reversed(range(len(line))):
        if tonic_is_seventh and _is_tonic_seventh(line[place], key):
            continue
        if _ends_cadence(line, place, key):
            continue
        goals[place] = _prepared(line, place, key, goals[place + 1]) or _goal(
            line[place], find_answer(line[place], line[place + 1 :]), key
        )
    return tuple(goals[:-1])


def _has_home_seventh(line: Sequence[Chord], key: Key) -> bool:
    """Tell whether the tonic's seventh chord is at home in the line, as in the blues."""
    fourth = _SUBDOMINANT.above(key.tonic)
    for place, chord in enumerate(line):
        answer = find_answer(chord, line[place + 1 :])
        if not is_dominant_seventh(chord) or answer is None:
            continue
        if chord.root == key.tonic and not resolves(chord, fourth, answer, key):
            return True
        if chord.root == fourth and semitones_up(key.tonic, answer.root) == 0:
            return True
    return False


def _ends_cadence(line: Sequence[Chord], place: int, key: Key) -> bool:
    """Tell whether a major tonic triad ends a cadence from V, both roots in the bass."""
    chord = line[place]
    if chord.root != key.tonic or chord.bass != chord.root or not is_major_triad(chord):
        return False
    before = find_answer(chord, reversed(line[:place]))
    return before is not None and before.root == before.bass == _DOMINANT.above(key.tonic)


def _is_tonic_seventh(chord: Chord, key: Key) -> bool:
    return chord.root == key.tonic and is_dominant_seventh(chord)


def _prepared(line: Sequence[Chord], place: int, key: Key, later: Target | None) -> Target | None:
    """Return the goal that a chord shares with the applied dominant it prepares."""
    if later is None or later.numeral != "V":
        return None
    chord, dominant = line[place], line[place + 1]
    if chord.root == dominant.root and "4" in chord.degrees:
        return later
    after = find_answer(dominant, line[place + 2 :])
    if chord.root != _DOMINANT.above(dominant.root) or not {"♭3", "♭7"} <= set(chord.degrees):
        return None
    if after is None or not resolves(dominant, later.name, after, key):
        return None
    from_goal = place > 0 and line[place - 1].root == later.name
    if "♭5" not in chord.degrees and is_diatonic(chord, key) and not from_goal:
        return None
    return Target("ii", later.name, later.small)


def _goal(chord: Chord, answer: Chord | None, key: Key) -> Target | None:
    target = find_target(chord, key)
    if answer is None:
        return target
    if target is None:
        return _falling(chord, answer, key) or _rising(chord, answer, key)
    if resolves(chord, target.name, answer, key):
        return target
    if is_dominant_seventh(chord):
        return _substitute(chord, answer, key) or target
    stays = is_leading(chord) and "♭7" not in chord.degrees
    return target if stays else None


def _falling(chord: Chord, answer: Chord, key: Key) -> Target | None:
    """Return the goal of a chord that leads to it by a fall, of a fifth or of a semitone."""
    goal = FOURTH.above_name(chord.root)
    falls_fifth = semitones_up(goal, answer.root) == 0 and "♭5" not in answer.degrees
    if not falls_fifth or goal == key.tonic:
        return _substitute(chord, answer, key) if is_dominant_seventh(chord) else None
    if is_dominant_seventh(chord):
        is_own = chord.root in (key.tonic, _SUBDOMINANT.above(key.tonic))
        is_applied = key.mode == "minor" or not is_own
    else:
        is_applied = key.mode == "minor" and _brings_leading_tone(chord, key)
    return _target("V", goal, answer, key) if is_applied else None


def _brings_leading_tone(chord: Chord, key: Key) -> bool:
    """Tell whether a major triad brings that of iv in minor, or in its bass that of ♭III."""
    is_seventh_degree = chord.root == key.scale[6] and chord.bass == key.scale[1]
    return is_major_triad(chord) and (chord.root == key.tonic or is_seventh_degree)


def _rising(chord: Chord, answer: Chord, key: Key) -> Target | None:
    """Return the goal of a diminished triad that leads up to it by a semitone."""
    goal = SEMITONE.above_name(chord.root)
    if set(chord.degrees) != DIMINISHED_TRIAD or goal == key.tonic:
        return None
    return None if semitones_up(goal, answer.root) else _target("vii", goal, answer, key)


def _substitute(chord: Chord, answer: Chord, key: Key) -> Target | None:
    """Return the goal of a dominant seventh a semitone above it, which is of the scale."""
    if semitones_up(chord.root, answer.root) != _FALLING_SEMITONE or answer.root not in key.scale:
        return None
    return target_at("subV", answer.root, key)


def _target(numeral: str, name: PitchName, answer: Chord, key: Key) -> Target:
    """Return a target that sounds as `answer`: its chord decides where the scale does not."""
    return target_at(numeral, name, key) or Target(numeral, name, small="♭3" in answer.degrees)
