"""What progressions have in common, in words."""

import pytest
from unit.harmony.progressions.bars_aloud import bars

from sitegen.harmony.progressions import compare, say_differences, say_likeness

LOOP = "C | G | Am | F | C | G | Am | F"


@pytest.mark.parametrize(
    ("first", "second", "words"),
    [
        (
            LOOP,
            "A | E | F#m | D | A | E | F#m | D",
            "the same four-chord loop, a minor third lower",
        ),
        (LOOP, "A | E | F#m | D", "the same four chords, a minor third lower"),
        (LOOP, "Am | F | C | G", "the same four chords, starting from the third chord"),
        ("C | F | C | G", "C | F | C | G", "the same changes"),
        ("C | F | G", "C | C | F | F | G | G", "the same three chords, each twice as long"),
        ("C | F | G", "C C C F | G", "the same three chords"),
        ("C | Am | F", "F# | D#m | B", "the same three chords, a tritone away"),
        (
            "A5 | E5 | B5",
            "Esus2 | B5 | A5",
            "the same three chords, starting from the second chord, with Esus2 for E5",
        ),
        ("C | Am | Dm | G", "C6 | Am7 | Dm7 | G7", "the same four chords, but for extensions"),
        ("C | C7 | F", "C | F", "the same two chords, but for extensions"),
        ("C | Am | Dm | G", "Am | Dm", "the chords of bars 2 and 3 of the other"),
        ("Am | Dm | G", "C | Am | Dm | G", "the same chords in bars 2 to 4"),
        (
            "C | Am | Dm | G | C | Am | Dm | E",
            "C | Am | Dm | G | C | Am | F | E",
            "the same chords, with F for Dm in bar 7",
        ),
        (
            "C | Am | F | G | C | F",
            "D | Bm | G | E7 A7 | D | G",
            (
                "the same chords, a whole tone higher, "
                "with an extra E7 in bar 4 and A7 for A in bar 4"
            ),
        ),
        ("Am | Dm | G | C | F | E", "Am | Dm | G | F | E", "the same chords, with one C fewer"),
        ("C | Am Dm G | F", "Am | Dm | G", "the chords of bar 2 of the other"),
        (
            "C | Am Dm | G | F",
            "Dm | G | F | C | Am",
            "the same five chords, starting from the third chord",
        ),
        ("C | F", "F#m | B", "other chords"),
    ],
)
def test_a_likeness_is_told_as_a_musician_would(first: str, second: str, words: str) -> None:
    assert say_likeness(compare(bars(first), bars(second))) == words


@pytest.mark.parametrize(
    ("first", "second", "words"),
    [
        (
            LOOP,
            "G | Am | F | C",
            "the same four chords as Example 4, starting from the second chord",
        ),
        ("C | Am | Dm | G", "Am | Dm", "the chords of bars 2 and 3 of Example 4"),
        ("Am | Dm", "C | Am | Dm | G", "the chords of Example 4 in bars 2 and 3"),
        (
            f"{LOOP} | Dm | E",
            "Am7 | F | C | G",
            (
                "the same four chords as the loop of Example 4, starting from the third chord, "
                "with Am7 for Am"
            ),
        ),
        (
            "Am7 | F | C | G",
            f"{LOOP} | Dm | E",
            (
                "in its loop the same four chords as Example 4, starting from the third chord, "
                "with Am for Am7"
            ),
        ),
    ],
)
def test_the_other_one_is_named(first: str, second: str, words: str) -> None:
    assert say_likeness(compare(bars(first), bars(second)), "Example 4") == words


def test_many_differences_are_counted() -> None:
    first = bars("C | Am | F | G | C | Am | Dm | G | Em | Am | D7 | G7 | C")
    second = bars("C | Am7 | F6 | G | C | Am | Dm7 | G7 | Em | Am | D7 | G7 | F")
    likeness = compare(first, second)
    assert likeness.kind == "alike"
    assert say_differences(likeness) == "eight of 13 kept"
    assert say_likeness(likeness) == "much the same chords, eight of 13 kept"
