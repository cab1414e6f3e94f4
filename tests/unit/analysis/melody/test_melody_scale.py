"""Degrees, scales and notes outside the key; and how fast and how early a line is."""

from fractions import Fraction

import pytest
from unit.analysis.melody.tunes import AMAZING_GRACE, ODE_TO_JOY, TWINKLE, bars_of, facts_of


def test_a_pentatonic_tune_is_told() -> None:
    found = facts_of(AMAZING_GRACE)
    assert found["voice.key-degrees"].text == "1 2 3 5 6"
    assert found["voice.scale"].text == "major pentatonic on G"
    assert found["voice.scale"].sentence == "The voice keeps to the major pentatonic on G."


LINE = """
    key: {}
    count | 1   2   3   4   | 1   2   3   4   | 1   2   3   4   |
    lead  | {}
"""


@pytest.mark.parametrize(
    ("key", "row", "scale"),
    [
        (
            "A minor",
            "A4  C5  D5  E5  | G5  E5  D5  C5  | A4  C5  A4      |",
            "minor pentatonic on A",
        ),
        ("A minor", "A4  C5  D5  Eb5 | E5  G5  E5  C5  | A4  C5  A4      |", "blues scale on A"),
        ("E dorian", "E4  F#4 G4  A4  | B4  C#5 D5  B4  | A4  F#4 E4      |", "E dorian"),
        (
            "A minor",
            "A4  B4  C5  D5  | E5  F5  G#5 A5  | E5  C5  A4      |",
            "harmonic minor on A",
        ),
        # One note short, one note too many, too few notes.
        ("A minor", "A4  C5  D5  E5  | A4  E5  D5  C5  | A4  C5  A4      |", None),
        ("A minor", "A4  C5  D5  E5  | G5  E5  D5  C5  | B4  C5  A4      |", None),
        ("A minor", "A4  C5  D5  E5  | G5              | r               |", None),
        # The same notes in another key are no scale from its tonic.
        ("D minor", "A4  C5  D5  E5  | G5  E5  D5  C5  | A4  C5  A4      |", None),
    ],
)
def test_a_scale_is_named_where_it_is_whole(key: str, row: str, scale: str | None) -> None:
    found = facts_of(LINE.format(key, row))
    assert (found["lead.scale"].text if scale else found.get("lead.scale")) == scale


def test_notes_below_the_line_count_for_the_scale() -> None:
    row = "A4,F4  C5  D5  E5  | G5  E5  D5  C5  | A4  C5  A4      |"
    text = LINE.format("A minor", row).replace("count | 1   ", "count | 1      ")
    assert "lead.scale" not in facts_of(text)


def test_chromatic_notes_are_told_where_they_are_few() -> None:
    row = "C4  D4  E4  F#4 | G4  F4  E4  Eb4 | D4  D4  E4  C4  |"
    fact = facts_of(LINE.format("C major", row))["lead.chromatic-notes"]
    assert (fact.value, bars_of(fact)) == (2, [1, 2])
    assert fact.sentence == "The lead leaves C major twice: F♯4 in bar 1 and E♭4 in bar 2."


def test_the_leading_note_of_minor_and_the_sixth_on_its_way_are_at_home() -> None:
    row = "A4  E4  F#4 G#4 | A4  G4  F4  E4  | G4  F#4 G4  A4  |"
    fact = facts_of(LINE.format("A minor", row))["lead.chromatic-notes"]
    assert (fact.value, bars_of(fact)) == (1, [3])


def test_without_a_key_there_is_no_degree() -> None:
    text = AMAZING_GRACE.replace("key: G major", "title: A tune")
    paths = set(facts_of(text))
    assert not {"voice.key-degrees", "voice.scale", "voice.chromatic-notes"} & paths


def test_notes_a_second_follow_from_the_tempo() -> None:
    # 42 notes in 48 quarters at 96.
    found = facts_of(TWINKLE)["voice.notes-a-second"]
    assert (found.value, found.text) == (Fraction(42 * 96, 48 * 60), "1.4")
    assert "voice.notes-a-second" not in facts_of(TWINKLE.replace("tempo: 96", "at: 0:10"))


def test_the_end_of_a_line_is_the_end_of_its_last_note() -> None:
    text = """
        tempo: 60
        count | 1  2  3  4  |
        voice | r  C4 D4 r  |
    """
    assert facts_of(text)["voice.notes-a-second"].value == 1


def test_notes_ahead_of_a_beat_and_held_into_it_anticipate() -> None:
    text = """
        count | 1  &  2  &  3  &  4  &  | 1  &  2  &  3  &  4  &  |
        voice | C4    D4 E4    F4 G4 A4 |    B4 C5             r  |
    """
    fact = facts_of(text)["voice.anticipating-share"]
    # E on the & of 2 and A on the & of 4; F goes to G on the beat.
    assert [(place.bar, str(place.beat)) for place in fact.evidence] == [(1, "5/2"), (1, "9/2")]
    assert fact.value == Fraction(2, 8)


def test_a_dotted_quarter_and_an_eighth_anticipate_nothing() -> None:
    assert "voice.anticipating-share" not in facts_of(ODE_TO_JOY)


def test_inner_beats_of_a_group_are_too_early() -> None:
    text = """
        meter: 6/8
        count | 1  2  3  4  5  6  |
        voice | C4 D4       E4 F4 |
    """
    assert "voice.anticipating-share" not in facts_of(text)
