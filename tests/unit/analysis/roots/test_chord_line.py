"""The chord row as passages of chords that change."""

from unit.analysis.roots.facts_aloud import played, progression

from sitegen.analysis.reading import ChartReading
from sitegen.analysis.roots.chord_line import changes_of, find_passages


def lines(reading: ChartReading) -> list[str]:
    """Return each passage as its chords and the bars they are meant for, "C.1 F.2"."""
    return [
        " ".join(f"{held.chord}.{held.home}" for held in passage)
        for passage in find_passages(reading)
    ]


def test_a_repeated_chord_is_held() -> None:
    assert lines(progression("| C | C | F F | C/E |")) == ["C.1 F.3 C/E.4"]


def test_a_chord_after_silence_starts_again() -> None:
    reading = progression("| C | N.C. | C | N.C. |")
    assert lines(reading) == ["C.1 C.3"]
    assert [held.after_silence for held in find_passages(reading)[0]] == [False, True]


def test_a_second_ending_follows_what_stands_before_the_first() -> None:
    reading = progression("|: C | F |(1.) G | Am :|(2.) Bb | C |")
    assert lines(reading) == ["C.1 F.2 G.3 Am.4", "F.2 B♭.5 C.6"]
    assert [str(held.chord) for held in changes_of(find_passages(reading))] == [
        *("C", "F", "G", "Am", "B♭", "C")
    ]


def test_a_third_ending_follows_it_too() -> None:
    reading = progression("|: C | F |(1.) G :|(2.) Am :|(3.) Bb | C |")
    assert lines(reading) == ["C.1 F.2 G.3", "F.2 Am.4", "F.2 B♭.5 C.6"]


def test_a_chord_that_goes_on_into_the_second_ending_is_one_chord() -> None:
    assert lines(progression("|: C | F |(1.) G :|(2.) F | C |")) == ["C.1 F.2 G.3", "F.2 C.5"]


def test_a_chord_ahead_of_the_bar_belongs_to_the_next_bar() -> None:
    reading = played("""
        count  | 1   &   2   &   3   &   4   &   | 1   &   2   &   3   &   4   &   |
        chord  | C                           F   |         G       Am              |
    """)
    assert lines(reading) == ["C.1 F.2 G.2 Am.2"]
    assert [held.is_pushed for held in find_passages(reading)[0]] == [False, True, False, False]


def test_a_chord_on_the_last_eighth_that_is_not_held_over_is_no_push() -> None:
    reading = played("""
        count  | 1   &   2   &   3   &   4   &   | 1   &   2   &   3   &   4   &   |
        chord  | C                           F   | G                               |
    """)
    assert not any(held.is_pushed for held in find_passages(reading)[0])


def test_a_chart_without_chords_has_no_passage() -> None:
    assert lines(progression("| N.C. | N.C. |")) == []
