"""The melodic line of a part: which notes it takes, and the time between them."""

from dataclasses import replace
from fractions import Fraction

import pytest
from unit.analysis.melody.tunes import chart, facts_of, line_of, reading_of

from sitegen.analysis.melody import find_lines, find_melody, is_melodic


def pitches(text: str, part: str = "voice") -> list[str]:
    return [str(note.note.pitch) for note in line_of(text, part).notes]


def test_the_highest_of_notes_that_start_together_is_taken() -> None:
    text = """
        count | 1        2  3  4  |
        keys  | C4,E4,G4 F4 E4 D4 |
    """
    assert pitches(text, "keys") == ["G4", "F4", "E4", "D4"]


def test_below_a_held_higher_note_of_another_voice_nothing_is_of_the_line() -> None:
    upper = "| C5          |       G4    |"
    lower = "| E4 F4 G4 A4 | E4 F4 C4 D4 |"
    count = "count | 1  2  3  4  | 1  2  3  4  |"
    text = f"{count}\nlead  {upper}\nkeys  {lower}"
    found = chart(text)
    voices = tuple(part.voices[0] for part in found.parts)
    both = replace(found, parts=(replace(found.parts[0], voices=voices),))
    line = find_lines(reading_of(both))[0]
    # C5 is held for six beats, G4 comes as it ends.
    assert [str(note.note.pitch) for note in line.notes] == ["C5", "G4"]
    above = replace(both, parts=(replace(both.parts[0], voices=voices[::-1]),))
    assert find_lines(reading_of(above))[0].midi == line.midi


def test_a_note_is_cut_short_by_a_higher_one() -> None:
    text = """
        count | 1  2  3  4  |
        lead  | C4          |
        keys  | r     E4    |
    """
    found = chart(text)
    voices = tuple(part.voices[0] for part in found.parts)
    both = replace(found, parts=(replace(found.parts[0], voices=voices),))
    line = find_lines(reading_of(both))[0]
    quarter = line.pulse.ticks
    assert (line.starts, line.ends) == ((0, 2 * quarter), (2 * quarter, 4 * quarter))


def test_a_repeated_pitch_is_another_note_and_a_held_one_is_not() -> None:
    line = line_of("""
        count | 1  2  3  4  | 1  2  3  4  |
        voice | C4 C4       |       r     |
    """)
    assert [(start, end) for start, end in zip(line.starts, line.ends, strict=True)] == [
        (0, line.pulse.ticks),
        (line.pulse.ticks, 6 * line.pulse.ticks),
    ]


def test_rests_and_dead_notes_are_time_between_notes() -> None:
    text = """
        guitar: standard
        count  | 1   2   3   4   |
        guitar
          e    | ----------------|
          B    | ----------------|
          G    | ----------------|
          D    | ----------------|
          A    | ----x-------3---|
          E    | 3-------r-------|
    """
    line = line_of(text, "guitar")
    assert [str(note.note.pitch) for note in line.notes] == ["G2", "C3"]
    assert line.gaps == (3 * line.pulse.ticks,)
    assert line.sounding == 2 * line.pulse.ticks


@pytest.mark.parametrize(
    ("row", "melodic"),
    [
        ("keys  | C4,E4 D4    E4    F4    |", True),
        ("keys  | C4,E4 D4,F4 E4    F4    |", True),
        ("keys  | C4,E4 D4,F4 E4,G4 F4    |", False),
        ("keys  | r                       |", False),
    ],
)
def test_a_part_is_a_line_when_half_of_its_events_are_single_notes(
    row: str, melodic: bool
) -> None:
    found = chart(f"count | 1     2     3     4     |\n{row}\nbass  | C2                      |")
    keys = next(part for part in found.parts if part.name == "keys")
    assert is_melodic(keys) is melodic
    assert ("keys" in {line.part.name for line in find_lines(reading_of(found))}) is melodic


def test_drums_have_no_line() -> None:
    found = chart("""
        count | 1 2 3 4 |
        drums
          SD  | --o---o-|
          BD  | o---o---|
    """)
    assert not is_melodic(found.parts[0])
    assert find_melody(reading_of(found)) == ()


def test_a_chart_of_chords_only_has_no_facts() -> None:
    found = chart("""
        key: C major
        count | 1 2 3 4 |
        chord | C   F   |
    """)
    assert find_melody(reading_of(found)) == ()


def test_felt_beats_are_the_groups_of_the_meter() -> None:
    line = line_of("""
        meter: 7/8 (2+2+3)
        count | 1  2  3  4  5  6  7  | (6/8) 1  2  3  4  5  6  |
        voice | C4 D4                |       E4          F4    |
    """)
    eighth = Fraction(line.pulse.ticks, 2)
    assert [beat / eighth for beat in line.pulse.beats] == [0, 2, 4, 7, 10, 13]


def test_one_note_has_no_contour_and_no_interval() -> None:
    found = facts_of("""
        count | 1  2 3 4 |
        voice | C4       |
    """)
    assert set(found) == {"voice.phrases", "voice.phrase-starts", "voice.phrase-lengths"}


def test_evidence_names_the_notes_as_the_reading_does() -> None:
    text = """
        count | 1  2  3  4  |
        voice | C4 E4 G4 F4 |
    """
    ids = [note.id for note in line_of(text).notes]
    thirds = facts_of(text)["voice.thirds-share"].evidence
    assert [place.notes for place in thirds] == [(ids[0], ids[1]), (ids[1], ids[2])]
    assert len({*ids}) == 4


def test_a_part_of_two_words_has_a_path_with_a_hyphen() -> None:
    found = facts_of("""
        count    | 1  2  3  4  |
        guitar 2 | C4 E4 G4 F4 |
    """)
    assert found["guitar-2.parsons"].text == "*uud"
