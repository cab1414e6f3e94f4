"""Where phrases end and start, and how long they are."""

from fractions import Fraction

import pytest
from unit.analysis.melody.tunes import (
    AMAZING_GRACE,
    MARY,
    ODE_TO_JOY,
    TWINKLE,
    bars_of,
    chart,
    facts_of,
    line_of,
)

from sitegen.analysis.melody import find_phrases


def starts(text: str) -> list[str]:
    """Return where phrases start, as bar.beat."""
    line = line_of(text)
    firsts = [line.notes[phrase[0]] for phrase in find_phrases(line, chart(text))]
    return [f"{note.bar}.{note.beat}" for note in firsts]


def test_phrases_end_with_long_notes() -> None:
    assert starts(TWINKLE) == ["1.1", "3.1", "5.1", "7.1", "9.1", "11.1"]
    assert starts(ODE_TO_JOY) == ["1.1", "5.1"]
    assert starts(MARY) == ["1.1", "3.1", "4.1", "5.1"]


def test_long_notes_that_are_usual_end_nothing() -> None:
    # Half notes are the rule in this tune; the dotted half and the tied note stand out.
    assert starts(AMAZING_GRACE) == ["0.3", "8.3"]


def test_a_rest_of_a_beat_ends_a_phrase_and_a_short_one_does_not() -> None:
    text = """
        count | 1  &  2  &  3  &  4  &  | 1  &  2  &  3  &  4  &  |
        voice | C4 r  D4 E4 F4 r  r  G4 | A4 r  B4 C5 B4    r     |
    """
    assert starts(text) == ["1.1", "1.9/2"]


def test_a_short_rest_ends_a_phrase_after_a_closing_syllable() -> None:
    text = """
        count | 1  2  3  4  &  | 1  2  3  4  &  |
        voice | C4 D4 E4 F4 r  | G4 F4 E4 D4 r  |
        words | he went a- way,| for good I say.|
    """
    assert starts(text) == ["1.1", "2.1"]
    assert starts(text.replace(",", " ")) == ["1.1"]


def test_no_phrase_starts_inside_a_word() -> None:
    text = """
        count | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
        voice | C4 D4 E4 D4 | C4    E4 D4 | C4 D4 E4 C4 |
        words | la la la la | sta-  tion a | la la la la |
    """
    assert starts(text) == ["1.1"]
    assert starts(text.replace("sta-", "sta ")) == ["1.1", "2.3"]


def test_a_section_starts_a_phrase_unless_an_upbeat_leads_into_it() -> None:
    text = """
        section |             | B           | C           |
        count   | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
        voice   | C4 D4 E4 F4 | G4 F4 r  E4 | C4 D4 E4 C4 |
    """
    assert starts(text) == ["1.1", "2.1", "2.4"]


STARTS = """
    count | 3  4  | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
    voice | {}
"""


@pytest.mark.parametrize(
    ("row", "text"),
    [
        ("r  C4 | D4 E4 D4    | r     r  C4 | D4 E4 D4    | r           |", "2 early"),
        ("r  r  | D4 E4 D4    | r     r  r  | D4 E4 D4    | r           |", "2 on"),
        ("r  r  | r  E4 D4 E4 | r     r  r  | r  E4 D4 E4 | r           |", "2 late"),
        # Half a bar before the bar line is too much for an upbeat.
        ("C4 C4 | D4 E4 D4    | r     r  C4 | D4 E4 D4    | r           |", "1 early, 1 late"),
        # What does not cross the bar line leads nowhere.
        ("r  C4 | D4 E4 D4 E4 | r  r  r  C4 | r  r  r  C4 | D4          |", "2 early, 1 late"),
    ],
)
def test_starts_are_early_on_or_late(row: str, text: str) -> None:
    assert facts_of(STARTS.format(row))["voice.phrase-starts"].text == text


def test_an_eighth_held_into_the_bar_starts_early() -> None:
    text = """
        count | 1  &  2  &  3  &  4  &  | 1  &  2  &  3  &  4  &  |
        voice | r                    C4 |    D4 E4 C4 D4          |
    """
    fact = facts_of(text)["voice.phrase-starts"]
    assert (fact.text, bars_of(fact)) == ("1 early", [1])


def test_lengths_run_from_start_to_start() -> None:
    found = facts_of(AMAZING_GRACE)
    assert found["voice.phrase-lengths"].value == "8 8"
    assert (found["voice.phrase-lengths"].text, found["voice.phrase-lengths"].unit) == (
        "8",
        "bars each",
    )
    assert facts_of(MARY)["voice.phrase-lengths"].text == "2, 1, 1 and 4"


def test_a_phrase_before_a_long_rest_ends_with_its_bar() -> None:
    text = """
        count | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
        voice | C4 D4 E4 C4 | r           | r           | C4 D4 E4 C4 |
    """
    assert facts_of(text)["voice.phrase-lengths"].value == "1 1"


def test_three_phrases_ahead_of_the_bar_are_told() -> None:
    text = """
        count | 4  | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
        voice | C4 | D4 E4 r  C4 | E4 F4 r  C4 | F4 D4 C4    |
    """
    found = facts_of(text)
    told = "All three phrases of the voice start ahead of the bar line."
    assert found["voice.phrase-starts"].sentence == told


def test_phrases_of_three_bars_are_told() -> None:
    phrase = (
        "C4 D4 E4 F4 | G4 E4 C4 E4 | D4       r  |",
        "1  2  3  4  | 1  2  3  4  | 1  2  3  4  |",
    )
    systems = "\n\n".join(f"count | {phrase[1]}\nvoice | {phrase[0]}" for _ in range(3))
    found = facts_of(systems)
    assert found["voice.phrase-lengths"].text == "3"
    assert found["voice.phrase-lengths"].sentence == "The voice's phrases are three bars long."


def test_lengths_are_exact_where_their_text_is_rounded() -> None:
    text = """
        count | 1  &  2  &  3  &  4  &  | 1  &  2  &  3  &  4  &  |
        voice | C4 D4 E4 F4 r        C4 | D4 E4 F4    r           |
    """
    fact = facts_of(text)["voice.phrase-lengths"]
    assert [Fraction(word) for word in str(fact.value).split()] == [
        Fraction(7, 8),
        Fraction(9, 8),
    ]
    assert fact.text == "1"
