"""Reading `form` blocks: what is kept, and what is reported where."""

from fractions import Fraction

import pytest

from sitegen.charts.defaults import SongDefaults
from sitegen.charts.form import read_form
from sitegen.diagnostics import Diagnostic
from sitegen.score.form import Form
from sitegen.score.meter import Meter
from sitegen.score.tempo import Tempo
from sitegen.source import Passage


def read(*lines: str, defaults: SongDefaults | None = None) -> tuple[Form, list[Diagnostic]]:
    reading = read_form(Passage.of("\n".join(lines)), defaults or SongDefaults())
    assert isinstance(reading.chart, Form)
    return reading.chart, list(reading.diagnostics)


def good(*lines: str, defaults: SongDefaults | None = None) -> Form:
    form, found = read(*lines, defaults=defaults)
    assert found == []
    return form


def places(*lines: str) -> list[tuple[str, int, int, int]]:
    """Return code, line, column and end column of every fault."""
    found = read_form(Passage.of("\n".join(lines)), SongDefaults()).diagnostics
    return [(d.code, d.span.line, d.span.column, d.span.end_column) for d in found]


def test_reads_name_bars_and_start_time_of_each_section() -> None:
    form = good("id: plan", "title: The whole", "", "Verse 1 | 16 | 0:10", "Chorus 1 | 8")
    assert (form.id, form.title) == ("plan", "The whole")
    assert [(s.name, s.start_time) for s in form.sections] == [("Verse 1", 10), ("Chorus 1", None)]
    assert [s.bars for s in form.sections] == [16, 8]
    assert form.complete


def test_reads_extras_in_any_order() -> None:
    form = good(
        "Chorus 1 | 16 | changes: chorus | 1:02",
        "Chorus 2 | 16 | say: half time: slower | notation: voice, opening | = Chorus 1 | 2:04",
    )
    first, second = form.sections
    assert (first.start_time, second.start_time) == (62, 124)
    assert (second.same_as, second.remark) == ("Chorus 1", "half time: slower")
    assert [(c.id, c.word) for c in second.charts] == [
        ("voice", "notation"),
        ("opening", "notation"),
    ]


def test_a_mention_of_a_chart_has_its_own_span() -> None:
    form = good("Chorus | 16 | charts: opening,  verse-2")
    spans = [(c.span.column, c.span.end_column) for c in form.sections[0].charts]
    assert spans == [(23, 30), (33, 40)]


@pytest.mark.parametrize(
    ("written", "bars"),
    [("16", "16"), ("7 1/2", "15/2"), ("1/2", "1/2"), ("4 bars", "4"), ("1 bar", "1")],
)
def test_reads_bars_and_parts_of_bars(written: str, bars: str) -> None:
    assert good(f"Verse | {written}").sections[0].bars == Fraction(bars)


def test_a_section_can_have_a_meter_and_a_tempo_of_its_own() -> None:
    form = good("tempo: 96", "Verse | 8 (7/8) | tempo: 120", "Chorus | 4")
    verse, chorus = form.sections
    assert (str(verse.meter), str(chorus.meter)) == ("7/8", "4/4")
    assert [verse.length, chorus.length] == [28, 16]
    assert verse.tempo == Tempo(Fraction(120))
    assert chorus.tempo == Tempo(Fraction(96))


def test_meter_and_tempo_come_from_the_song_where_the_head_is_silent() -> None:
    song = SongDefaults(meter=Meter.read("6/8"), tempo=Tempo(Fraction(58), Fraction(3, 2)))
    form = good("Verse | 8", defaults=song)
    assert (form.meter, form.tempo) == (song.meter, song.tempo)
    assert good("meter: 3/4", "Verse | 8", defaults=song).sections[0].length == 24


def test_a_bare_tempo_counts_dotted_quarters_in_a_compound_meter() -> None:
    form = good("meter: 6/8", "tempo: 58", "Verse | 8")
    assert form.tempo == Tempo(Fraction(58), Fraction(3, 2))


def test_at_is_the_start_of_the_first_section() -> None:
    assert good("at: 0:12", "Verse | 8").sections[0].start_time == 12
    assert good("at: 0:12", "Verse | 8 | 0:12").sections[0].start_time == 12


def test_bar_lines_may_frame_a_line() -> None:
    form = good("| Verse | 8 | 0:05 |", "Chorus | 8 |")
    assert [(s.name, s.start_time) for s in form.sections] == [("Verse", 5), ("Chorus", None)]


def test_an_equals_sign_finds_a_section_whatever_its_capitals() -> None:
    form = good("Chorus  1 | 8", "Chorus 2 | 8 | =chorus 1")
    assert form.sections[1].same_as == "Chorus 1"


@pytest.mark.parametrize(
    ("lines", "fault"),
    [
        (("Verse 1 16",), ("form-cells", 1, 1, 11)),
        (("Verse | 16 | 0:10 | 0:20",), ("form-cells", 1, 21, 25)),
        (("A | 8", "B | 8 | = A | = A"), ("form-cells", 2, 15, 18)),
        (("| 8",), ("form-name", 1, 1, 1)),
        ((f"{'x' * 81} | 8",), ("form-name", 1, 1, 82)),
        (("Verse | 8", "Chorus | 8", "verse | 8"), ("form-double", 3, 1, 6)),
        (("Verse | sixteen",), ("form-bars", 1, 9, 16)),
        (("Verse | 7.5.5",), ("form-bars", 1, 9, 14)),
        (("Verse | 7.5 1/2",), ("form-bars", 1, 9, 16)),
        (("Verse | 0",), ("form-bars", 1, 9, 10)),
        (("Verse | -4",), ("form-bars", 1, 9, 11)),
        (("Verse | 7 3/2",), ("form-bars", 1, 9, 14)),
        (("Verse |  | 0:10",), ("form-bars", 1, 8, 10)),
        (("Verse | 8 (7/9)",), ("form-bars", 1, 12, 15)),
        (("Verse | 99999999999999999",), ("form-bars", 1, 9, 26)),
        (("Verse | 8 | 0:75",), ("form-time", 1, 13, 17)),
        (("Verse | 8 | 12",), ("form-time", 1, 13, 15)),
        (("length: 1:00", "Verse | 8 | 1:00"), ("form-time", 2, 13, 17)),
        (("at: 0:05", "Verse | 8 | 0:06"), ("form-time", 2, 13, 17)),
        (("Verse | 8 | 0:30", "Chorus | 8 | 0:30"), ("form-order", 2, 14, 18)),
        (("at: 0:30", "Verse | 8", "Chorus | 8 | 0:30"), ("form-order", 3, 14, 18)),
        (("Chorus 1 | 8", "Chorus 2 | 8 | = Corus 1"), ("form-same", 2, 18, 25)),
        (("Chorus 1 | 8 | = Chorus 1",), ("form-same", 1, 18, 26)),
        (("Chorus 1 | 8 | =",), ("form-same", 1, 16, 17)),
        (("Verse | 8 | chords: verse",), ("form-extra", 1, 13, 19)),
        (("Verse | 8 | verse",), ("form-extra", 1, 13, 18)),
        (("Verse | 8 | changes:",), ("form-extra", 1, 13, 21)),
        (("Verse | 8 | say:",), ("form-extra", 1, 13, 17)),
        (("Verse | 8 | tempo: fast",), ("form-extra", 1, 20, 24)),
        (("Verse | 8 | changes: verse, Verse_2",), ("form-chart", 1, 29, 36)),
        (("Verse | 9999", "Chorus | 2"), ("form-long", 2, 10, 11)),
        (("id: Plan", "Verse | 8"), ("head-value", 1, 5, 9)),
        (("tempi: 96", "Verse | 8"), ("head-field", 1, 1, 6)),
    ],
)
def test_reports_each_fault_at_its_place(
    lines: tuple[str, ...], fault: tuple[str, int, int, int]
) -> None:
    assert places(*lines) == [fault]


def test_columns_count_code_points_of_the_file() -> None:
    assert places("Café | acht") == [("form-bars", 1, 8, 12)]
    assert places("Cafe\u0301 | acht") == [("form-bars", 1, 9, 13)]


def test_reports_all_faults_of_a_block_in_one_go() -> None:
    lines = ("Verse | x", "Chorus | 8 | 0:99", "Bridge", "Outro | 8 | foo: bar")
    assert [code for code, *_ in places(*lines)] == [
        "form-bars",
        "form-time",
        "form-cells",
        "form-extra",
    ]


def test_a_lost_section_leaves_the_others_and_says_so() -> None:
    form, _ = read("Verse | x", "Chorus | 8")
    assert [s.name for s in form.sections] == ["Chorus"]
    assert not form.complete


def test_a_section_with_lost_bars_can_still_be_pointed_at() -> None:
    assert [code for code, *_ in places("Verse | x", "Verse 2 | 8 | = Verse")] == ["form-bars"]


def test_one_slipped_time_is_one_fault_and_kept_times_rise() -> None:
    lines = ("A | 8 | 0:00", "B | 8 | 5:00", "C | 8 | 0:50", "D | 8 | 1:30")
    form, found = read(*lines)
    assert [(d.code, d.span.line) for d in found] == [("form-order", 3)]
    kept = [s.start_time for s in form.sections if s.start_time is not None]
    assert kept == sorted(set(kept))


def test_a_time_that_does_not_rise_is_dropped() -> None:
    form, _ = read("A | 8 | 0:30", "B | 8 | 0:30")
    assert [s.start_time for s in form.sections] == [30, None]


def test_a_mistyped_section_is_guessed() -> None:
    _, found = read("Chorus 1 | 8", "Bridge | 8 | = Corus 1")
    assert found[0].hint == 'did you mean "Chorus 1"?'


def test_a_mistyped_word_is_guessed() -> None:
    _, found = read("Chorus 1 | 8 | chanegs: verse")
    assert found[0].hint == 'did you mean "changes"?'


@pytest.mark.parametrize("lines", [(), ("",), ("id: plan", "tempo: 96")])
def test_a_form_without_a_section_is_empty(lines: tuple[str, ...]) -> None:
    reading = read_form(Passage.of("\n".join(lines)), SongDefaults())
    assert reading.chart is None
    assert [d.code for d in reading.diagnostics] == ["form-empty"]


def test_the_id_outlives_a_lost_form() -> None:
    reading = read_form(Passage.of("id: plan\nVerse | many"), SongDefaults())
    assert (reading.id, reading.chart) == ("plan", None)


def test_more_sections_than_any_song_has_are_refused_once() -> None:
    form, found = read(*(f"Part {n} | 2" for n in range(1, 600)))
    assert [(d.code, d.span.line) for d in found] == [("form-long", 501)]
    assert len(form.sections) == 500
    assert not form.complete


def test_bars_may_be_halved() -> None:
    form = good("meter: 4/4", "", "Verse | 7.5", "Link | 1/2", "Chorus | 8 1/2")
    assert [s.bars for s in form.sections] == [Fraction(15, 2), Fraction(1, 2), Fraction(17, 2)]


def test_a_head_line_is_reported_once() -> None:
    assert places("tempo:", "", "Verse | 8") == [("head-value", 1, 1, 6)]


def test_the_head_may_name_the_key() -> None:
    assert str(good("key: A minor", "", "Verse | 8").key) == "A minor"
    assert places("key: H", "", "Verse | 8") == [("head-value", 1, 6, 7)]
