"""What is heard of notes that sound together."""

import pytest

from sitegen.harmony.sounding import hear, is_row_of_seconds, longest_row_of_semitones


def names(pitches: list[str | int]) -> str:
    return " ".join(map(str, hear(pitches, None).names))


def test_the_lowest_note_is_the_bass_and_doublings_fall_away() -> None:
    assert names(["E4", "C4", "G3", "C5"]) == "G C E"


def test_without_octaves_the_first_note_is_the_bass() -> None:
    assert names(["E", "G", "C3"]) == "E G C"


def test_names_of_numbers_without_a_key_are_no_evidence() -> None:
    assert not hear([60, 63], None).spelled
    assert hear(["C4", "Eb4"], None).spelled


def test_the_melody_is_the_highest_note() -> None:
    sounding = hear(["C3", "D5", "E3"], None, "out")

    assert str(sounding.melody) == "D"
    assert [str(name) for name in sounding.names] == ["C", "E"]


def test_another_word_for_the_melody_is_refused() -> None:
    with pytest.raises(ValueError, match='melody is "in" or "out", not "top"'):
        hear(["C3"], None, "top")  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("classes", "row"), [({0, 1, 2}, 3), ({11, 0, 4}, 2), ({0, 4, 7}, 1), (set(range(12)), 12)]
)
def test_rows_of_semitones_go_round_the_octave(classes: set[int], row: int) -> None:
    assert longest_row_of_semitones(frozenset(classes)) == row


@pytest.mark.parametrize(
    ("classes", "side_by_side"),
    [({0, 2, 4}, True), ({11, 0, 2}, True), ({0, 2, 5}, False), ({0, 2, 4, 5, 7, 9}, False)],
)
def test_seconds_within_a_fifth_stand_side_by_side(classes: set[int], side_by_side: bool) -> None:
    assert is_row_of_seconds(frozenset(classes)) is side_by_side
