"""Non-chord tones counted and told."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from unit.analysis.lines_over_chords import any_chart, chart_over, named, over
from unit.analysis.transposing import transpose_chart
from unit.engraving.building import melody, voice_part

from sitegen.analysis.embellishments import (
    find_embellishments,
    list_embellishments,
    name_embellishments,
)
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.score.chart import Chart
from sitegen.score.interval import Interval
from sitegen.score.role import Role

INTERVALS = [Interval(1, 2), Interval(2, 3), Interval(3, 6), Interval(-3, -5), Interval(7, 12)]


def facts(reading: ChartReading) -> dict[str, Fact]:
    return {fact.path: fact for fact in find_embellishments(reading)}


def test_each_kind_is_counted_with_its_places() -> None:
    found = facts(over("C:8", "C4:1 D4:1 E4:1 F4:1 G4:1 A4:1 G4:2"))
    passing, neighbours = found["voice.passing-tones"], found["voice.neighbour-tones"]
    assert (passing.value, passing.text, passing.unit) == (2, "2", "passing tones")
    assert [(p.bar, str(p.beat)) for p in passing.evidence] == [(1, "2"), (1, "4")]
    assert (neighbours.value, neighbours.unit) == (1, "neighbour tone")
    assert set(found) == {"voice.passing-tones", "voice.neighbour-tones"}
    assert not any(fact.sentence for fact in found.values())


def test_passing_tones_in_a_row_count_one_by_one() -> None:
    found = facts(over("C:4", "G4:1 A4:1/2 A4:1/2 B4:1 C5:1"))["voice.passing-tones"]
    assert found.value == 2
    (place,) = found.evidence
    assert len(place.notes) == 3


def test_evidence_names_the_notes() -> None:
    reading = over("F:4 G:4", "A4:2 C5:3 B4:3")
    (place,) = facts(reading)["voice.suspensions"].evidence
    assert (place.bar, str(place.beat)) == (2, "1")
    assert place.notes == (reading.notes[1].id,)


@pytest.mark.parametrize(
    ("chords", "line", "path", "told"),
    [
        (
            "F:4 G:4",
            "A4:2 C5:3 B4:3",
            "voice.suspensions",
            "carries C from F into G and resolves it down to B, a 4–3 suspension",
        ),
        (
            "G:4 C:4",
            "D5:5 C5:3",
            "voice.suspensions",
            "carries D from G into C and resolves it down to C, a 9–8 suspension",
        ),
        (
            "Am:4 G/B:4",
            "A4:5 G4:3",
            "voice.suspensions",
            "carries A from Am into G/B and resolves it down to G, a 7–6 suspension",
        ),
        (
            "F:4 G:1 Em:3",
            "C5:5 B4:3",
            "voice.suspensions",
            "carries C from F into G and resolves it down to B, a suspension",
        ),
        (
            "G:4 C:4",
            "B4:5 C5:3",
            "voice.retardations",
            "carries B from G into C and resolves it up to C, a 7–8 retardation",
        ),
        (
            "C:4 F:4 Dm:4 C:4",
            "G4:16",
            "voice.pedals",
            "stays on G from C through F and Dm to C, a pedal",
        ),
        (
            "C:4 C:4",
            "r:4 C4:2 F4:1 E4:1",
            "voice.appoggiaturas",
            "leaps up to F over C on beat 3 and falls to E, an appoggiatura",
        ),
        (
            "C:4 C:4",
            "r:4 G4:2 D4:1 E4:1",
            "voice.appoggiaturas",
            "leaps down to D over C on beat 3 and rises to E, an appoggiatura",
        ),
    ],
)
def test_telling_ones_are_told(chords: str, line: str, path: str, told: str) -> None:
    assert facts(over(chords, line))[path].sentence == f"Bar 2: the voice {told}."


def test_an_appoggiatura_on_a_weak_beat_is_counted_only() -> None:
    found = facts(over("C:4", "C4:1 F4:1/2 E4:5/2"))["voice.appoggiaturas"]
    assert (found.value, found.sentence) == (1, "")


def test_a_habit_of_anticipations_is_told() -> None:
    one = facts(over("G:4 C:4", "B4:3 C5:1 C5:4"))["voice.anticipations"]
    assert (one.value, one.sentence) == (1, "")
    two = facts(over("G:4 C:4 G:4", "B4:7/2 C5:4 B4:9/2"))["voice.anticipations"]
    assert two.sentence == "The voice anticipates the next chord 2 times, in bars 1 and 2."


def test_two_are_told_and_many_are_counted() -> None:
    two = facts(over("F:4 G:4 " * 2, "A4:2 C5:3 B4:3 " * 2))["voice.suspensions"]
    assert two.sentence == (
        "Bar 2: the voice carries C from F into G and resolves it down to B, a 4–3 suspension;"
        " bar 4: it carries C from F into G and resolves it down to B, a 4–3 suspension."
    )
    four = facts(over("F:4 G:4 " * 4, "A4:2 C5:3 B4:3 " * 4))["voice.suspensions"]
    assert four.sentence == "The voice has 4 suspensions, in bars 2, 4, 6 and 8."


def test_each_part_has_its_own() -> None:
    high, low = melody("C5:1 D5:1 E5:2"), melody("E3:1 F3:1 E3:2")
    parts = voice_part(high), voice_part(low, "lead guitar")
    found = facts(named(chart_over("C:4", *parts)))
    assert set(found) == {"voice.passing-tones", "lead-guitar.neighbour-tones"}


def test_a_bass_keeps_its_pedals_to_itself() -> None:
    found = facts(over("C:4 F:4 C:4", "G2:12", part="bass"))["bass.pedals"]
    assert (found.value, found.sentence) == (1, "")


@settings(max_examples=40)
@given(any_chart(), st.sampled_from(INTERVALS))
def test_transposing_changes_no_count_and_no_name(chart: Chart, interval: Interval) -> None:
    here, there = named(chart), named(transpose_chart(chart, interval))
    mine, theirs = find_embellishments(here), find_embellishments(there)
    assert [(f.path, f.value, f.text, f.unit) for f in mine] == [
        (f.path, f.value, f.text, f.unit) for f in theirs
    ]
    names = [n.embellishment for n in name_embellishments(chart, here.notes)]
    assert names == [n.embellishment for n in name_embellishments(there.chart, there.notes)]


@settings(max_examples=40)
@given(any_chart())
def test_no_chord_tone_is_named_and_nothing_else_changes(chart: Chart) -> None:
    notes = named(chart).notes
    readings = name_embellishments(chart, notes)
    assert len(readings) == len(notes)
    for before, after in zip(notes, readings, strict=True):
        if after.embellishment:
            assert before.role in {Role.TENSION, Role.NON_CHORD_TONE}
        else:
            assert before == after


@settings(max_examples=40)
@given(any_chart())
def test_figures_are_in_order_and_their_tones_sound_where_they_are_foreign(chart: Chart) -> None:
    figures = list_embellishments(chart, named(chart).notes)
    for figure in figures:
        first = figure.tones[0]
        assert first.onset <= figure.after.onset
        assert figure.pitch == first.note.pitch
        assert not {figure.pitch.name.pitch_class} & set(figure.chords[0].pitch_classes)
        is_later = (figure.place.bar, figure.place.beat) > (first.bar, first.beat)
        assert figure.is_held == is_later
    for part in chart.parts:
        places = [(f.place.bar, f.place.beat) for f in figures if f.part == part.name]
        assert places == sorted(places)


def test_a_chart_without_anything_has_nothing() -> None:
    assert find_embellishments(named(chart_over(""))) == ()
    assert find_embellishments(over("", "C4:1 D4:1 E4:2")) == ()
    assert find_embellishments(over("C:4", "r:4")) == ()
    assert find_embellishments(over("C:4", "D4:4")) == ()


def test_a_pickup_counts_as_bar_0() -> None:
    reading = over("C:5", "G4:1/2 F4:1/2 E4:4", pickup="1")
    (place,) = facts(reading)["voice.passing-tones"].evidence
    assert (place.bar, place.beat) == (0, Fraction(9, 2))
