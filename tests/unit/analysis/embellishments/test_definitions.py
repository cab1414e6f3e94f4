"""Each definition of a non-chord tone, met and just missed.

The lines are those with which Kostka and Payne, *Tonal Harmony*, and Aldwell and Schachter,
*Harmony and Voice Leading*, introduce the names (from memory), moved to short charts.
"""

from dataclasses import replace

import pytest
from unit.analysis.lines_over_chords import chart_over, named, over
from unit.engraving.building import SPAN, melody, voice_part

from sitegen.analysis.embellishments import list_embellishments, name_embellishments
from sitegen.analysis.reading import ChartReading
from sitegen.score.chart import Note


def found(reading: ChartReading) -> list[str]:
    """Return each figure as "name: pitches", with > before what was held into its chord."""
    return [
        f"{figure.name}: {'>' if figure.is_held else ''}"
        + " ".join(str(tone.note.pitch) for tone in figure.tones)
        for figure in list_embellishments(reading.chart, reading.notes)
    ]


@pytest.mark.parametrize(
    ("line", "names"),
    [
        ("C4:1 D4:1 E4:2", ["passing: D4"]),
        ("E4:1 D4:1 C4:2", ["passing: D4"]),
        # Two in a row fill a fourth.
        ("G4:1 A4:1 B4:1 C5:1", ["passing: A4 B4"]),
        # Chromatic, in half steps.
        ("C4:1 C#4:1 D4:1 Eb4:1 E4:4", ["passing: C♯4 D4 E♭4"]),
        # On the stronger place it is an accented passing tone and has the same name.
        ("r:3/2 E4:1/2 D4:1 C4:1", ["passing: D4"]),
        ("C4:1 D4:1 D4:1 E4:1", ["passing: D4 D4"]),
        ("C4:1 D4:1 r:1 E4:1", []),
        ("C4:1 r:1 D4:1 E4:1", []),
        ("D4:1 E4:3", []),
        # No way from chord tone to chord tone: the line stops on the ninth.
        ("E4:1 D4:3", []),
    ],
)
def test_passing_tones_go_on_by_step_between_chord_tones(line: str, names: list[str]) -> None:
    assert found(over("C:8", line)) == names


@pytest.mark.parametrize(
    ("line", "names"),
    [
        ("C4:1 D4:1 C4:2", ["neighbour: D4"]),
        ("C4:1 B3:1 C4:2", ["neighbour: B3"]),
        ("E4:1 D#4:1 E4:2", ["neighbour: D♯4"]),
        # Back to another pitch is no neighbour's way.
        ("E4:1 F4:1 Eb4:2", []),
        ("C4:1 D4:1 B3:1 C4:1", ["double neighbour: D4 B3"]),
        ("C4:1 B3:1 D4:1 C4:1", ["double neighbour: B3 D4"]),
        # Two upper neighbours are not the two neighbours.
        ("C4:1 C#4:1 D4:1 C4:1", []),
    ],
)
def test_neighbours_return_to_their_tone(line: str, names: list[str]) -> None:
    assert found(over("C:8", line)) == names


@pytest.mark.parametrize(
    ("chords", "line", "names"),
    [
        # 4-3, held over the bar line and struck again.
        ("F:4 G:4", "A4:2 C5:3 B4:3", ["suspension: >C5"]),
        ("F:4 G:4", "A4:2 C5:2 C5:1 B4:3", ["suspension: C5"]),
        ("F:4 G:4", "A4:2 C5:3 C5:1 B4:2", ["suspension: >C5 C5"]),
        # 9-8 and 7-6 in root position and inversion.
        ("G:4 C:4", "D5:5 C5:3", ["suspension: >D5"]),
        ("Am:4 G/B:4", "A4:5 G4:3", ["suspension: >A4"]),
        # Resolved into a chord that has moved on.
        ("F:4 G:1 Em:3", "C5:5 B4:3", ["suspension: >C5"]),
        # Up by step.
        ("G:4 C:4", "B4:5 C5:3", ["retardation: >B4"]),
        # Unprepared: a ninth of the chord before.
        ("Bb:4 G:4", "C5:5 B4:3", []),
        # Left by leap.
        ("F:4 G:4", "C5:5 G4:3", []),
        # Resolved to a tone that is no chord tone.
        ("F:4 Em:4", "C5:5 Bb4:3", []),
        # Weaker than its resolution: the chord comes on 4, the resolution on 1.
        ("F:3 G:5", "C5:4 B4:4", []),
        # Cut by a rest.
        ("F:4 G:4", "C5:5 r:1 B4:2", []),
    ],
)
def test_suspensions_are_prepared_stay_and_resolve(
    chords: str, line: str, names: list[str]
) -> None:
    assert found(over(chords, line)) == names


def test_a_suspension_may_stand_on_the_second_beat_of_three() -> None:
    reading = over("F:1 G:2 C:3", "C5:2 B4:1 C5:3", meter="3/4")
    assert found(reading) == ["suspension: >C5"]


@pytest.mark.parametrize(
    ("chords", "line", "names"),
    [
        ("C:4 F:4 C:4", "G4:12", ["pedal: >G4"]),
        ("C:4 F:4 C:4", "G4:4 G4:2 G4:2 G4:4", ["pedal: G4 G4"]),
        ("C:4 F:4 Dm:4 C:4", "G4:16", ["pedal: >G4"]),
        # A repeated symbol is the same chord.
        ("C:4 C:4 C:4", "D4:12", []),
        # It never is a chord tone again.
        ("C:4 F:4 Dm:4", "G4:12", []),
    ],
)
def test_pedals_stay_while_chords_pass(chords: str, line: str, names: list[str]) -> None:
    assert found(over(chords, line)) == names


@pytest.mark.parametrize(
    ("line", "names"),
    [
        ("B4:3 C5:1 C5:4", ["anticipation: C5"]),
        ("D5:7/2 C5:1/2 C5:4", ["anticipation: C5"]),
        # Tied over, as songs push it.
        ("D5:7/2 C5:9/2", ["anticipation: C5"]),
        # It may open a phrase.
        ("r:7/2 C5:1/2 C5:4", ["anticipation: C5"]),
        # Longer than a beat.
        ("B4:2 C5:2 C5:4", []),
        # It leaves before its chord is there.
        ("B4:3 C5:1 D5:4", []),
    ],
)
def test_anticipations_are_short_weak_and_right_a_moment_later(
    line: str, names: list[str]
) -> None:
    assert found(over("G:4 C:4", line)) == names


@pytest.mark.parametrize(
    ("line", "names"),
    [
        # By leap up, accented, on by step down; and mirrored.
        ("C4:2 F4:1 E4:1", ["appoggiatura: F4"]),
        ("G4:2 D4:1 E4:1", ["appoggiatura: D4"]),
        # Not accented, or on in the same direction: incomplete neighbours.
        ("C4:1 F4:1 E4:2", ["incomplete neighbour: F4"]),
        ("C5:2 F4:1 E4:1", ["incomplete neighbour: F4"]),
        # By step and away by leap, unaccented: escape; accented or on: incomplete neighbours.
        ("C5:3 D5:1 G4:4", ["escape: D5"]),
        ("r:1 C5:1 D5:1 G4:1", ["incomplete neighbour: D5"]),
        ("C5:3 D5:1 G5:4", ["incomplete neighbour: D5"]),
        # No step on either side.
        ("C4:1 F4:1 C4:2", []),
        # No approach at all.
        ("F4:2 E4:2", []),
    ],
)
def test_leaps_to_and_from(line: str, names: list[str]) -> None:
    assert found(over("C:8", line)) == names


def test_a_third_over_an_open_fifth_needs_no_name() -> None:
    assert found(over("C5:8", "G4:1 F4:1 E4:1 F4:1 G4:4")) == ["passing: F4", "passing: F4"]


def test_nothing_is_said_over_no_chord() -> None:
    assert found(over("N.C.:4", "C4:1 D4:1 E4:2")) == []
    assert found(over("C:1 N.C.:1 C:2", "C4:1 D4:1 E4:2")) == []


def test_the_top_of_stacked_notes_makes_the_line() -> None:
    reading = over("C:4", "G3,C4:1 F3,D4:1 G3,E4:2")
    assert found(reading) == ["passing: D4"]


def test_dead_and_bent_notes_break_the_line() -> None:
    reading = over("C:4", "C4:1 D4:1 E4:2")
    voice = reading.chart.parts[0].voices[0]
    dead = Note(SPAN, string=2, dead=True)
    for place, event in enumerate(voice):
        for note in (dead, replace(event.notes[0], bend=2)):
            broken = (*voice[:place], replace(event, notes=(note,)), *voice[place + 1 :])
            assert found(named(chart_over("C:4", voice_part(broken)))) == []


def test_an_ending_does_not_lead_into_the_next_one() -> None:
    chart = chart_over("C:8", voice_part(melody("E4:3 D4:1 C4:4")))
    first, second = chart.bars
    closed = replace(first, ending="1.", ending_closes=True, repeat_end=True)
    assert found(named(chart)) == ["passing: D4"]
    assert found(named(replace(chart, bars=(closed, replace(second, ending="2."))))) == []


def test_notes_carry_the_name_where_they_start_outside_the_chord() -> None:
    reading = over("F:4 G:4", "A4:1 G4:1 F4:1 C5:2 C5:1 B4:2")
    readings = name_embellishments(reading.chart, reading.notes)
    assert [n.embellishment for n in readings] == ["", "passing", "", "", "suspension", ""]
