"""Tablature: frets, techniques, tunings, capo."""

import pytest
from unit.charts.reading_aloud import chart_of, faults, played, read

from sitegen.score.chart import Note


def tab(top: str, sixth: str, head: str = "guitar: standard") -> str:
    """Return two beats' worth of a six-string part in eighths."""
    blank = "-" * 16
    rows = zip("eBGDAE", [top, blank, blank, blank, blank, sixth], strict=True)
    lines = "\n".join(f"  {label}   | {cells}|" for label, cells in rows)
    return f"{head}\nmeter: 2/4\n\ncount | 1   &   2   &   |\nguitar\n{lines}"


def notes(text: str) -> list[Note]:
    chart = chart_of(read(text))
    return [note for event in chart.parts[0].voices[0] for note in event.notes]


BLANK = "-" * 16


def test_strings_struck_together_are_one_event_until_the_next() -> None:
    chart = chart_of(read(tab("--------3-------", "0-------3---0---")))
    assert played(chart, "guitar") == ["E2 0+1", "G2,G4 1+1/2", "E2 3/2+1/2"]


def test_a_detuned_string_sounds_lower_than_it_is_fingered() -> None:
    found = notes(tab(BLANK, "0---3---5---7---", "key: Eb minor\nguitar: half-step down"))
    assert [str(note.pitch) for note in found] == ["E♭2", "G♭2", "A♭2", "B♭2"]
    assert [str(note.fingered) for note in found] == ["E2", "G2", "A2", "B2"]


def test_without_a_key_the_fingered_note_is_named_by_itself() -> None:
    found = notes(tab(BLANK, "0---1---5-------", "guitar: half-step down"))
    assert [str(note.fingered) for note in found] == ["E2", "F2", "A2"]


def test_frets_count_from_the_capo() -> None:
    found = notes(tab(BLANK, "0---3-----------", "guitar: standard, capo 3"))
    assert [str(note.pitch) for note in found] == ["G2", "B♭2"]
    assert [str(note.fingered) for note in found] == ["E2", "G2"]


def test_a_free_tuning_names_its_strings_from_low_to_high() -> None:
    found = notes(tab("0---------------", "0---------------", "guitar: D2 A2 D3 G3 B3 E4, capo 2"))
    assert [str(note.pitch) for note in found] == ["E2", "F♯4"]


def test_numbered_rows_may_leave_strings_out() -> None:
    text = "bass: drop D\nmeter: 2/4\n\ncount | 1   2   |\nbass\n  4   | 0---2---|"
    chart = chart_of(read(text))
    assert played(chart, "bass") == ["D1 0+1", "E1 1+1"]


@pytest.mark.parametrize(
    ("row", "joins"),
    [
        ("5h--7-----------", ["hammer-on", ""]),
        ("5--h7-----------", ["hammer-on", ""]),
        ("7p--5-----------", ["pull-off", ""]),
        ("5/--7-----------", ["slide", ""]),
        ("5--/7-----------", ["slide", ""]),
        ("7\\--5-----------", ["slide", ""]),
        ("7b--9-----------", ["bend", ""]),
    ],
)
def test_a_sign_between_two_notes_joins_them(row: str, joins: list[str]) -> None:
    assert [note.joins for note in notes(tab(row, BLANK))] == joins


@pytest.mark.parametrize(
    ("row", "bend"), [("7b--------------", 2), ("7b8-------------", 1), ("7b10------------", 3)]
)
def test_a_bend_reaches_a_tone_or_its_target(row: str, bend: int) -> None:
    (note,) = notes(tab(row, BLANK))
    assert note.bend == bend
    assert str(note.pitch) == "B4"


def test_slides_from_and_to_nowhere() -> None:
    first, second = notes(tab("---/7-----------", "--------5\\------"))
    assert first.slide_in == "up"
    assert second.slide_out == "down"


def test_dead_ghost_vibrato_and_harmonic() -> None:
    found = notes(tab("x---(5)-7~--<12>", BLANK))
    assert [note.dead for note in found] == [True, False, False, False]
    assert found[0].pitch is None
    assert found[1].ghost
    assert found[2].vibrato
    assert found[3].harmonic
    assert str(found[3].pitch) == "E5"


@pytest.mark.parametrize(
    ("fret", "midi"),
    # Nodes of the open E2 string, MIDI 40: the 2nd to 6th partial lie 12, 19, 24, 28 and 31
    # semitones above it (any acoustics handbook).
    [("12", 52), ("7", 59), ("19", 59), ("5", 64), ("4", 68), ("9", 68), ("3", 71)],
)
def test_a_harmonic_sounds_its_partial(fret: str, midi: int) -> None:
    (note,) = notes(tab(BLANK, f"<{fret}>".ljust(16, "-")))
    assert note.midi == midi


def test_a_rest_is_written_on_any_string() -> None:
    chart = chart_of(read(tab("0---r---0-------", BLANK)))
    assert played(chart, "guitar") == ["E4 0+1/2", "r 1/2+1/2", "E4 1+1"]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (tab("0-2-------------", BLANK), ["off-count 6:11-12"]),
        (tab("0---?-----------", BLANK), ["tab-sign 6:13-14"]),
        (tab("0---57----------", BLANK), ["tab-fret 6:13-15"]),
        (tab("----------5h----", "------------5---"), ["off-count 6:19-20"]),
        (tab("--------5h------", "------------5---"), ["tab-join 6:18-19"]),
        (tab("h---5-----------", BLANK), ["tab-join 6:9-10"]),
        (tab("7b5-------------", BLANK), ["tab-bend 6:9-10"]),
        (tab("<6>-------------", BLANK), ["tab-harmonic 6:9-12"]),
        (tab(BLANK, BLANK, "guitar: dropp D"), ["instrument 1:9-16"]),
        (tab(BLANK, BLANK, "guitar: E1 A1 D2 G2"), ["string-count 6:3-4"]),
        (tab(BLANK, BLANK, "guitar: standard, capo 15"), ["instrument 1:24-26"]),
        (tab(BLANK, BLANK).replace("  A ", "  F "), ["string-label 10:3-4"]),
    ],
)
def test_a_fault_of_the_strings_is_reported_where_it_stands(
    text: str, expected: list[str]
) -> None:
    assert faults(read(text)) == expected


def test_rows_written_lowest_string_first_are_told_so() -> None:
    rows = "\n".join(f"  {label} | 0---|" for label in "EADGBe")
    reading = read(f"meter: 1/4\n\ncount | 1  |\nguitar\n{rows}".replace("| 1  |", "| 1   |"))
    hints = [d.hint for d in reading.diagnostics if d.code == "string-label"]
    assert hints == ["write the highest string as the top row"]


@pytest.mark.parametrize(
    ("head", "labels"),
    [
        ("guitar: Eb standard", ["D#", "A#", "F#", "C#", "G#", "D#"]),
        ("guitar: drop Db", ["E", "B", "G", "D", "A", "D"]),
        ("guitar: half-step down", ["e", "B", "G", "D", "A", "E"]),
    ],
)
def test_a_row_may_be_called_by_the_bare_letter_or_a_respelling(
    head: str, labels: list[str]
) -> None:
    rows = "\n".join(f"  {label:<3} | 0---------------|" for label in labels)
    chart_of(read(f"{head}\nmeter: 2/4\n\ncount | 1   &   2   &   |\nguitar\n{rows}"))


@pytest.mark.parametrize(
    ("row", "expected"),
    [
        ("(5--------------", ["tab-sign 6:9-11"]),
        ("<12-------------", ["tab-sign 6:9-12"]),
        ("7h--5-----------", ["tab-direction 6:10-11"]),
        ("5p--7-----------", ["tab-direction 6:10-11"]),
        ("5h--7p--5-------", []),
    ],
)
def test_a_slip_in_a_string_row_is_one_fault(row: str, expected: list[str]) -> None:
    assert faults(read(tab(row, BLANK))) == expected


def test_a_mistyped_string_is_one_fault() -> None:
    assert faults(read(tab(BLANK, BLANK).replace("  G ", "  Q "))) == ["string-label 8:3-4"]


def test_digits_that_touch_are_notes_of_their_own_where_counts_touch() -> None:
    chart = chart_of(read("meter: 2/4\n\ncount | 1e&a2e&a|\nguitar\n  6   | 0033----|"))
    assert played(chart, "guitar") == ["E2 0+1/4", "E2 1/4+1/4", "G2 1/2+1/4", "G2 3/4+5/4"]


@pytest.mark.parametrize(
    ("count", "row", "expected"),
    [
        ("1e&a2e&a", "12--3---", ["tab-two-ways 5:9-11"]),
        ("1 & 2 & ", "123-----", ["tab-fret 5:9-12"]),
        ("1 & 2 & ", "99--3---", ["tab-fret 5:9-11"]),
    ],
)
def test_digits_that_cannot_be_told_apart_are_one_fault(
    count: str, row: str, expected: list[str]
) -> None:
    assert faults(read(f"meter: 2/4\n\ncount | {count}|\nguitar\n  6   | {row}|")) == expected


def test_of_two_rows_for_one_string_the_second_is_reported() -> None:
    text = "count | 1 2 3 4 |\nguitar\n  1   | 0-------|\n  1   | --3-----|"
    assert faults(read(text)) == ["string-label 4:3-4"]
