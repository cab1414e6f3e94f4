"""Letters of sections.

The schemes follow the textbook reading of common song forms (letters by first appearance, a
prime for a varied return): common practice, no source.
"""

import pytest

from sitegen.analysis.letters import letter_words, section_letters, stem
from sitegen.charts.defaults import SongDefaults
from sitegen.charts.form import read_form
from sitegen.source import Passage


def letters(*lines: str) -> str:
    reading = read_form(Passage.of("\n".join(lines)), SongDefaults())
    assert reading.chart is not None
    return " ".join(section_letters(reading.chart.sections))


def test_verse_and_chorus_with_a_bridge() -> None:
    names = ("Verse 1", "Chorus 1", "Verse 2", "Chorus 2", "Bridge", "Chorus 3")
    assert letters(*(f"{name} | 8" for name in names)) == "A B A B C B"


def test_thirty_two_bar_form() -> None:
    lines = ("First A | 8", "Second A | 8 | = First A", "Middle | 8", "Last A | 8 | = First A")
    assert letters(*lines) == "A A B A"


def test_twelve_bar_choruses_are_one_letter() -> None:
    assert letters(*(f"Chorus {n} | 12" for n in range(1, 5))) == "A A A A"


def test_sections_of_one_name_share_a_letter() -> None:
    assert letters("Verse | 8", "Chorus | 8", "Verse | 8") == "A B A"


def test_a_longer_return_is_varied() -> None:
    assert letters("Chorus 1 | 8", "Chorus 2 | 8", "Last chorus | 16") == "A A A′"


def test_returns_that_vary_alike_share_their_primes() -> None:
    bars = (8, 12, 16, 12, 8)
    assert letters(*(f"Verse {n} | {b}" for n, b in enumerate(bars))) == "A A′ A′′ A′ A"


def test_many_variants_are_numbered() -> None:
    lines = [f"Verse {n} | {n}" for n in range(1, 7)]
    assert letters(*lines) == "A A′ A′′ A′′′ A′4 A′5"


def test_another_meter_makes_a_variant() -> None:
    assert letters("Verse 1 | 8", "Verse 2 | 8 (7/8)") == "A A′"


def test_a_name_can_say_that_a_return_is_varied() -> None:
    assert letters("Chorus 1 | 8", "Quiet chorus | 8", "Chorus 2 (strings) | 8") == "A A′ A′′"


def test_the_author_overrules_a_name() -> None:
    assert letters("Chorus 1 | 8", "Quiet chorus | 8 | = Chorus 1") == "A A"


def test_the_same_as_a_variant_is_that_variant() -> None:
    lines = ("Verse 1 | 8", "Verse 2 | 12", "Coda | 12 | = Verse 2", "Verse 3 | 8")
    assert letters(*lines) == "A A′ A′ A"


def test_equal_sections_share_a_letter_whatever_their_names() -> None:
    assert letters("Hook | 8", "Verse | 8", "Outro | 8 | = Hook") == "A B A"


def test_an_equals_sign_may_look_ahead_and_chain() -> None:
    lines = ("Taste | 8 | = Hook", "Verse | 8", "Hook | 8", "Outro | 8 | = Taste")
    assert letters(*lines) == "A B A A"


def test_a_ring_of_equals_signs_ends() -> None:
    assert letters("Hook | 8 | = Riff", "Riff | 8 | = Hook") == "A A"


def test_the_same_charts_for_as_many_bars_are_one_letter() -> None:
    lines = (
        "Verse | 16 | changes: verse",
        "Solo | 16 | changes: verse",
        "Tag | 2 | changes: verse",
    )
    assert letters(*lines) == "A A B"


def test_a_pointer_to_a_chart_makes_no_letter() -> None:
    assert letters("Verse | 8 | see: opening", "Bridge | 8 | see: opening") == "A B"


def test_other_charts_make_a_return_a_variant() -> None:
    assert letters("Verse 1 | 8 | changes: one", "Verse 2 | 8 | changes: two") == "A A′"
    assert letters("Verse 1 | 8 | charts: one, two", "Verse 2 | 8 | changes: two") == "A A"


def test_numbered_parts_are_told_apart_by_their_number() -> None:
    assert letters("Part 1 | 8", "Part 2 | 8", "Part 1 again | 8 | = Part 1") == "A B A"


def test_after_z_letters_are_doubled() -> None:
    lines = [f"Part {n} | 8" for n in range(1, 29)]
    assert letters(*lines).split()[-3:] == ["Z", "AA", "BB"]


@pytest.mark.parametrize(
    ("name", "called"),
    [
        ("Chorus 2", "chorus"),
        ("Last chorus", "chorus"),
        ("CHORUS II", "chorus"),
        ("Verse 1a", "verse"),
        ("Pre-chorus 1", "pre-chorus"),
        ("Half chorus (quiet)", "chorus"),
        ("Guitar solo", "guitar solo"),
        ("Outro", "outro"),
        ("Breakdown", "breakdown"),
        ("Strain 2", "strain 2"),
        ("(Intro)", "(intro)"),
        ("2", "2"),
    ],
)
def test_a_name_without_count_and_place_is_its_stem(name: str, called: str) -> None:
    assert stem(name) == called


@pytest.mark.parametrize(
    ("letter", "words"),
    [
        ("B", "B"),
        ("B′", "B varied"),
        ("B′′", "B varied, way 2"),
        ("AA′4", "AA varied, way 4"),
    ],
)
def test_primes_can_be_said(letter: str, words: str) -> None:
    assert letter_words(letter) == words
