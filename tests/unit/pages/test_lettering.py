"""How single words are set: dates, chord symbols, numerals, and the frames of drawings."""

from datetime import date
from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.harmony import read_chord as read_symbol
from sitegen.pages.lettering import (
    natural_size,
    numeral_parts,
    printed,
    sentence_parts,
    spoken_date,
    symbol_levels,
    with_ids_under,
)
from sitegen.score.chord import Chord


def read_chord(symbol: str) -> Chord:
    chord = read_symbol(symbol)
    assert isinstance(chord, Chord)
    return chord


@pytest.mark.parametrize(
    ("day", "text"),
    [
        (date(2026, 5, 4), "4\N{NO-BREAK SPACE}May 2026"),
        (date(1999, 12, 31), "31\N{NO-BREAK SPACE}December 1999"),
        (date(2000, 1, 1), "1\N{NO-BREAK SPACE}January 2000"),
    ],
)
def test_a_date_is_written_as_it_is_said(day: date, text: str) -> None:
    assert spoken_date(day) == text


@pytest.mark.parametrize(
    ("quality", "levels"),
    [
        ("", ("", "")),
        ("m", ("m", "")),
        ("m7♭5", ("m", "7♭5")),
        ("mmaj7", ("m", "maj7")),
        ("maj7", ("", "maj7")),
        ("sus2", ("", "sus2")),
        ("7♯9", ("", "7♯9")),
    ],
)
def test_only_the_minor_sign_stays_on_the_line(quality: str, levels: tuple[str, str]) -> None:
    # Common practice in lead sheets, no source.
    assert symbol_levels(quality) == levels


@pytest.mark.parametrize(
    ("roman", "parts"),
    [
        ("", []),
        ("i", [("i", False)]),
        ("♭VII", [("♭VII", False)]),
        ("V7", [("V", False), ("7", True)]),
        ("V7/ii", [("V", False), ("7", True), ("/", False), ("ii", False)]),
        ("ii∅7", [("ii", False), ("∅7", True)]),
        ("?", [("?", False)]),
        ("subV7/ii", [("subV", False), ("7", True), ("/", False), ("ii", False)]),
        ("Ger65", [("Ger", False), ("65", True)]),
        ("It6", [("It", False), ("6", True)]),
    ],
)
def test_figures_behind_a_numeral_are_raised(roman: str, parts: list[tuple[str, bool]]) -> None:
    assert [(part.text, part.raised) for part in numeral_parts(roman)] == parts


@given(st.text(alphabet="ivIV♭♯7/°ø+64 ()?\n"))
def test_no_sign_of_a_numeral_is_lost(roman: str) -> None:
    assert "".join(part.text for part in numeral_parts(roman)) == roman


@pytest.mark.parametrize(
    ("sentence", "raised"),
    [
        ("Applied dominants: G7/D (V43/vi) to Cm and F7 (V7/V) to B♭7.", ["43", "7"]),
        ("Borrowed from E♭ minor: A♭m6 (ivadd6) in bar 6.", ["add6"]),
        ("♯ivø7 and ♭VIImaj7, then ii°65", ["ø7", "maj7", "°65"]),
        ("I, V/V and vi stand; Verse 2 and bar 4 too.", []),
        ("The voice leaves E♭ twice: D♭5, C♭5 over A5 and Ivo7x.", []),
    ],
)
def test_figures_of_the_numerals_in_a_sentence_are_raised(
    sentence: str, raised: list[str]
) -> None:
    assert [part.text for part in sentence_parts(sentence) if part.raised] == raised


def test_chord_symbols_in_a_sentence_stand_by_themselves() -> None:
    chords = [read_chord(symbol) for symbol in ("G7", "G7/D", "Cm", "A♭m6")]
    sentence = "G7/D (V43/vi) to Cm and A♭m6, then G7; G♯7 is none of them."
    found = [part for part in sentence_parts(sentence, chords) if part.chord or part.raised]
    assert [(part.text, part.chord) for part in found] == [
        ("G7/D", chords[1]),
        ("43", None),
        ("Cm", chords[2]),
        ("A♭m6", chords[3]),
        ("G7", chords[0]),
    ]


def test_apostrophes_of_a_sentence_are_those_of_print() -> None:
    assert [part.text for part in sentence_parts("The voice's top")] == ["The voice’s top"]


def test_a_per_cent_sign_stays_with_its_number() -> None:
    assert printed("B fills 37 % of it, 4 bars.") == "B fills 37\N{NO-BREAK SPACE}% of it, 4 bars."


@given(st.text(alphabet="ivIV♭♯7/°ø+64 add(),susAG\n"))
def test_no_sign_of_a_sentence_is_lost(sentence: str) -> None:
    chords = [read_chord(symbol) for symbol in ("A", "G7", "Asus", "A♭/G")]
    assert "".join(part.text for part in sentence_parts(sentence, chords)) == sentence


@pytest.mark.parametrize(
    ("svg", "scale", "size"),
    [
        ('<svg viewBox="0 0 320 96"></svg>', 2.0, "--natural-width: 40rem; --rise: 0.3"),
        (
            "<svg class='x' viewBox='-10 0 152, 304'><svg viewBox='0 0 9 9'/></svg>",
            1.0,
            "--natural-width: 9.5rem; --rise: 2",
        ),
        (
            '<svg viewBox="0 0 900 450" style="max-width:40.8125rem"></svg>',
            1.0,
            "--natural-width: 40.8125rem; --rise: 0.5",
        ),
        (
            '<svg viewBox="0 0 16 16"><g style="max-width:9rem"/></svg>',
            1.0,
            "--natural-width: 1rem; --rise: 1",
        ),
        ('<svg width="20"></svg>', 1.0, ""),
        ('<svg viewBox="0 0 0 90"></svg>', 1.0, ""),
    ],
)
def test_a_drawing_has_the_size_of_its_outer_view_box(svg: str, scale: float, size: str) -> None:
    assert natural_size(svg, scale) == size


DRAWING = (
    '<svg aria-labelledby="t d"><title id="t">A</title><desc id="d">B</desc>'
    '<clipPath id="t-1"><rect/></clipPath><g clip-path="url(#t-1)" data-id="t"/>'
    '<a href="#verse"><use href="#d"/></a></svg>'
)


def test_a_second_copy_of_a_drawing_has_ids_of_its_own() -> None:
    copy = ET.fromstring(with_ids_under(DRAWING, "two_"))  # noqa: S314 - our own text
    assert [element.get("id") for element in copy.iter() if element.get("id")] == [
        "two_t",
        "two_d",
        "two_t-1",
    ]
    assert copy.get("aria-labelledby") == "two_t two_d"
    group = copy.find("g")
    assert group is not None
    assert group.get("clip-path") == "url(#two_t-1)"
    assert group.get("data-id") == "t"


def test_links_out_of_a_drawing_stay_as_they_are() -> None:
    copy = ET.fromstring(with_ids_under(DRAWING, "two_"))  # noqa: S314 - our own text
    assert [element.get("href") for element in copy.iter() if element.get("href")] == [
        "#verse",
        "#two_d",
    ]


def test_a_drawing_without_ids_is_left_alone() -> None:
    assert with_ids_under("<svg><g/></svg>", "two_") == "<svg><g/></svg>"
