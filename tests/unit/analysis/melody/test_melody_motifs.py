"""Figures that come back, sequences, and bars of one rhythm."""

from unit.analysis.melody.tunes import (
    AMAZING_GRACE,
    ODE_TO_JOY,
    TWINKLE,
    bars_of,
    facts_of,
    line_of,
    sentences_of,
)

from sitegen.analysis.melody.figures import apart, recurring


def test_a_figure_that_comes_back_a_step_lower_is_told() -> None:
    text = """
        count | 1  2  &  3  4  | 1  2  &  3  4  |
        voice | G4 A4 B4 G4 D4 | F4 G4 A4 F4 C4 |
    """
    told = "The voice's figure of bar 1 comes back in bar 2 a step lower."
    fact = facts_of(text)["voice.longest-figure"]
    assert (fact.value, fact.sentence) == (5, told)
    assert [len(place.notes) for place in fact.evidence] == [5, 5]


def test_a_figure_that_comes_back_as_it_was_is_told() -> None:
    assert facts_of(ODE_TO_JOY)["voice.longest-figure"].sentence == (
        "The voice's figure of bars 1 and 2 comes back in bars 5 and 6."
    )


def test_bars_of_each_way_of_coming_back_are_named() -> None:
    assert facts_of(TWINKLE)["voice.longest-figure"].sentence == (
        "The voice's figure of bars 3 and 4 comes back in bars 5 and 6 and in bars 7 and 8 a step "
        "higher, and in bars 11 and 12."
    )
    assert bars_of(facts_of(TWINKLE)["voice.longest-figure"]) == [3, 5, 7, 11]


def test_a_change_of_accidentals_is_told() -> None:
    text = """
        key: C minor
        count | 1   2  &  3  4   | 1   2  &  3  4   |
        voice | Eb4 F4 G4 D4 C4  | E4  F4 G4 D4 C4  |
    """
    assert facts_of(text)["voice.longest-figure"].sentence == (
        "The voice's figure of bar 1 comes back in bar 2 with other accidentals."
    )


def test_a_figure_is_told_up_to_the_bar_line() -> None:
    text = """
        count | 1  2  &  3  4  | 1  2  3  4  | 1  2  &  3  4  | 1  2  3  4  |
        voice | C4 E4 D4 G4 A4 | C4 B3 D4 F4 | C4 E4 D4 G4 A4 | C4 G4 D4 E4 |
    """
    fact = facts_of(text)["voice.longest-figure"]
    assert fact.value == 6
    assert fact.sentence == "The voice's figure of bar 1 comes back in bar 3."


def test_a_riff_in_every_bar_is_told() -> None:
    bar = "E2 E2 G2 A2 B2|"
    text = f"""
        count | 1  2  3  &  4 | 1  2  3  &  4 | 1  2  3  &  4 |
        bass  | {bar} {bar} {bar}
    """
    told = "The bass plays the figure of bar 1 in every bar."
    assert facts_of(text)["bass.longest-figure"].sentence == told


def test_scales_and_repeated_notes_are_no_figures() -> None:
    scale = """
        count | 1  2  3  4  | 1  2  3  4  |
        voice | C4 D4 E4 F4 | G4 A4 B4 C5 |
    """
    repeated = scale.replace("D4 E4 F4", "C4 C4 C4").replace("A4 B4 C5", "G4 G4 G4")
    for text in (scale, repeated):
        found = facts_of(text)
        assert not {"voice.longest-figure", "voice.sequence"} & set(found)


def test_statements_do_not_overlap() -> None:
    assert apart(3, [0, 1, 2, 3, 6]).starts == (0, 3, 6)  # type: ignore[union-attr]
    assert apart(3, [0, 2]) is None


def test_every_run_found_is_there_twice() -> None:
    line = line_of(AMAZING_GRACE)
    whole = [range(len(line))]
    runs = list(recurring(line, whole, range(len(line))))
    assert runs
    for length, starts in runs:
        moves = {line.moves[start : start + length - 1] for start in starts}
        gaps = {line.gaps[start : start + length - 1] for start in starts}
        assert (len(moves), len(gaps)) == (1, 1)


def test_the_longest_run_is_as_long_as_a_search_of_all_pairs_finds() -> None:
    line = line_of(AMAZING_GRACE)
    runs = recurring(line, [range(len(line))], range(len(line)))
    bar = line.pulse.wholes[1]
    pairs = [*zip(line.moves, line.gaps, strict=True)]
    found = 0
    for first in range(len(line)):
        for second in range(first + 1, len(line)):
            length = 1
            while (
                second + length < len(line)
                and pairs[first + length - 1] == pairs[second + length - 1]
                and line.starts[first + length] - line.starts[first] < 2 * bar
                and line.starts[second + length] - line.starts[second] < 2 * bar
            ):
                length += 1
            found = max(found, length)
    assert max(length for length, _ in runs) == found


SEQUENCE = """
    key: C major
    count | 1  &  2  &  3  4  | 1  &  2  &  3  4  | 1  &  2  &  3  4  | 1  2  3  4  |
    voice | G4 A4 B4 G4 A4 E4 | F4 G4 A4 F4 G4 D4 | E4 F4 G4 E4 F4 C4 | D4 B3 C4    |
"""


def test_a_diatonic_sequence_is_found_and_told_once() -> None:
    found = facts_of(SEQUENCE)
    assert found["voice.sequence"].text == "a diatonic sequence down a step each time"
    assert bars_of(found["voice.sequence"]) == [1, 2, 3]
    assert found["voice.sequence"].sentence == (
        "Bars 1 to 3: the voice takes one figure down a step each time, a diatonic sequence."
    )
    assert found["voice.longest-figure"].sentence == ""


def test_a_sequence_with_the_same_semitones_is_real() -> None:
    text = """
        count | 1  &  2   &  3  4  | 1   &   2   &   3   4   |
        voice | C4 D4 Eb4 C4 G4 C4 | Bb3 C4  Db4 Bb3 F4  Bb3 |
    """
    assert facts_of(text)["voice.sequence"].text == "a real sequence down a step"


def test_three_notes_stated_twice_are_no_sequence() -> None:
    text = """
        count | 1  2  3  | 1  2  3  |
        meter: 3/4
        voice | C4 E4 D4 | D4 F4 E4 |
    """.replace("        meter: 3/4\n", "")
    text = f"        meter: 3/4\n{text}"
    assert "voice.sequence" not in facts_of(text)


def test_bars_of_one_rhythm_are_told() -> None:
    text = """
        count | 1  &  2  &  3  4  | 1  &  2  &  3  4  | 1  &  2  &  3  4  |
        voice | C4       D4 E4 G4 | A4       G4 F4 C4 | E4       F4 D4 B3 |
    """
    fact = facts_of(text)["voice.shared-rhythm"]
    assert fact.text == "bars 1 to 3"
    assert fact.sentence == "Bars 1 to 3 share one rhythm in the voice."


def test_even_bars_and_repeated_figures_are_no_shared_rhythm() -> None:
    even = """
        count | 1  2  3  4  | 1  2  3  4  |
        voice | C4 E4 D4 F4 | G4 C4 A4 B4 |
    """
    same = """
        count | 1  &  2  3  4  | 1  &  2  3  4  |
        voice | C4 E4 D4 F4 G4 | D4 F4 E4 G4 A4 |
    """
    assert "voice.shared-rhythm" not in facts_of(even)
    assert "voice.shared-rhythm" not in facts_of(same)


def test_a_tune_has_few_sentences() -> None:
    assert len(sentences_of(TWINKLE)) <= 2
