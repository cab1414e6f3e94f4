"""Room for texts in a font that is not known."""

import pytest
from matplotlib.font_manager import FontProperties, findfont, get_font

from sitegen.figures.lettering import fit_lines, text_width


def test_width_grows_with_size_and_letters() -> None:
    assert text_width("Verse", 20) == pytest.approx(2 * text_width("Verse", 10))
    assert text_width("Chorus", 10) > text_width("Chor", 10)
    assert text_width("", 10) == 0


def test_a_combining_accent_takes_no_room() -> None:
    assert text_width("e\u0301", 10) == text_width("e", 10)


# Measured in the fonts themselves: DejaVu Serif is among the widest faces that a page may use.
@pytest.mark.parametrize(
    "word",
    ["Verse 1", "Chorus 2", "Pre-chorus", "Last chorus", "16 bars", "MOUNTAIN", "jumping frog"],
)
def test_the_estimate_is_not_below_a_wide_text_face(word: str) -> None:
    font = get_font(findfont(FontProperties(family="DejaVu Serif")))
    font.set_size(100, 72)
    font.set_text(word)
    measured = font.get_width_height()[0] / 64
    assert measured <= text_width(word, 100) <= 1.15 * measured


def test_a_name_is_broken_at_spaces_into_as_many_lines_as_allowed() -> None:
    room = text_width("Last chorus", 10)
    assert fit_lines("Last chorus", 10, room, lines=1) == ("Last chorus",)
    assert fit_lines("Last chorus", 10, room - 1, lines=1) == ()
    assert fit_lines("Last chorus", 10, room - 1, lines=2) == ("Last", "chorus")


def test_a_word_without_room_drops_the_whole_name() -> None:
    assert fit_lines("A breakdown", 10, text_width("break", 10), lines=4) == ()


def test_a_number_stays_with_its_word() -> None:
    room = text_width("Verse 1", 10)
    assert fit_lines("Long Verse 1", 10, room, lines=2) == ("Long", "Verse 1")
    assert fit_lines("Verse 1", 10, room - 1, lines=2) == ()
