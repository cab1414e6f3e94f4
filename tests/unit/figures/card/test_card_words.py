"""The words of a card: which can be set, how wide they are, how a title is broken."""

from pathlib import Path

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st

from sitegen.figures.card.faces import face_files, settable, text_width
from sitegen.figures.card.setting import break_lines, cut_short, set_title

SIZES = ((60, 2), (40, 3), (30, 4))


@pytest.mark.parametrize(
    "text",
    [
        "Low Tide",
        "Ćma i żaba",
        "Ångström, façade",
        "Ночь",
        "Νύχτα",
        "“Low” – C♯ or D♭?",
        "Nº 4",
        "שיר",
        "أغنية",
    ],
)
def test_what_the_faces_hold_is_set_as_it_is(text: str) -> None:
    assert settable(text) == text


@pytest.mark.parametrize("text", ["夜の歌", "Low Tide 夜", "गीत", "노래"])
def test_a_text_with_letters_that_no_face_holds_is_left_out(text: str) -> None:
    assert settable(text) == ""


def test_ornaments_that_no_face_holds_are_left_out_alone() -> None:
    assert settable("Low Tide 🎸 \U0001d11e and  back\n\u200b\u202e\0") == "Low Tide and back"
    assert settable("a\ud800b") == "ab"
    assert settable("🎸") == ""


def test_letters_are_put_together_with_their_accents() -> None:
    assert settable("Cafe\u0301") == "Café"


def test_widths_are_those_of_the_font_file() -> None:
    roman = next(path for path in face_files() if path.name == "card-roman.ttf")
    font = TTFont(roman)
    wide = font["hmtx"][font.getBestCmap()[ord("W")]][0] / font["head"].unitsPerEm
    assert text_width("WW", 50) == pytest.approx(100 * wide)


def test_every_face_is_there_and_open_to_use() -> None:
    files = face_files()
    assert all(path.is_file() for path in files)
    own = [path for path in files if path.name.startswith("card-")]
    assert len(own) == 2
    licence = Path(own[0]).with_name("LICENCE.txt").read_text(encoding="utf-8")
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence
    for path in own:
        family = TTFont(path)["name"].getDebugName(1)
        # Condition 3 of that licence: no reserved name.
        assert family == "Card Text"


def test_a_short_title_is_large_and_a_long_one_smaller() -> None:
    sizes = [set_title("Low tide " * count, 1056, SIZES)[0] for count in (1, 5, 12, 20)]
    assert sizes == sorted(sizes, reverse=True)
    assert (sizes[0], sizes[-1]) == (60, 30)


def test_lines_are_about_as_long_as_each_other() -> None:
    lines = break_lines("The riff that leaves the third to the others of the band", 800, 60)
    widths = [text_width(line, 60) for line in lines]
    assert len(lines) == 2
    assert max(widths) < 1.4 * min(widths)


def test_what_fits_at_no_size_is_cut_short() -> None:
    size, lines = set_title("Low tide " * 60, 600, SIZES)
    assert (size, len(lines)) == (30, 4)
    assert lines[-1].endswith("…")
    assert cut_short("W" * 300, 200, 30).endswith("W…")


words = st.lists(st.text("abWi é", min_size=1, max_size=90), max_size=30).map(" ".join)


@given(words)
def test_every_line_fits_and_no_word_is_lost_unless_cut(text: str) -> None:
    size, lines = set_title(text, 500, SIZES)
    assert len(lines) <= 4
    assert all(text_width(line, size) <= 500 for line in lines)
    if not any("…" in line for line in lines):
        assert " ".join(lines).split() == text[:400].split()
