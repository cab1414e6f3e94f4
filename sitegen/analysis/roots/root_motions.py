"""How roots move: a tally by interval, chains of fifths, thirds, tritones, semitones.

Paths, all of the chart as written (repeats not written out; a second ending follows what stands
before the first). A repeated root is no motion, N.C. is read across:

- `root-motions`: every motion by its interval, the commonest first: "up a fourth 3, down a tone 1"
- `fifth-falls`, `fifth-fall-share`: roots that fall a fifth, their share of all root motions
- `fourth-falls`: roots that fall a fourth
- `falling-fifths`, `falling-fourths`: roots in the longest chain of them, three or more
- `tritone-root-motions`, `semitone-root-motions`: how many there are
- `chromatic-mediants`, `doubly-chromatic-mediants`, `diatonic-thirds`: triads a third apart
- `common-tone`: the note that all chords of the longest such stretch share, four chords or more
"""

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from itertools import chain, pairwise

from sitegen.analysis.reading import ChartReading, Fact, Place
from sitegen.analysis.roots.chord_line import HeldChord, Passage, by_root, find_passages
from sitegen.analysis.roots.common_tones import common_tone_facts
from sitegen.analysis.roots.fifth_chains import chain_facts, chained_tritones
from sitegen.analysis.roots.mediants import mediant_facts
from sitegen.analysis.roots.wording import count_fact, stretch_said
from sitegen.analysis.wording import percent
from sitegen.harmony import root_motion
from sitegen.harmony.scales import is_diatonic
from sitegen.score.key import Key

_UP_A_SEMITONE, _UP_A_FOURTH, _TRITONE, _UP_A_FIFTH, _DOWN_A_SEMITONE = 1, 5, 6, 7, 11

Motion = tuple[HeldChord, HeldChord]
"""Two chords that follow each other on different roots."""


def find_root_motions(reading: ChartReading) -> tuple[Fact, ...]:
    """Return what the roots of a chart's chords do."""
    passages = find_passages(reading)
    lines = [by_root(passage) for passage in passages]
    motions = list(chain.from_iterable(pairwise(line) for line in lines))
    if not motions:
        return ()
    return (
        _tally(motions),
        *_fifth_facts(motions),
        *chain_facts(lines),
        *_tritone_facts(lines, motions, reading.chart.key),
        *_semitone_facts(passages, reading.chart.key),
        *mediant_facts(reading, passages),
        *common_tone_facts(passages),
    )


def _tally(motions: Sequence[Motion]) -> Fact:
    counts = Counter(root_motion(first.chord, second.chord) for first, second in motions)
    text = ", ".join(f"{words} {count}" for words, count in counts.most_common())
    return Fact("root-motions", text, text, "", _arrivals(motions))


def _fifth_facts(motions: Sequence[Motion]) -> list[Fact]:
    facts = []
    falls = _moving(motions, _UP_A_FOURTH)
    if falls:
        share = Fraction(len(falls), len(motions))
        facts = [
            count_fact("fifth-falls", falls),
            Fact(
                "fifth-fall-share",
                share,
                percent(share),
                "of root motions",
                tuple(held.place for held in falls),
            ),
        ]
    plagal = _moving(motions, _UP_A_FIFTH)
    return [*facts, count_fact("fourth-falls", plagal)] if plagal else facts


def _tritone_facts(
    lines: Sequence[Sequence[HeldChord]], motions: Sequence[Motion], key: Key | None
) -> list[Fact]:
    found = [motion for motion in motions if _size(motion) == _TRITONE]
    if not found:
        return []
    usual = chained_tritones(lines)
    telling = [m for m in found if m[1].number not in usual and not _is_in_scale(m, key)]
    sentence = ""
    if telling:
        first, second = telling[0]
        where = stretch_said([second])
        sentence = (
            f"{where}: the root moves a tritone, from {first.chord.root} to {second.chord.root}."
        )
    return [count_fact("tritone-root-motions", [m[1] for m in found], sentence=sentence)]


def _is_in_scale(motion: Motion, key: Key | None) -> bool:
    return key is not None and all(held.chord.root in key.scale for held in motion)


def _semitone_facts(passages: Sequence[Passage], key: Key | None) -> list[Fact]:
    found = [
        motion
        for motion in chain.from_iterable(map(pairwise, passages))
        if _size(motion) in (_UP_A_SEMITONE, _DOWN_A_SEMITONE)
    ]
    if not found:
        return []
    alike = [
        motion
        for motion in found
        if motion[0].chord.quality == motion[1].chord.quality and not _is_of_the_key(motion, key)
    ]
    sentence = _shifted(alike[0]) if alike else ""
    return [count_fact("semitone-root-motions", [m[1] for m in found], sentence=sentence)]


def _is_of_the_key(motion: Motion, key: Key | None) -> bool:
    return key is not None and all(is_diatonic(held.chord, key) for held in motion)


def _shifted(motion: Motion) -> str:
    first, second = motion
    way = "higher" if _size(motion) == _UP_A_SEMITONE else "lower"
    names = f"{first.chord} to {second.chord}"
    return f"{stretch_said([second])}: {names}, the same kind of chord a semitone {way}."


def _moving(motions: Sequence[Motion], semitones: int) -> list[HeldChord]:
    return [motion[1] for motion in motions if _size(motion) == semitones]


def _size(motion: Motion) -> int:
    """Return the semitones up from root to root, 1 to 11."""
    return (motion[1].root - motion[0].root) % 12


def _arrivals(motions: Sequence[Motion]) -> tuple[Place, ...]:
    return tuple(second.place for _, second in motions)
