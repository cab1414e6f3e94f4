"""A technique is filed where a fact of the engine shows it, and only there."""

from fractions import Fraction
from pathlib import Path

import pytest

from sitegen.analysis.reading import Fact, Place
from sitegen.finding import Technique
from sitegen.finding.techniques import SIGNS, find_techniques

README = Path(__file__).parents[3] / "README.md"
HERE = (Place(3, Fraction(1)), Place(2, Fraction(2)), Place(3, Fraction(4)))


def names(*facts: Fact, tunes: tuple[str, ...] = ("voice",)) -> set[str]:
    return {technique.name for technique in find_techniques(facts, tunes)}


def test_its_bars_are_those_of_the_evidence() -> None:
    found = find_techniques([Fact("borrowed-chords", 2, "2", "", HERE)], ())
    assert found == (Technique("borrowed chords", (2, 3)),)


def test_two_facts_of_one_technique_are_one() -> None:
    first = Fact("chromatic-mediants", 1, "1", "", HERE[:1])
    second = Fact("doubly-chromatic-mediants", 1, "1", "", HERE[1:2])
    assert find_techniques([first, second], ()) == (Technique("chromatic mediants", (2, 3)),)


@pytest.mark.parametrize(
    ("fact", "name"),
    [
        (Fact("voice.chord-tone-share", Fraction(4, 5), ""), "mostly chord tones"),
        (Fact("voice.chord-tone-share", Fraction(1, 2), ""), "few chord tones"),
        (Fact("voice.chord-tone-share", Fraction(3, 5), ""), ""),
        (Fact("guitar.chord-tone-share", Fraction(1), ""), ""),
        (Fact("voice.phrase-starts", "3 late, 1 on", ""), "phrases that start late"),
        (Fact("voice.phrase-starts", "1 late, 1 on", ""), ""),
        (Fact("voice.phrase-starts", "2 early", ""), "phrases that start early"),
        (Fact("drums.backbeat", "half-time", ""), "half-time backbeat"),
        (Fact("drums.backbeat", "backbeat", ""), ""),
        (Fact("falling-fifths", 2, ""), ""),
        (Fact("falling-fifths", 3, ""), "chain of falling fifths"),
        (Fact("tritone-root-motions", 0, ""), ""),
        (Fact("voice.syncopation-per-onset", Fraction(1, 20), ""), "little syncopation"),
    ],
)
def test_the_limits_are_those_of_the_table(fact: Fact, name: str) -> None:
    assert names(fact) == ({name} if name else set())


def test_every_sign_names_facts_that_the_author_can_look_up() -> None:
    told = README.read_text(encoding="utf-8")
    unknown = [
        sign.path
        for sign in SIGNS
        if f"`{sign.path}`" not in told and f">.{sign.path}`" not in told
    ]
    assert unknown == []
