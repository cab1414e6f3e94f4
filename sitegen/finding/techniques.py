"""Techniques by the names that they are filed under, each told by a fact of the engine.

The limits between much and little are our own choice, no source; they stand in this table and
nowhere else.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from fractions import Fraction

from sitegen.analysis.reading import Fact
from sitegen.finding.entry import Technique

_FEWEST_IN_CHAIN = 3
_HIGH, _LOW = Fraction(4, 5), Fraction(1, 2)
_BUSY, _CALM = Fraction(1, 2), Fraction(1, 10)
_MOSTLY = Fraction(1, 2)

Test = Callable[[Fact], bool]


@dataclass(frozen=True)
class Sign:
    """A technique and the fact that shows it, by the end of the fact's path.

    With `part`, the fact is one of a part ("voice.pushes").
    """

    path: str
    name: str
    holds: Test
    part: bool = False


def _some(fact: Fact) -> bool:
    return isinstance(fact.value, str) or fact.value > 0


def _at_least(limit: Fraction | int) -> Test:
    return lambda fact: not isinstance(fact.value, str) and fact.value >= limit


def _at_most(limit: Fraction) -> Test:
    return lambda fact: not isinstance(fact.value, str) and fact.value <= limit


def _says(*words: str) -> Test:
    return lambda fact: any(word in str(fact.value) for word in words)


def _mostly(word: str) -> Test:
    """Return a test of `2 early, 1 on`: whether this word has more than half of all."""

    def holds(fact: Fact) -> bool:
        counts = [item.split(maxsplit=1) for item in str(fact.value).split(", ")]
        all_ = sum(int(count) for count, _ in counts)
        return sum(int(count) for count, what in counts if what == word) > _MOSTLY * all_

    return holds


SIGNS: tuple[Sign, ...] = (
    Sign("borrowed-chords", "borrowed chords", _some),
    Sign("applied-dominants", "applied dominants", _some),
    Sign("tritone-substitutes", "tritone substitutes", _some),
    Sign("neapolitan", "Neapolitan chord", _some),
    Sign("augmented-sixths", "augmented sixths", _some),
    Sign("picardy-third", "Picardy third", _some),
    Sign("tritone-root-motions", "tritone root motion", _some),
    Sign("chromatic-mediants", "chromatic mediants", _some),
    Sign("doubly-chromatic-mediants", "chromatic mediants", _some),
    Sign("falling-fifths", "chain of falling fifths", _at_least(_FEWEST_IN_CHAIN)),
    Sign("falling-fourths", "chain of falling fourths", _at_least(_FEWEST_IN_CHAIN)),
    Sign("lament-bass", "lament bass", _some),
    Sign("lament-bass", "lament bass", _some, part=True),
    Sign("chromatic-bass-descent", "chromatic bass line", _some),
    Sign("chromatic-bass-ascent", "chromatic bass line", _some),
    Sign("chromatic-bass-descent", "chromatic bass line", _some, part=True),
    Sign("chromatic-bass-ascent", "chromatic bass line", _some, part=True),
    Sign("pedal-bass", "pedal bass", _some),
    Sign("pedal-bass", "pedal bass", _some, part=True),
    Sign("top-pedal", "pedal at the top", _some, part=True),
    Sign("line-cliche", "line cliché", _some),
    Sign("third-less-share", "chords without thirds", _at_least(_MOSTLY)),
    Sign("inversions", "inversions", _some),
    Sign("pushes", "chords ahead of the bar", _some),
    Sign("key-changes", "change of key", _some),
    Sign("meter-changes", "change of meter", _some),
    Sign("pickup", "pickup", _some),
    Sign("chord-tone-share", "mostly chord tones", _at_least(_HIGH), part=True),
    Sign("chord-tone-share", "few chord tones", _at_most(_LOW), part=True),
    Sign("syncopation-per-onset", "much syncopation", _at_least(_BUSY), part=True),
    Sign("syncopation-per-onset", "little syncopation", _at_most(_CALM), part=True),
    Sign("phrase-starts", "phrases that start late", _mostly("late"), part=True),
    Sign("phrase-starts", "phrases that start early", _mostly("early"), part=True),
    Sign("suspensions", "suspensions", _some, part=True),
    Sign("appoggiaturas", "appoggiaturas", _some, part=True),
    Sign("sequence", "melodic sequence", _some, part=True),
    Sign("answers", "call and response", _some, part=True),
    Sign("backbeat", "half-time backbeat", _says("half"), part=True),
    Sign("backbeat", "double-time backbeat", _says("double"), part=True),
    Sign("four-on-the-floor", "four on the floor", _some, part=True),
    Sign("ghost-notes", "ghost notes", _some, part=True),
)
_OF_VOICES = frozenset({"chord-tone-share", "phrase-starts"})
"""What is filed of a tune only: of a bass or of chords it says little."""


def find_techniques(facts: Iterable[Fact], tunes: Iterable[str]) -> tuple[Technique, ...]:
    """Return the techniques in the facts of one chart; `tunes` are its melodies' path prefixes."""
    sung = frozenset(tunes)
    bars: dict[str, set[int]] = {}
    for fact in facts:
        head, dot, end = fact.path.rpartition(".")
        for sign in SIGNS:
            if sign.path != end or sign.part != bool(dot) or not sign.holds(fact):
                continue
            if end not in _OF_VOICES or head in sung:
                bars.setdefault(sign.name, set()).update(place.bar for place in fact.evidence)
    return tuple(Technique(name, tuple(sorted(seen))) for name, seen in bars.items())
