"""The `form` kind from text to drawing."""

import json
from collections.abc import Mapping

from sitegen.charts.defaults import SongDefaults
from sitegen.figures.form_plan import PlanContent, PlanLink
from sitegen.kinds.form import FORM
from sitegen.kinds.kind import Analysis, BarAccount, Drawing, Surroundings
from sitegen.source import Passage

HEADINGS = {"verse 1": "verse-1", "chorus 1": "chorus-1"}
CHARTS = {"riff": ("opening-riff", "Example 1"), "verse": ("verse-changes", "Example 2")}


def analyse(text: str) -> Analysis:
    reading = FORM.read(Passage.of(text), SongDefaults())
    assert reading.chart is not None
    return FORM.analyse(reading.chart, Surroundings("plan", "Plan 1"))


def draw(
    text: str,
    headings: Mapping[str, str] = HEADINGS,
    charts: Mapping[str, tuple[str, str]] = CHARTS,
) -> Drawing:
    return FORM.draw(analyse(text), Surroundings("plan", "Plan 1", headings, charts))


def content(text: str) -> PlanContent:
    drawn = draw(text).content
    assert isinstance(drawn, PlanContent)
    return drawn


SONG = """\
tempo: 96

Intro | 4 | 0:00 | notation: riff
Verse 1 | 16 | 0:10 | changes: verse
Chorus 1 | 7 1/2 | 0:50 | say: half time
Verse 2 | 12 | = Verse 1
Coda | 4 | see: nowhere
"""


def test_its_example_is_without_fault() -> None:
    reading = FORM.read(Passage.of(FORM.example), SongDefaults())
    assert reading.diagnostics == ()
    assert (reading.id, reading.title) == ("plan", "The song from end to end")
    assert analyse(FORM.example).diagnostics == ()


def test_its_record_is_json_and_says_every_section() -> None:
    record = json.loads(json.dumps(analyse(f"id: plan\ntitle: All\n{SONG}").record))
    sections = record.pop("sections")
    assert record == {
        "id": "plan",
        "kind": "form",
        "title": "All",
        "key": None,
        "meter": "4/4",
        "bars": 43.5,
        "chords": [],
        "notes": [],
    }
    assert sections[1] == {
        "name": "Verse 1",
        "letter": "B",
        "bars": 16,
        "start": 10,
        "start_computed": 10,
        "length": 40,
        "same_as": None,
        "charts": ["verse"],
    }
    assert (sections[3]["letter"], sections[3]["same_as"]) == ("B′", "Verse 1")
    assert (sections[3]["start"], sections[3]["start_computed"]) == (None, 68.75)


def test_a_form_without_tempo_has_no_times_in_its_record() -> None:
    (section,) = json.loads(json.dumps(analyse("Verse | 8").record))["sections"]
    assert [section[name] for name in ("start", "start_computed", "length")] == [None] * 3


def test_rows_have_their_texts_ready() -> None:
    rows = content(SONG).rows
    assert [row.letter for row in rows] == ["A", "B", "C", "B′", "D"]
    assert [row.start for row in rows] == ["0:00", "0:10", "0:50", "about 1:09", "about 1:39"]
    assert [row.length for row in rows] == ["0:10", "0:40", "0:19", "0:30", "0:10"]
    assert [row.bars for row in rows] == ["4", "16", "7 1/2", "12", "4"]
    assert rows[2].remark == "half time"


def test_a_section_leads_to_its_heading_else_to_its_chart_else_where_its_model_leads() -> None:
    intro, verse, chorus, second, coda = content(SONG).rows
    assert intro.href == "#opening-riff"
    assert verse.href == "#verse-1"
    assert chorus.href == "#chorus-1"
    assert second.href == "#verse-1"
    assert coda.href == ""


def test_charts_are_named_as_the_page_names_them() -> None:
    rows = content(SONG).rows
    assert rows[0].charts == (PlanLink("Example 1", "#opening-riff"),)
    assert rows[4].charts == (PlanLink("nowhere", ""),)


def test_both_drawings_link_the_sections() -> None:
    drawn = content(SONG)
    for svg in (drawn.svg, drawn.narrow_svg):
        assert svg.count('<a href="#verse-1" ') == 2
        assert svg.count('<a href="#opening-riff" ') == 1
        assert "<title>Verse 1: B, 16 bars, 0:10</title>" in svg


def test_drawings_and_rows_know_from_when_to_when_a_section_is_heard() -> None:
    drawn = content("length: 1:30\nVerse | 16 | 0:10\nChorus | 8 | 0:50")
    assert [(row.begin, row.end) for row in drawn.rows] == [(10, 50), (50, 70)]
    for svg in (drawn.svg, drawn.narrow_svg):
        assert svg.count('data-start="10" data-end="50"') == 1
        assert svg.count('data-start="50" data-end="70"') == 1


def test_a_form_without_times_is_drawn_along_its_bars() -> None:
    drawn = content("Verse | 16\nChorus | 8")
    assert "data-start" not in drawn.svg + drawn.narrow_svg
    assert drawn.rows[0].begin is drawn.rows[0].end is None
    assert "0:00" not in drawn.svg
    assert ">17</text>" in drawn.svg
    assert drawn.rows[0].start == drawn.rows[0].length == ""


def test_a_song_length_alone_gives_no_times() -> None:
    with_length = content("length: 3:00\nVerse | 16\nChorus | 8")
    assert with_length.svg == content("Verse | 16\nChorus | 8").svg.replace(
        "Two sections, 24 bars: ", "Two sections, 24 bars, 3:00: "
    )


def test_says_what_it_shows_in_one_sentence() -> None:
    assert draw(SONG).summary == "Five sections, 43 1/2 bars, 1:49: A B C B′ D."
    assert draw(SONG).piece == "plan"


def test_notes_are_the_findings() -> None:
    assert content(SONG).notes[0] == draw(SONG).summary
    assert content(SONG).notes[-1] == "The start times keep to a steady 96 within a second."


def test_its_account_goes_section_by_section_in_words() -> None:
    account = draw(SONG).account
    assert account[0] == BarAccount(
        "Intro", ("Letter A: 4 bars of 4/4.", "Starts at 0:00, lasts 0:10.", "Shown in Example 1.")
    )
    assert account[2].sentences[-1] == "Half time."
    assert account[3].sentences[:2] == ("Letter B varied: 12 bars of 4/4.", "The same as Verse 1.")


def test_ids_come_from_its_place_on_the_page() -> None:
    drawn = draw(SONG).content
    assert 'id="plan-wide-title"' in drawn.svg
    assert 'id="plan-narrow-title"' in drawn.narrow_svg


def test_names_cannot_break_out_of_the_drawing() -> None:
    drawn = content('<script>alert("x")</script> & co | 64')
    assert "<script" not in drawn.svg + drawn.narrow_svg
