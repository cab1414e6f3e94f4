"""The key, mode, tonic and changes of key that a chart's notes and chords speak for."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from unit.analysis.transposing import transpose_chart
from unit.charts.reading_aloud import changes, chart_of, read

from sitegen.analysis.naming import name_chords, name_notes
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.analysis.tonality import find_tonality
from sitegen.score.chart import Chart
from sitegen.score.interval import Interval

# Values that name no pitch.
_UNNAMED = {
    "key-fit",
    "key-agreement",
    "mode-evidence",
    "scale-degrees-missing",
    "tonic-bars",
    "tonic-chords",
}
_UP = [Interval(1, 2), Interval(3, 5), Interval(-1, -2), Interval(2, 3), Interval(-2, -3)]


def facts(chart: Chart) -> dict[str, Fact]:
    found = find_tonality(ChartReading(chart, name_notes(chart), name_chords(chart)))
    return {fact.path: fact for fact in found}


def progression(symbols: str, key: str = "") -> Chart:
    """Return a chart of chords, a bar each."""
    head = "id: loop\n" + (f"key: {key}\n" if key else "")
    return chart_of(changes(f"{head}meter: 4/4\n\n| {' | '.join(symbols.split())} |"))


def test_the_key_found_has_a_fit_and_a_runner_up() -> None:
    found = facts(progression("C F G7 C Am Dm G7 C", "C major"))

    assert found["key-found"].text == "C major"
    assert found["key-fit"].value > Fraction(8, 10)  # type: ignore[operator]
    assert found["key-runner-up"].text != "C major"
    assert found["key-agreement"].text == "agrees"
    assert [fact.sentence for fact in found.values() if fact.sentence] == []


def test_a_key_that_nothing_speaks_for_is_told_and_is_no_warning() -> None:
    found = facts(progression("C F G7 C F C G7 C", "Eb major"))

    assert found["key-agreement"].value == "differs"
    assert found["key-agreement"].sentence == (
        "The notes and chords speak for C major rather than E♭ major."
    )


@pytest.mark.parametrize("key", ["C major", "A minor", "D dorian", "G mixolydian", "C minor"])
def test_a_key_near_the_one_found_is_not_contradicted(key: str) -> None:
    assert "rather" not in facts(progression("C F G7 C F C G7 C", key))["key-agreement"].sentence


@pytest.mark.parametrize(
    ("symbols", "readings"),
    [
        # Loops without a cadence, read with two tonics: Temperley, The Musical Language of Rock,
        # 2018; de Clercq and Temperley, A corpus analysis of rock harmony, 2011 (from memory).
        ("Am F C G", "A minor or C major"),
        ("Em C G D", "E minor or G major"),
        # Two-chord vamps, dorian i IV and mixolydian I bVII: common practice, no source.
        ("Am D Am D", "A dorian or D mixolydian"),
        ("G F G F", "G mixolydian or C major"),
        ("D C G D", "D mixolydian or G major"),
    ],
)
def test_an_ambiguous_loop_names_both_readings(symbols: str, readings: str) -> None:
    found = facts(progression(symbols))

    assert found["key-readings"].text == readings
    assert found["key-readings"].sentence.startswith(
        f"Reads as {readings}: the notes are the same"
    )


def test_the_reasons_of_two_readings_are_told() -> None:
    assert facts(progression("Em C G D"))["key-readings"].sentence == (
        "Reads as E minor or G major: the notes are the same, no leading tone, D♯, points to E"
        " and both tonics begin a bar."
    )


def test_the_author_who_names_a_key_is_not_told_that_it_is_open() -> None:
    assert facts(progression("Am F C G", "A minor"))["key-readings"].sentence == ""


def test_a_cadence_leaves_no_second_reading() -> None:
    assert "key-readings" not in facts(progression("C F G7 C"))
    assert "key-readings" not in facts(progression("Am Dm E7 Am"))


@pytest.mark.parametrize(
    ("symbols", "key", "mode", "sentence"),
    [
        ("Am7 D7 Am7 D7", "A dorian", "dorian", "F♯ in bars 2 and 4 makes it dorian."),
        ("Am7 D7 Am7 D7", "A minor", "dorian", "F♯ in bars 2 and 4 makes it A dorian."),
        ("D C G D", "D major", "mixolydian", "C in bar 2 makes it D mixolydian."),
        ("E F G Em", "E phrygian", None, None),
        ("Em F Em Dm", "E phrygian", "phrygian", "F in bars 2 and 4 makes it phrygian."),
        ("F G C F", "F lydian", "lydian", "B in bar 2 makes it lydian."),
        ("C F G7 C", "C major", None, None),
        ("A7 D7 A7 E7", "A major", None, None),
    ],
)
def test_the_mode_has_the_note_that_makes_it(
    symbols: str, key: str, mode: str | None, sentence: str | None
) -> None:
    found = facts(progression(symbols, key)).get("mode-evidence")

    assert (found.value if found else None) == mode
    assert (found.sentence if found else None) == sentence


def test_a_missing_sixth_leaves_minor_and_dorian_open() -> None:
    found = facts(progression("Am G Em Am", "A minor"))["scale-degrees-missing"]

    assert found.value == "6"
    assert found.sentence == "No sixth sounds, so the notes fit A dorian as well as A minor."


def test_a_missing_third_is_told() -> None:
    found = facts(progression("E5 D5 A5 E5 D5 A5", "E minor"))["scale-degrees-missing"]

    assert found.value == "2 3 6"
    assert found.sentence == "No third over E sounds, neither the major nor the minor."


def test_a_loop_without_its_tonic_is_told() -> None:
    found = facts(progression("F G Am Em F G Am Em", "C major"))

    assert found["tonic-chords"].value == 0
    assert found["tonic-chords"].sentence == "No chord stands on the tonic, C."
    assert [place.bar for place in found["tonic-bars"].evidence] == [1, 3, 5, 7]


def test_a_lean_to_another_key_is_told_by_its_bars() -> None:
    chart = progression("C Am Dm G7 C Am Dm G7 Ab Fm Bbm Eb7 Ab Fm Eb7 Ab", "C major")

    found = facts(chart)["key-changes"]

    assert found.text == "bars 1 to 8 C major, bars 9 to 16 A♭ major"
    assert found.sentence == "Bars 9 to 16 lean to A♭ major."
    assert {place.bar for place in found.evidence} <= set(range(9, 17))


def test_a_phrase_that_cadences_in_the_dominant_leans_there() -> None:
    # The plan of a hymn's second line: common practice, no source.
    chart = progression("G D7/F# G C D A7/C# D A7 D G C D7 G", "G major")

    assert "lean to D major" in facts(chart)["key-changes"].sentence


@pytest.mark.parametrize(
    "symbols",
    [
        "C Am D7 G7 C F G7 C",
        "F Fmaj7 G7 G7 Gm7 Gb7 Fmaj7 Gb7",
        "E G A E E G A E",
        "A7 D7 A7 A7 D7 D7 A7 A7 E7 D7 A7 E7",
    ],
)
def test_applied_and_borrowed_chords_and_a_blues_stay_in_their_key(symbols: str) -> None:
    chart = progression(symbols, f"{symbols[0]} major")

    assert "key-changes" not in facts(chart)


def test_notes_and_chords_are_both_heard() -> None:
    text = """
        id: tune
        meter: 4/4

        count  | 1  &  2  &  3  &  4  &  | 1  &  2  &  3  &  4  &  |
        {chords}
        voice  | E4 D4 C4 D4 E4 E4 E4 r  | D4 D4 D4 r  E4 G4 G4 r  |
        """
    row = "chord  | {:<24}| {:<24}|"
    alone = facts(chart_of(read(text.replace("        {chords}\n", ""))))
    in_c, in_a = (
        facts(chart_of(read(text.replace("{chords}", row.format(*two.split())))))
        for two in ("C G7", "Am E7")
    )

    assert "key-found" not in alone or alone["key-found"].text == "C major"
    assert in_c["key-found"].text == "C major"
    assert in_a["key-found"].text == "A minor"


@pytest.mark.parametrize("symbols", ["C", "C C C C", "C5 G5 C5 G5", "N.C. N.C."])
def test_too_little_is_met_with_silence(symbols: str) -> None:
    assert facts(progression(symbols, "C major")) == {}


def test_every_fact_is_a_finding_in_order_of_time() -> None:
    for fact in facts(progression("F G Am Em F G Am Em", "C major")).values():
        places = [(place.bar, place.beat) for place in fact.evidence]
        assert places == sorted(places)
        assert fact.text


@settings(max_examples=30)
@given(
    st.lists(
        st.sampled_from(["C", "Am", "F", "G7", "Dm", "Em", "D7", "Fm", "Bb", "E7", "Cmaj7", "A5"]),
        min_size=2,
        max_size=12,
    ),
    st.sampled_from(["C major", "A minor", "D dorian", ""]),
    st.sampled_from(_UP),
)
def test_transposing_a_chart_changes_names_only(
    symbols: list[str], key: str, interval: Interval
) -> None:
    chart = progression(" ".join(symbols), key)
    before, after = facts(chart), facts(transpose_chart(chart, interval))

    assert list(before) == list(after)
    for path in _UNNAMED & set(before):
        assert before[path].value == after[path].value
    for path, fact in before.items():
        assert [place.bar for place in fact.evidence] == [p.bar for p in after[path].evidence]
        assert bool(fact.sentence) == bool(after[path].sentence)


def test_any_chart_is_read_without_bars_or_parts() -> None:
    empty = replace(progression("C G"), chords=(), parts=())

    assert facts(empty) == {}
