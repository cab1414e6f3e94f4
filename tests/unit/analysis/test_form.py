"""A form against the clock, its facts, its sentences, and bars that do not fit their time.

A bar of 4/4 at 96 lasts 4 × 60/96 = 2.5 s, so 16 bars last 40 s; at 120 it lasts 2 s.
"""

from fractions import Fraction

import pytest

from sitegen.analysis.form import FormReading, analyse_form
from sitegen.analysis.form_findings import form_facts, form_sentences, implied_tempo
from sitegen.analysis.reading import Place
from sitegen.charts.defaults import SongDefaults
from sitegen.charts.form import read_form
from sitegen.diagnostics import Severity
from sitegen.source import Passage

SONG = (
    "Intro | 4 | 0:00",
    "Verse 1 | 16 | 0:10",
    "Chorus 1 | 16 | 0:50",
    "Verse 2 | 16 | 1:30",
    "Chorus 2 | 16 | 2:10 | = Chorus 1",
)


def analyse(*lines: str) -> FormReading:
    passage = Passage.of("\n".join(lines))
    form = read_form(passage, SongDefaults()).chart
    assert form is not None
    return analyse_form(form, passage.source)


def facts(*lines: str) -> dict[str, object]:
    return {fact.path: fact.value for fact in form_facts(analyse(*lines))}


def texts(*lines: str) -> dict[str, str]:
    return {fact.path: fact.text for fact in form_facts(analyse(*lines))}


def starts(reading: FormReading) -> list[float | None]:
    return [None if s.start is None else float(s.start) for s in reading.sections]


def test_starts_follow_from_bars_and_tempo() -> None:
    reading = analyse("tempo: 96", "Intro | 4", "Verse | 16", "Chorus | 7 1/2")
    assert starts(reading) == [0, 10, 50]
    assert [s.seconds for s in reading.sections] == [10, 40, Fraction(75, 4)]
    assert [s.first_bar for s in reading.sections] == [1, 5, 21]


def test_a_bar_lasts_as_long_as_its_meter() -> None:
    # 8 bars of 7/8 are 28 quarters: 14 s at 120; 8 bars of 6/8 at dotted quarter 60 are 16 s.
    seven = analyse("meter: 7/8", "tempo: 120", "Verse | 8")
    six = analyse("meter: 6/8", "tempo: 60", "Verse | 8")
    assert [seven.sections[0].seconds, six.sections[0].seconds] == [14, 16]


def test_computed_starts_are_anchored_at_the_first_stated_time() -> None:
    reading = analyse("tempo: 96", "Intro | 4", "Verse | 16 | 0:13", "Chorus | 16")
    assert [s.computed for s in reading.sections] == [3, 13, 53]
    assert starts(reading) == [3, 13, 53]


def test_drift_is_the_stated_start_minus_the_computed_one() -> None:
    reading = analyse("tempo: 96", "Intro | 4 | 0:00", "Verse | 16 | 0:11", "Chorus | 16 | 0:50")
    assert [s.drift for s in reading.sections] == [0, 1, 0]


def test_a_start_between_stated_times_is_stretched_to_fit() -> None:
    reading = analyse("tempo: 120", "A | 4 | 0:00", "B | 4", "C | 8 | 0:18")
    assert starts(reading) == [0, 9, 18]
    assert reading.sections[1].computed == 8


def test_two_stated_times_give_a_tempo_where_none_is_written() -> None:
    reading = analyse("A | 8 | 0:00", "B | 8 | 0:16", "C | 4")
    assert implied_tempo(reading) == 120
    assert starts(reading) == [0, 16, 32]
    assert [s.drift for s in reading.sections] == [None, None, None]


def test_an_implied_tempo_counts_dotted_quarters_in_a_compound_meter() -> None:
    assert implied_tempo(analyse("meter: 6/8", "A | 8 | 0:00", "B | 8 | 0:16")) == 60


def test_without_tempo_and_times_only_bars_are_known() -> None:
    reading = analyse("A | 8", "B | 16 | 0:30")
    assert starts(reading) == [None, None]
    assert reading.seconds is None
    assert [s.share for s in reading.sections] == [Fraction(1, 3), Fraction(2, 3)]


def test_a_section_with_its_own_tempo_keeps_its_own_pace() -> None:
    reading = analyse("tempo: 120", "A | 8", "B | 8 | tempo: 60", "C | 8")
    assert starts(reading) == [0, 16, 48]


def test_a_lead_in_longer_than_its_time_starts_at_zero() -> None:
    assert starts(analyse("tempo: 120", "A | 8", "B | 8 | 0:10"))[0] == 0


def test_the_last_section_ends_with_the_song() -> None:
    cut = analyse("tempo: 120", "length: 0:20", "A | 8 | 0:00", "B | 8 | 0:16")
    assert cut.sections[1].seconds == 4
    assert cut.seconds == 20


def test_facts_of_a_song_that_drags() -> None:
    # 52 bars, 130 s at 96, stated to last 131 s: 96 × 130/131 = 95.27 on average.
    lines = ("tempo: 96", *SONG[:-1], "Chorus 2 | 16 | 2:11")
    assert facts(*lines) == {
        "bars": 68,
        "sections": 5,
        "letters": "A B C B C",
        "length": 171,
        "chorus": 50,
        "drift": 1,
        "tempo-implied": Fraction(96 * 130, 131),
    }
    assert texts(*lines)["drift"] == "1 s behind"
    assert texts(*lines)["tempo-implied"] == "95.3"
    assert texts(*lines)["length"] == "2:51"


def test_a_fact_says_where_it_can_be_seen() -> None:
    found = {f.path: f.evidence for f in form_facts(analyse("tempo: 96", *SONG))}
    assert found["chorus"] == (Place(21, Fraction(1)),)
    assert found["drift"] == (Place(53, Fraction(1)),)


def test_half_bars_are_counted_exactly() -> None:
    assert facts("A | 7 1/2", "B | 8")["bars"] == Fraction(31, 2)
    assert texts("A | 7 1/2", "B | 8")["bars"] == "15 1/2"


def test_facts_without_times_say_nothing_of_the_clock() -> None:
    assert set(facts("Verse | 8", "Chorus | 8")) == {"bars", "sections", "letters"}


def test_sentences_on_a_song_in_time() -> None:
    assert form_sentences(analyse("tempo: 96", *SONG, "Outro | 4")) == (
        "Six sections, 72 bars, 3:00: A B C B C D.",
        "The first chorus comes at 0:50, after 20 bars, 28 % of the way in.",
        "The start times keep to a steady 96 within a second.",
    )


def test_sentences_name_the_letter_that_fills_most() -> None:
    assert form_sentences(analyse("Verse | 8", "Chorus 1 | 8", "Chorus 2 | 8")) == (
        "Three sections, 24 bars: A B B.",
        "The first chorus comes after 8 bars, 33 % of the way in.",
        "B (chorus) fills 16 of 24 bars, 67 %.",
    )


def test_sentences_on_drift() -> None:
    late = (*SONG[:-1], "Chorus 2 | 16 | 2:12")
    assert form_sentences(analyse("tempo: 96", *late))[-1] == (
        "Against a steady 96 the recording runs 2 s behind by Chorus 2: "
        "94.5 beats a minute on average."
    )
    early = (*SONG[:-1], "Chorus 2 | 16 | 2:08")
    assert "runs 2 s ahead by Chorus 2" in form_sentences(analyse("tempo: 96", *early))[-1]
    once = (*SONG[:2], "Chorus 1 | 16 | 0:52", *SONG[3:])
    assert form_sentences(analyse("tempo: 96", *once))[-1] == (
        "Against a steady 96 the recording is 2 s behind at Chorus 1, and level again by Chorus 2."
    )


def test_a_song_that_opens_with_its_chorus() -> None:
    assert "The song opens with its chorus." in form_sentences(analyse("Chorus | 8", "Verse | 8"))


def test_bars_that_do_not_fill_their_time_are_warned_of() -> None:
    lines = ("tempo: 96", "Verse | 16 | 0:00", "Chorus | 16 | 0:35", "Coda | 8 | 1:15")
    (found,) = analyse(*lines).diagnostics
    assert (found.code, found.severity) == ("form-drift", Severity.WARNING)
    assert (found.span.line, found.span.column, found.span.end_column) == (2, 9, 11)
    assert "16 bars here last 40 s at the tempo, the times leave 35 s" in found.message
    assert found.hint == "14 bars would fill 35 s"


def test_a_warning_over_several_sections_says_up_to_where() -> None:
    lines = ("tempo: 96", "Verse | 16 | 0:00", "Tag | 4", "Chorus | 16 | 1:10", "Coda | 8 | 1:50")
    (found,) = analyse(*lines).diagnostics
    assert '20 bars up to "Chorus" last 50 s' in found.message
    assert found.hint == "28 bars would fill 70 s"


@pytest.mark.parametrize(
    ("second", "is_warned"), [(43, False), (44, True), (37, False), (36, True)]
)
def test_whole_seconds_and_breathing_players_are_allowed_for(second: int, is_warned: bool) -> None:
    # 40 s at the tempo: 2 s for two rounded times and 1.2 s (3 %) for the players.
    lines = ("tempo: 96", "A | 16 | 0:00", f"B | 16 | 0:{second}", f"C | 8 | 1:{second - 20}")
    assert [d.code for d in analyse(*lines).diagnostics] == ["form-drift"] * is_warned


def test_one_tempo_wrong_throughout_is_warned_of_once() -> None:
    lines = ("title: Song", "tempo: 48", *SONG)
    (found,) = analyse(*lines).diagnostics
    assert (found.code, found.severity) == ("form-tempo", Severity.WARNING)
    assert (found.span.line, found.span.column) == (2, 8)
    assert found.message == "the start times ask for 96 beats a minute, the tempo is quarter = 48"


def test_nothing_is_warned_of_where_a_section_was_lost() -> None:
    lines = ("tempo: 96", "Verse | 16 | 0:00", "Chorus | x", "Coda | 8 | 1:20", "End | 8 | 1:40")
    assert analyse(*lines).diagnostics == ()


def test_references_are_the_charts_that_sections_name() -> None:
    reading = analyse("A | 8 | changes: verse | see: opening", "B | 8 | charts: verse")
    assert [(name, span.line) for name, span in reading.references] == [
        ("verse", 1),
        ("opening", 1),
        ("verse", 2),
    ]
