"""Shares of chord tones, favourite degrees, and what of it is told."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from unit.analysis.lines_over_chords import any_chart, chart_over, named, over
from unit.analysis.transposing import transpose_chart
from unit.engraving.building import melody, struck, voice_part

from sitegen.analysis.reading import ChartReading, Fact
from sitegen.analysis.shares import find_shares
from sitegen.score.chart import Chart, Part
from sitegen.score.instrument import Instrument
from sitegen.score.interval import Interval
from sitegen.score.role import Role

INTERVALS = [Interval(1, 2), Interval(2, 3), Interval(3, 6), Interval(-3, -5), Interval(7, 12)]


def facts(reading: ChartReading) -> dict[str, Fact]:
    return {fact.path: fact for fact in find_shares(reading)}


def sentences(reading: ChartReading) -> dict[str, str]:
    return {fact.path: fact.sentence for fact in find_shares(reading) if fact.sentence}


def values(reading: ChartReading, start: str) -> dict[str, object]:
    return {
        path.removeprefix(start): fact.value
        for path, fact in facts(reading).items()
        if path.startswith(start)
    }


def test_shares_by_count_have_each_role() -> None:
    found = facts(over("C:4", "C4:1 D4:1 E4:1 F4:1"))
    assert [(found[f"voice.{role}-share"].value) for role in ("chord-tone", "tension")] == [
        Fraction(1, 2),
        Fraction(1, 4),
    ]
    share = found["voice.non-chord-tone-share"]
    assert (share.text, share.unit) == ("25 %", "of its notes")
    assert [(p.bar, str(p.beat), len(p.notes)) for p in share.evidence] == [(1, "4", 1)]


def test_shares_by_duration_weigh_time() -> None:
    reading = over("C:4", "C4:3 F4:1")
    assert values(reading, "voice.chord-tone-share-by") == {"-duration": Fraction(3, 4)}
    assert facts(reading)["voice.chord-tone-share-by-duration"].unit == "of its time"


def test_a_held_note_counts_as_what_it_is_over_each_chord() -> None:
    found = facts(over("F:4 G:4", "C5:8"))
    assert found["voice.chord-tone-share"].value == 1
    assert found["voice.chord-tone-share-by-duration"].value == Fraction(1, 2)
    assert found["voice.non-chord-tone-share-by-duration"].value == Fraction(1, 2)


def test_time_over_no_chord_is_not_counted() -> None:
    found = facts(over("C:2 N.C.:4 G:2", "C4:8"))
    assert found["voice.chord-tone-share-by-duration"].value == Fraction(1, 2)


@pytest.mark.parametrize(
    ("meter", "line", "strong", "weak", "off"),
    [
        ("4/4", "C4:1 D4:1 E4:1/2 D4:1/2 D4:1/2 E4:1/2", 2, 2, 2),
        ("3/4", "C4:1 D4:1 E4:1", 1, 2, 0),
        ("6/8", "C4:1/2 D4:1/2 E4:1/2 F4:3/2", 1, 1, 2),
        ("5/4", "C4:1 D4:1 E4:1 F4:1 G4:1", 2, 3, 0),
        ("2+2+3/8", "C4:1/2 D4:1/2 E4:1/2 F4:1/2 G4:1/2 A4:1/2 B4:1/2", 1, 2, 4),
        ("1/4", "C4:1/2 D4:1/2", 1, 0, 1),
    ],
)
def test_beats_are_strong_weak_or_none(
    meter: str, line: str, strong: int, weak: int, off: int
) -> None:
    found = facts(over("C:8", line, meter=meter))
    roles = [role.replace(" ", "-") for role in Role]
    counted = [
        sum(
            len(fact.evidence)
            for role in roles
            if (fact := found.get(f"voice.{role}-share{ending}"))
        )
        for ending in ("-on-strong-beats", "-on-weak-beats", "-off-the-beat")
    ]
    assert counted == [strong, weak, off]


def test_shares_by_place_leave_out_what_has_no_note() -> None:
    assert values(over("C:4", "C4:2 D4:2"), "voice.chord-tone-share-o") == {
        "n-strong-beats": Fraction(1, 2)
    }
    weak = values(over("C:4", "r:1 D4:1 r:1 D4:1"), "voice.")
    assert weak["chord-tone-share-on-weak-beats"] == 0
    assert "non-chord-tone-share-on-weak-beats" not in weak


def test_long_notes_are_twice_the_usual_length() -> None:
    found = facts(over("C:8", "D4:1 D4:1 D4:1 E4:2 D4:1 G4:2"))
    assert found["voice.chord-tone-share-on-long-notes"].value == 1
    assert len(found["voice.chord-tone-share-on-long-notes"].evidence) == 2


def test_favourite_degrees_are_the_most_frequent_ones() -> None:
    found = values(over("C:4 F:4", "G4:1 G4:1 E4:2 C5:1 A4:3"), "voice.favourite-")
    assert found == {
        "degree": "5",
        "degree-by-duration": "3",
        "degree-on-long-notes": "3",
        "key-degree": "5",
    }


def test_a_shared_first_place_is_no_favourite() -> None:
    assert values(over("C:4", "E4:1 G4:1 E4:1 G4:1"), "voice.favourite-") == {}


ROOTLESS = "G4:1 E4:1 G4:1 B4:1 A4:1 G4:1 E4:1 D4:1 E4:1 G4:3"


def test_a_voice_without_a_root_is_told() -> None:
    reading = over("C:12", ROOTLESS)
    assert facts(reading)["voice.root-share"].text == "0 %"
    assert sentences(reading)["voice.root-share"] == "The voice never sings the root of a chord."
    played = over("C:12", ROOTLESS, part="lead guitar")
    told = sentences(played)["lead-guitar.root-share"]
    assert told == "The lead guitar never plays the root of a chord."


def test_a_root_that_a_held_note_becomes_is_a_root() -> None:
    assert "voice.root-share" not in sentences(over("C:11 G:1", ROOTLESS))


def test_a_bend_to_the_root_is_a_root() -> None:
    chart = over("C:12", ROOTLESS).chart
    (voice,) = chart.parts[0].voices
    to_root = replace(voice[3], notes=(replace(voice[3].notes[0], bend=1),))
    bent = chart_over("C:12", voice_part((*voice[:3], to_root, *voice[4:])))
    assert "voice.root-share" not in sentences(named(bent))


def test_few_notes_without_a_root_tell_nothing() -> None:
    assert "voice.root-share" not in facts(over("C:4", "G4:1 E4:1 G4:2"))


def test_a_contrast_between_the_beats_is_told() -> None:
    bar = "C4:1/2 D4:1/2 F4:1 E4:1/2 F4:1/2 A4:1 "
    assert sentences(over("C:16", bar * 4))["voice.chord-tone-share-on-strong-beats"] == (
        "On strong beats all 8 notes of the voice are chord tones, elsewhere none of 16."
    )
    even = "C4:1/2 E4:1/2 G4:1 E4:1/2 C4:1/2 A4:1 "
    assert "voice.chord-tone-share-on-strong-beats" not in sentences(over("C:16", even * 4))


def test_long_notes_on_one_degree_are_told() -> None:
    line = "G4:1/2 A4:1/2 E4:1/2 G4:1/2 D4:2 " * 3
    reading = over("C:4 Dm:4 F:4", line.replace("D4:2", "D4:2", 1))
    assert "voice.chord-tone-share-on-long-notes" not in sentences(reading)
    told = sentences(over("C:12", line))["voice.chord-tone-share-on-long-notes"]
    assert told == "All 3 long notes of the voice start as the 9 of their chord."


def test_a_line_of_chord_tones_alone_is_told_of_a_voice_only() -> None:
    line = "G4:1 E4:1 C4:1 E4:1 " * 3
    told = sentences(over("C:12", line))
    assert told["voice.chord-tone-share"] == "All 12 notes of the voice are chord tones."
    assert sentences(over("C:12", line, part="guitar")) == {}


def test_a_bass_and_stacked_chords_are_not_told() -> None:
    for part, line in (("bass", ROOTLESS), ("keys", "E4,G4:2 G4,B4:2 " * 6)):
        assert sentences(over("C:24", line, part=part)) == {}


def test_parts_without_pitch_or_chords_have_no_shares() -> None:
    drums = Part("drums", Instrument("drums"), (struck("HH:1 SD:1"),), ("drums",))
    assert find_shares(named(chart_over("C:4", drums))) == ()
    assert find_shares(named(chart_over("", voice_part(melody("C4:4"))))) == ()
    assert find_shares(named(chart_over(""))) == ()


@settings(max_examples=40)
@given(any_chart(), st.sampled_from(INTERVALS))
def test_transposing_changes_nothing(chart: Chart, interval: Interval) -> None:
    here, there = (named(c) for c in (chart, transpose_chart(chart, interval)))
    assert [(f.path, f.value, f.text, f.sentence) for f in find_shares(here)] == [
        (f.path, f.value, f.text, f.sentence) for f in find_shares(there)
    ]


@settings(max_examples=40)
@given(any_chart())
def test_shares_of_a_kind_add_up(chart: Chart) -> None:
    reading = named(chart)
    found = facts(reading)
    roles = [role.replace(" ", "-") for role in Role]
    endings = ("", "-by-duration", "-on-strong-beats", "-on-weak-beats", "-off-the-beat")
    for part in {note.part for note in reading.notes if note.role}:
        prefix = part.replace(" ", "-")
        for ending in endings:
            shares = [found.get(f"{prefix}.{role}-share{ending}") for role in roles]
            if any(shares):
                assert sum(Fraction(fact.value) for fact in shares if fact) == 1
