"""Which findings stand under a chart, and in which order.

A chart says little: at most five sentences, one on each subject, and none that a chart further up
the page has said in the same words or for the whole song. What the parts do comes first, since
the chords can be read off their symbols; within both, what surprises a listener comes before what
describes. The order is that of `_PARTS` and `_CHORDS`, by the kinds of facts; a kind that stands
in neither comes last.
"""

import re
from collections.abc import Collection, Iterable
from dataclasses import dataclass
from fnmatch import fnmatchcase

from sitegen.analysis.reading import ChartReading, Fact
from sitegen.kinds.named_chords import named_chords
from sitegen.score.chord import Chord

MOST = 5
# What describes more than it surprises is told only where hardly anything else is.
_FEW, _PLAIN = 2, frozenset({"harmonic-rhythm", "hi-hat", "ride", "feel"})
_NAMED = re.compile(r"\b[Bb]ars? (\d+(?:(?:, | and | to )\d+)*)")

# One subject a line, by the last word of the path: only the first that is found there is told.
_PARTS = (
    "root-share chord-tone-share* favourite-degree*",
    "suspensions retardations appoggiaturas anticipations pedals chromatic-notes",
    "pushed-downbeats",
    "lament-bass",
    "sequence longest-figure most-repeated-figure shared-rhythm",
    "climax",
    "largest-leap",
    "answers",
    "with-kick-share",
    "fill",
    "*timeline",
    "backbeat four-on-the-floor snare-pattern",
    "open-hats",
    "ghost-notes",
    "grouping",
    "bar-[0-9]*",
    "scale",
    "*bass-descent *bass-ascent pedal-bass",
    "top-pedal",
    "phrase-contours phrase-starts phrase-lengths",
    "tessitura most-heard*",
    "pattern kick-pattern",
    "repeats-share steps-share thirds-share leaps-share",
    "hi-hat ride",
)
_CHORDS = (
    "key-changes",
    "mode-evidence tonic-bars tonic-chords scale-degrees-missing",
    "lament-bass line-cliche *bass-descent *bass-ascent pedal-bass",
    "third-less-share suspended-share power-chord-share seventh-chord-share inversion-share",
    "borrowed-chords neapolitan augmented-sixths picardy-third",
    "applied-dominants* tritone-substitutes",
    "loop",
    "like",
    "falling-fifths falling-fourths tritone-root-motions semitone-root-motions",
    "chromatic-mediants doubly-chromatic-mediants",
    "pushes",
    "cadence",
    "same-rhythm",
    "common-tone",
    "feel",
    "harmonic-rhythm",
)
# What is true of a whole song is told once a page, whatever bars show it the next time.
_ONCE = frozenset({"mode-evidence", "like", "third-less-share", "feel"})
# Said of all chords together.
_WHOLE = frozenset(_CHORDS[3].split())
# What a part does and the chords do at once: who has told the one does not tell the other.
_SAME = (("pushed-downbeats", "pushes"), ("top-pedal", "common-tone"))


@dataclass(frozen=True)
class Finding:
    """One sentence under a chart, and where in the drawing it is seen.

    `bars` are the numbers of the bars it speaks of, `notes` the ids of notes in them; both are
    empty where it speaks of the whole chart. `chords` are those that the sentence names by their
    symbols.
    """

    path: str
    sentence: str
    bars: tuple[int, ...] = ()
    notes: tuple[str, ...] = ()
    chords: tuple[Chord, ...] = ()


def choose_findings(reading: ChartReading, told: Collection[str] = ()) -> tuple[Finding, ...]:
    """Return what stands under a chart; `told` is what the charts before it have told."""
    chosen: dict[tuple[bool, int], Fact] = {}
    for fact in sorted(_sentences(reading.facts, told), key=_rank):
        chosen.setdefault(_rank(fact)[:2], fact)
    kinds = {_kind(fact.path) for fact in chosen.values()}
    told_twice = {second for first, second in _SAME if first in kinds}
    kept = [fact for fact in chosen.values() if _kind(fact.path) not in told_twice]
    telling = [fact for fact in kept if _kind(fact.path) not in _PLAIN]
    plain = [fact for fact in kept if _kind(fact.path) in _PLAIN]
    best = telling[:MOST] if len(telling) >= _FEW else [*telling, *plain][:_FEW]
    return tuple(_finding(fact, reading) for fact in best)


def told_by(findings: Iterable[Finding]) -> set[str]:
    """Return what the charts after this one need not tell: sentences, and some paths."""
    once = {finding.path for finding in findings if _kind(finding.path) in _ONCE}
    return once | {finding.sentence for finding in findings}


def _sentences(facts: Iterable[Fact], told: Collection[str]) -> list[Fact]:
    return [fact for fact in facts if fact.sentence and not {fact.sentence, fact.path} & set(told)]


def _kind(path: str) -> str:
    """Return a path without the part or the chart it speaks of."""
    return "like" if path.startswith("like.") else path.rpartition(".")[2]


def _rank(fact: Fact) -> tuple[bool, int, int]:
    """Return a fact's place: whether it is of chords, the line of its subject, its place there."""
    kind = _kind(fact.path)
    of_chords = kind == "like" or "." not in fact.path
    subjects = _CHORDS if of_chords else _PARTS
    found = (
        (line, place)
        for line, subject in enumerate(subjects)
        for place, pattern in enumerate(subject.split())
        if fnmatchcase(kind, pattern)
    )
    return of_chords, *next(found, (len(subjects), 0))


def _finding(fact: Fact, reading: ChartReading) -> Finding:
    """Return a fact as it is told; what is seen in every bar and no note points nowhere."""
    notes = tuple(dict.fromkeys(note for place in fact.evidence for note in place.notes))
    bars = {place.bar for place in fact.evidence}
    if fact.evidence and _kind(fact.path) != "like":
        bars |= _bars_named(fact.sentence)
    everywhere = bars >= {bar.number for bar in reading.chart.bars} or fact.path in _WHOLE
    pointed = () if everywhere and not notes else tuple(sorted(bars))
    return Finding(fact.path, fact.sentence, pointed, notes, _chords_named(fact, reading))


def _chords_named(fact: Fact, reading: ChartReading) -> tuple[Chord, ...]:
    """Return the chords in a fact's sentence; what is told of a part can speak of its notes."""
    part = fact.path.rpartition(".")[0]
    pitches = {str(read.note.pitch) for read in reading.notes if _hyphened(read.part) == part}
    return named_chords(fact.sentence, pitches)


def _hyphened(part: str) -> str:
    """Return a part's name as paths have it."""
    return part.replace(" ", "-")


def _bars_named(sentence: str) -> set[int]:
    """Return the bars that a sentence names: those are marked, whatever else shows the fact."""
    bars: set[int] = set()
    for named in _NAMED.findall(sentence):
        for stretch in re.split(", | and ", named):
            first, *last = map(int, stretch.split(" to "))
            bars.update(range(first, (last or [first])[0] + 1))
    return bars
