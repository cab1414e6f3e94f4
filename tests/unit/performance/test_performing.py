"""A chart as it is heard; common practice, no source, where nothing else is said."""

from fractions import Fraction

from unit.charts.reading_aloud import changes, chart_of, read

from sitegen.performance import Performance, Stroke, perform
from sitegen.score.chart import Chart


def heard(text: str) -> Performance:
    return perform(chart_of(read(text)))


def strokes(performance: Performance, player: str = "voice") -> list[Stroke]:
    return list(next(p for p in performance.players if p.name == player).strokes)


def times(performance: Performance, player: str = "voice") -> list[str]:
    return [f"{s.start}+{s.length} {s.midi}" for s in strokes(performance, player)]


def test_notes_sound_at_their_time_and_pitch() -> None:
    found = heard("""
        count | 1   &   2   3   4   |
        voice | C4  D4  Eb4     r   |
    """)
    assert times(found) == ["0+1/2 60", "1/2+1/2 62", "1+2 63"]
    assert found.length == 4
    assert strokes(found)[0].id == "voice-1-1"


def test_what_sounds_is_told_and_not_what_is_fingered() -> None:
    found = heard("""
        guitar: standard, capo 3
        count | 1   2   3   4   |
        guitar
          6   | 0               |
    """)
    assert times(found, "guitar") == ["0+4 43"]  # G2, three half steps over the open E2, 40


def test_repeats_are_played_twice_each_with_its_ending() -> None:
    found = heard("""
        count |: 1   2   3   4   |(1.) 1   2   3   4   :|(2.) 1   2   3   4   |
        voice |  C4              |     D4               |     E4              |
    """)
    assert [bar.number for bar in found.bars] == [1, 2, 1, 3]
    assert times(found) == ["0+4 60", "4+4 62", "8+4 60", "12+4 64"]


def test_swung_eighths_are_long_and_short_and_triplets_stay() -> None:
    found = heard("""
        feel: swing
        count | 1   &   2   la  li  3   e   &   a   4   |
        voice | C4  D4  E4  F4  G4  A4  B4  C5  D5  r   |
    """)
    onsets = [stroke.start for stroke in strokes(found)]
    assert onsets == [
        0,
        Fraction(2, 3),
        1,
        Fraction(4, 3),
        Fraction(5, 3),
        2,
        2 + Fraction(1, 3),
        2 + Fraction(2, 3),
        2 + Fraction(5, 6),
    ]
    assert strokes(found)[0].length == Fraction(2, 3)


def test_straight_charts_and_compound_meters_do_not_swing() -> None:
    straight = heard("""
        count | 1   &   2   3   4   |
        voice | C4  D4  E4  F4  G4  |
    """)
    assert [s.start for s in strokes(straight)] == [0, Fraction(1, 2), 1, 2, 3]
    found = heard("""
        feel: shuffle
        meter: 6/8
        count | 1   2   3   4   5   6   |
        voice | C4  D4  E4  F4  G4  A4  |
    """)
    assert [s.start for s in strokes(found)] == [Fraction(n, 2) for n in range(6)]


def test_drums_have_their_general_midi_numbers_and_loudness() -> None:
    found = heard(
        """
        count | 1   &   2   &   |
        drums
          HH  | x   o   x   x   |
          SD  | -   g   X   -   |
          BD  | o   -   -   -   |
    """.replace("count", "meter: 2/4\n        count")
    )
    drums = strokes(found, "drums")
    # General MIDI level 1 percussion: 36 bass drum 1, 38 acoustic snare, 42 closed and 46 open
    # hi-hat.
    assert {s.midi for s in drums} == {36, 38, 42, 46}
    snare = {s.start: s.loudness for s in drums if s.midi == 38}
    assert snare[Fraction(1, 2)] < 0.5 < snare[Fraction(1)]


def test_ways_of_playing_are_told_apart() -> None:
    found = heard("""
        guitar: standard
        count | 1   &   2   &   3   &   4   &   |
        guitar
          3   | 5h--7p--5---x---7/--9---7b9-(7)-|
    """)
    manners = [(s.midi, s.manner, s.glide) for s in strokes(found, "guitar")]
    assert manners == [
        (60, "", None),
        (62, "joined", None),
        (60, "joined", None),
        (55, "dead", None),
        (62, "", 64),
        (64, "joined", None),
        (62, "", 64),
        (62, "ghost", None),
    ]


def test_palm_muting_and_swells_follow_their_stretch() -> None:
    found = heard("""
        guitar: standard
        count  | 1   2   3   4   |
        guitar
          6    | 0---0---0---0---|
        mark   | P.M.----        |
    """)
    assert [s.manner for s in strokes(found, "guitar")] == ["palm mute", "palm mute", "", ""]


def test_symbols_are_played_where_they_start_and_at_the_bars_they_are_held_over() -> None:
    chart = chart_of(changes("| C . . Am7 | % | N.C. |"))
    assert isinstance(chart, Chart)
    (chords,) = perform(chart).players
    onsets = sorted({stroke.start for stroke in chords.strokes})
    assert onsets == [0, 3, 4, 7]
    am7 = sorted(s.midi % 12 for s in chords.strokes if s.start == 3)
    assert am7 == [0, 4, 7, 9, 9]  # A in the bass and again as a member
    assert chords.at_first


def test_symbols_are_silent_at_first_beside_a_part_that_plays_chords() -> None:
    found = heard("""
        count | 1         2  3  4  |
        chord | C                  |
        keys  | C4,E4,G4           |
    """)
    assert [(p.name, p.at_first) for p in found.players] == [("keys", True), ("chords", False)]


def test_the_click_is_on_the_felt_beats() -> None:
    found = heard("""
        meter: 7/8 (2+2+3)
        tempo: eighth = 224
        count | 7   | 1  2  3  4  5  6  7  |
        voice | C4  | D4                   |
    """)
    assert [bar.number for bar in found.bars] == [0, 1]
    assert found.bars[1].clicks == (Fraction(1, 2), Fraction(3, 2), Fraction(5, 2))
    assert found.bars[0].clicks == ()
    assert found.quarters_per_minute == 112
    assert found.tempo_is_given


def test_a_chart_without_a_tempo_is_played_at_a_usual_one() -> None:
    assert not heard("count | 1 2 3 4 |\nvoice | C4      |").tempo_is_given
