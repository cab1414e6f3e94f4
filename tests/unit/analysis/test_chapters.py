"""A form that is placed in the recording gives its chapters."""

from fractions import Fraction
from io import StringIO

import webvtt as outside

from sitegen.analysis.chapters import Chapter, chapter_lines, chapters_of, webvtt
from sitegen.analysis.form import analyse_form
from sitegen.charts.defaults import SongDefaults
from sitegen.charts.form import read_form
from sitegen.source import Passage

PLAN = (
    "tempo: 96",
    "length: 3:03",
    "Intro    | 4  | 0:00",
    "Verse 1  | 16 | 0:10",
    "Chorus 1 | 12 | 0:50",
    "Coda     | 5  | 1:20",
)


def chapters(*lines: str) -> tuple[Chapter, ...]:
    passage = Passage.of("\n".join(lines))
    form = read_form(passage, SongDefaults()).chart
    assert form is not None
    return chapters_of(analyse_form(form, passage.source))


def test_each_section_lasts_up_to_the_next_and_the_last_to_its_own_end() -> None:
    found = [(one.name, float(one.start), float(one.end)) for one in chapters(*PLAN)]
    # Five bars of 4/4 at 96 last 12.5 s.
    assert found == [
        ("Intro", 0, 10),
        ("Verse 1", 10, 50),
        ("Chorus 1", 50, 80),
        ("Coda", 80, 92.5),
    ]


def test_without_a_time_that_was_heard_there_are_none() -> None:
    assert chapters("tempo: 96", "Intro | 4", "Verse | 16") == ()


def test_a_start_between_two_heard_ones_is_counted() -> None:
    found = chapters("tempo: 96", "Intro | 4 | 0:00", "Verse | 16", "Chorus | 12 | 0:50")
    assert [float(one.start) for one in found] == [0, 10, 50]


def test_the_file_is_read_by_another_reader_of_webvtt() -> None:
    made = (*chapters(*PLAN), Chapter("Verse <2> & coda", Fraction(37001, 10), Fraction(3701)))
    read = outside.from_buffer(StringIO(webvtt(made)))
    assert [(cue.start, cue.end, cue.raw_text) for cue in read.captions] == [
        ("00:00:00.000", "00:00:10.000", "Intro"),
        ("00:00:10.000", "00:00:50.000", "Verse 1"),
        ("00:00:50.000", "00:01:20.000", "Chorus 1"),
        ("00:01:20.000", "00:01:32.500", "Coda"),
        ("01:01:40.100", "01:01:41.000", "Verse &lt;2&gt; &amp; coda"),
    ]


def test_lines_start_at_nought() -> None:
    assert chapter_lines(chapters(*PLAN)).splitlines() == [
        "0:00 Intro",
        "0:10 Verse 1",
        "0:50 Chorus 1",
        "1:20 Coda",
    ]
    late = (Chapter("Verse", Fraction(25, 2), Fraction(30)),)
    assert chapter_lines(late) == "0:00 Start\n0:12 Verse\n"
    assert chapter_lines(()) == ""
