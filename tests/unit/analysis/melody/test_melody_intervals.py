"""The intervals of a line, its widest leap and what follows it."""

from fractions import Fraction

from unit.analysis.melody.tunes import AMAZING_GRACE, ODE_TO_JOY, TWINKLE, facts_of, sentences_of


def test_intervals_are_counted_by_their_spelling() -> None:
    fact = facts_of(ODE_TO_JOY)["voice.intervals"]
    # Counted by hand.
    assert fact.value == "P1 9, m2 4, M2 16"
    assert fact.text == "9 unisons, 4 minor seconds and 16 major seconds"


def test_shares_are_exact_and_add_up() -> None:
    found = facts_of(TWINKLE)
    # 41 intervals, counted by hand: 18 repeats, 19 seconds, a fourth and three fifths.
    shares = [found[f"voice.{kind}-share"].value for kind in ("repeats", "steps", "leaps")]
    assert shares == [Fraction(18, 41), Fraction(19, 41), Fraction(4, 41)]
    assert "voice.thirds-share" not in found
    assert found["voice.steps-share"].text == "46 %"


def test_a_chromatic_semitone_is_a_step_and_otherwise_the_letters_decide() -> None:
    found = facts_of("""
        count | 1  2   3  4   |
        voice | C4 C#4 E4 Db4 |
    """)
    assert found["voice.intervals"].value == "A1 1, A2 1, m3 1"
    assert found["voice.steps-share"].value == Fraction(2, 3)
    assert found["voice.thirds-share"].value == Fraction(1, 3)


def test_the_widest_leap_is_named_with_all_its_places() -> None:
    fact = facts_of(TWINKLE)["voice.largest-leap"]
    assert (fact.value, fact.text) == ("P5", "up a fifth")
    assert [(place.bar, str(place.beat)) for place in fact.evidence] == [
        (1, "2"),
        (1, "3"),
        (4, "3"),
        (5, "1"),
        (9, "2"),
        (9, "3"),
    ]


def test_a_line_of_steps_has_no_leap_and_is_told_so() -> None:
    found = facts_of(ODE_TO_JOY)
    assert "voice.largest-leap" not in found
    told = "The voice moves by step all the way, apart from repeated notes."
    assert found["voice.steps-share"].sentence == told


def test_many_thirds_are_told() -> None:
    told = "Of the 29 intervals that the voice moves by, 16 are thirds."
    assert facts_of(AMAZING_GRACE)["voice.thirds-share"].sentence == told


FILLED = """
    count | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
    voice | C4 A4 G4 F4 | E4 F4 E4 D4 | C4 D4 E4 F4 | E4 D4 C4    |
"""


def test_a_wide_leap_that_is_filled_is_told() -> None:
    assert facts_of(FILLED)["voice.leaps-turned"].text == "1 of 1"
    expected = "Bar 1: the voice leaps up a major sixth, its widest interval, and comes back down"
    assert f"{expected} by step." in sentences_of(FILLED)


def test_a_wide_leap_that_goes_on_is_told() -> None:
    text = """
        count | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
        voice | C4 A4 C5 B4 | A4 G4 F4 E4 | D4 E4 F4 G4 | A4 G4 A4    |
    """
    assert facts_of(text)["voice.leaps-turned"].text == "0 of 1"
    expected = "Bar 1: the voice leaps up a major sixth, its widest interval, and goes on up."
    assert expected in sentences_of(text)


def test_a_leap_at_the_end_of_a_phrase_is_not_answered() -> None:
    text = """
        count | 1  2  3  4  | 1  2  3  4  |
        voice | E4 D4 C4 G4 |             |
    """
    assert "voice.leaps-turned" not in facts_of(text)


def test_a_bass_has_figures_and_no_sentences_on_its_leaps() -> None:
    text = FILLED.replace("voice", "bass ")
    told = sentences_of(text)
    assert "bass.largest-leap" in facts_of(text)
    assert not any("leaps" in sentence for sentence in told)
