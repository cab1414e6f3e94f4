"""Cadences at the end of each section and of the chart.

By the last two chords on different roots, the last with its root in the bass (IV over that bass
already is a neighbour chord and no plagal cadence):

- authentic: V (with its third, or V7) or vii° to I; half: ends on V; plagal: IV to I; deceptive: V
  to vi or ♭VI. Kostka and Payne, *Tonal Harmony*, the chapter on cadences, from memory. A half
  cadence from iv6 in minor is Phrygian.
- backdoor: ♭VII7 to a major I, as jazz teaching has it (common practice, no source); subtonic:
  ♭VII without that seventh, or before a minor tonic.
- double plagal: ♭VII IV I. W. Everett, *The Foundations of Rock* (2009), from memory.

Melody and phrase are not looked at: perfect and imperfect are not told apart, and V at the end of
a loop that starts again with I is called half as well. Other endings have no name.
"""

from collections.abc import Sequence

from sitegen.analysis.chord_techniques.functions import KeyedLine
from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact
from sitegen.analysis.roots.chord_line import HeldChord, by_root, ticks
from sitegen.analysis.roots.wording import places_of
from sitegen.harmony.applied import is_leading
from sitegen.harmony.resolution import semitones_up
from sitegen.score.chart import Chart
from sitegen.score.chord import Chord
from sitegen.score.key import Key

_TONIC, _FOURTH, _FIFTH, _FLAT_SIXTH, _SIXTH, _FLAT_SEVENTH, _LEADING = 0, 5, 7, 8, 9, 10, 11
_TOLD = {
    "plagal": "The chords end with a plagal cadence, {0} to {1}.",
    "double plagal": "The chords end with a double plagal cadence, {0} to {1}.",
    "deceptive": "The chords end with a deceptive cadence: {0} goes to {1}.",
    "backdoor": "The chords end with a backdoor cadence, {0} to {1}.",
    "half": "The chords end open, on the dominant {1}.",
    "Phrygian half": "The chords end with a Phrygian half cadence, {0} to {1}.",
}

Cadence = tuple[str, Sequence[HeldChord]]
"""Its name, and the chords that make it."""


def cadence_facts(line: KeyedLine, chart: Chart) -> list[Fact]:
    """Return the cadence at the end, and all of them where sections end before."""
    chords = [each.held for each in line.chords]
    starts = [ticks(section.onset) for section in chart.sections]
    ends = [[held for held in chords if held.home_onset < start] for start in starts]
    found = [_find(stretch, line.key) for stretch in ends if stretch]
    last = _find(chords, line.key)
    facts = [_last(last)] if last else []
    named = [cadence for cadence in (*found, last) if cadence]
    return [*facts, _all(named)] if len(named) > 1 else facts


def _find(chords: Sequence[HeldChord], key: Key) -> Cadence | None:
    """Return the cadence that chords end with."""
    roots = by_root(chords)
    if len(roots) < 2:  # noqa: PLR2004 - a cadence takes two roots
        return None
    # The last chord is the one that ends: G7sus4 G7 ends on G7.
    before = chords[chords.index(roots[-1]) - 1]
    name = _name(before.chord, chords[-1].chord, key)
    if name == "plagal" and _is_double(roots, key):
        return "double plagal", (*roots[-3:-1], chords[-1])
    return (name, (before, chords[-1])) if name else None


def _is_double(roots: Sequence[HeldChord], key: Key) -> bool:
    earlier = roots[-3:-2]
    return bool(earlier) and _above(earlier[0].chord, key) == _FLAT_SEVENTH


def _name(before: Chord, last: Chord, key: Key) -> str:
    if last.bass != last.root:
        return ""
    goal = _above(last, key)
    if goal == _TONIC:
        return _closing(before, last, key)
    if goal == _FIFTH and "3" in last.degrees:
        return "Phrygian half" if _is_phrygian(before, key) else "half"
    if _is_dominant(before, key) and before.bass == before.root:
        from_minor = goal == _FLAT_SIXTH and "3" in last.degrees
        from_major = goal == _SIXTH and "♭3" in last.degrees and not key.is_minor
        return "deceptive" if from_minor or from_major else ""
    return ""


def _closing(before: Chord, last: Chord, key: Key) -> str:
    """Return the cadence by which a chord goes to the tonic."""
    start = _above(before, key)
    if _is_dominant(before, key) or (start == _LEADING and is_leading(before)):
        return "authentic"
    if start == _FOURTH:
        return "plagal" if before.bass != last.root else ""
    if start != _FLAT_SEVENTH:
        return ""
    is_backdoor = {"3", "♭7"} <= set(before.degrees) and "♭3" not in last.degrees
    return "backdoor" if is_backdoor and not key.is_minor else "subtonic"


def _is_dominant(chord: Chord, key: Key) -> bool:
    return _above(chord, key) == _FIFTH and "3" in chord.degrees


def _is_phrygian(before: Chord, key: Key) -> bool:
    """Tell whether a chord is iv6 of a minor key, ♭6 in the bass."""
    in_bass = semitones_up(key.tonic, before.bass) == _FLAT_SIXTH
    return key.is_minor and _above(before, key) == _FOURTH and in_bass


def _above(chord: Chord, key: Key) -> int:
    return semitones_up(key.tonic, chord.root)


def _last(cadence: Cadence) -> Fact:
    name, chords = cadence
    sentence = _TOLD.get(name, "").format(chords[-2].chord, chords[-1].chord)
    return Fact("cadence", name, name, "", places_of(chords), sentence)


def _all(cadences: Sequence[Cadence]) -> Fact:
    text = ", ".join(f"{name} in {bars_said([chords[-1].home])}" for name, chords in cadences)
    places = places_of(held for _, chords in cadences for held in chords)
    return Fact("cadences", text, text, "", places)
