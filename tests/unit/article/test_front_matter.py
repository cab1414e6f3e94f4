"""The front matter is read field by field; each fault has its own line and column."""

from datetime import date
from fractions import Fraction

import pytest

from sitegen.article import FrontMatter, read_article, read_page
from sitegen.article.front import Correction, Moment, Rights, Song, SourceNote, Video
from sitegen.diagnostics import Diagnostic
from sitegen.score.key import Key
from sitegen.score.meter import Meter
from sitegen.score.pitch import PitchName
from sitegen.score.tempo import Tempo
from sitegen.source import Source


def read(*lines: str) -> tuple[FrontMatter, tuple[Diagnostic, ...]]:
    article, faults = read_article(Source("a.md", "\n".join(("---", *lines, "---", ""))), ())
    return article.front, faults


def fault_of(*lines: str) -> Diagnostic:
    _, faults = read("title: Low Tide", *lines)
    assert len(faults) == 1, faults
    return faults[0]


def place(fault: Diagnostic) -> tuple[int, int, str]:
    """Return line, column and the marked text."""
    span = fault.span
    line = fault.source.lines[span.line - 1]
    return span.line, span.column, line[span.column - 1 : span.end_column - 1]


def test_every_field_is_read() -> None:
    front, faults = read(
        "title: 'Low Tide: the bass'",
        "summary: >-",
        "  A song",
        "  in two chords.",
        "status: published",
        "published: 2026-05-04",
        "updated: 2026-06-01",
        "song:",
        "  title: Low Tide",
        "  artist: The Gantry",
        "  year: 1987",
        "  album: Salt",
        "  writers: [Ada Brandt, Bo Quill]",
        "  producers: Ada Brandt",
        "  engineers:",
        "  - Cy Orde",
        "  performers:",
        "    - Ada Brandt, bass",
        "  studio: The Shed",
        "  key: F# mixolydian",
        "  tempo: 58",
        "  meter: 12/8",
        "  tuning: drop C#",
        "  length: 3:42",
        "video:",
        "  page: https://example.org/watch?v=1",
        "  embed: https://example.org/embed/1?start={seconds}",
        "  file: clips/low-tide.webm",
        "  length: 600",
        "  holder: The Gantry",
        "  uploaded: 2026-03-01",
        "moments:",
        "  - time: 0:18",
        "    name: The voice enters",
        "  - 1:02 Chorus",
        "  - 1:02:33: The end",
        "topics: [bass, drones]",
        "sources:",
        "  - who: Ada Brandt",
        "    what: told me the tuning",
        "    where: by letter",
        "    when: 2026-04-01",
        "corrections:",
        "  - date: 2026-06-01",
        "    what: The bass was an octave too high.",
        "rights:",
        "  holder: The Gantry",
        "  note: Quoted for study.",
        "moved-from: [/notes/low-tide/, https://old.example.org/7]",
    )

    assert faults == ()
    assert front == FrontMatter(
        title="Low Tide: the bass",
        summary="A song in two chords.",
        status="published",
        published=date(2026, 5, 4),
        updated=date(2026, 6, 1),
        song=Song(
            title="Low Tide",
            artist="The Gantry",
            year=1987,
            album="Salt",
            writers=("Ada Brandt", "Bo Quill"),
            producers=("Ada Brandt",),
            engineers=("Cy Orde",),
            performers=("Ada Brandt, bass",),
            studio="The Shed",
            key=Key(PitchName("F", 1), "mixolydian"),
            tempo=Tempo(Fraction(58), Fraction(3, 2)),
            meter=Meter((3, 3, 3, 3), 8),
            tuning="drop C#",
            length=222,
        ),
        video=Video(
            "https://example.org/watch?v=1",
            "https://example.org/embed/1?start={seconds}",
            "clips/low-tide.webm",
            600,
            "The Gantry",
            date(2026, 3, 1),
        ),
        moments=(Moment(18, "The voice enters"), Moment(62, "Chorus"), Moment(3753, "The end")),
        topics=("bass", "drones"),
        sources=(SourceNote("Ada Brandt", "told me the tuning", "by letter", "2026-04-01"),),
        corrections=(Correction(date(2026, 6, 1), "The bass was an octave too high."),),
        rights=Rights("The Gantry", "Quoted for study."),
        moved_from=("/notes/low-tide/", "https://old.example.org/7"),
    )


def test_a_title_is_enough_to_be_published() -> None:
    assert read("title: Low Tide") == (FrontMatter(title="Low Tide"), ())


def test_a_bare_tempo_counts_quarters_where_the_meter_is_simple() -> None:
    front, _ = read("title: Low Tide", "song:", "  tempo: 96", "  meter: 4/4")

    assert front.song.tempo == Tempo(Fraction(96))


def test_fields_without_a_value_are_as_if_not_there() -> None:
    front, faults = read("title: Low Tide", "summary:", "song:", "  year: ~", "  album: null", "")

    assert faults == ()
    assert front == FrontMatter(title="Low Tide")


def test_yaml_does_not_guess() -> None:
    front, faults = read("title: No", "topics: [yes, 1e3, 0x10]", "song:", "  title: 1:30")

    assert faults == ()
    assert (front.title, front.topics, front.song.title) == ("No", ("yes", "1e3", "0x10"), "1:30")


@pytest.mark.parametrize(
    ("lines", "line", "column", "marked"),
    [
        (["published: 2026-02-30"], 3, 12, "2026-02-30"),
        (["published: 4 May 2026"], 3, 12, "4 May 2026"),
        (["updated: 2026-5-4"], 3, 10, "2026-5-4"),
        (["status: live"], 3, 9, "live"),
        (["status: Published"], 3, 9, "Published"),
        (["summary: [one, two]"], 3, 10, "[one, two]"),
        (["summary:", "  text: one"], 4, 3, "text: one"),
        (["topics:", "  name: bass"], 4, 3, "name: bass"),
        (["song: Low Tide"], 3, 7, "Low Tide"),
        (["song:", "  year: 87"], 4, 9, "87"),
        (["song:", '  year: "3021"'], 4, 9, '"3021"'),
        (["song:", "  year: soon"], 4, 9, "soon"),
        (["song:", "  key: Eb minr"], 4, 8, "Eb minr"),
        (["song:", "  key: H"], 4, 8, "H"),
        (["song:", "  key: G# major"], 4, 8, "G# major"),
        (["song:", "  meter: 4/5"], 4, 10, "4/5"),
        (["song:", "  tempo: fast"], 4, 10, "fast"),
        (["song:", "  length: 3:75"], 4, 11, "3:75"),
        (["song:", "  length: 0:00"], 4, 11, "0:00"),
        (["song:", "  length: 1:62:00"], 4, 11, "1:62:00"),
        (["song:", "  writers: [Ada, [Bo]]"], 4, 18, "[Bo]]"),
        (["video:", "  page: javascript:play()"], 4, 9, "javascript:play()"),
        (["video:", "  page: example.org/a"], 4, 9, "example.org/a"),
        (["video:", "  page: https:///a"], 4, 9, "https:///a"),
        (["video:", "  embed: http://[::1/a"], 4, 10, "http://[::1/a"),
        (["video:", "  embed: low tide"], 4, 10, "low tide"),
        (["video:", "  embed: //example.org/{seconds}"], 4, 10, "//example.org/{seconds}"),
        (["video:", "  embed: http://a.example/{seconds}"], 4, 10, "http://a.example/{seconds}"),
        (["video:", "  embed: https://{seconds}/a"], 4, 10, "https://{seconds}/a"),
        (["video:", "  embed: https://a.example/a"], 4, 10, "https://a.example/a"),
        (["video:", "  file: ../other/clip.webm"], 4, 9, "../other/clip.webm"),
        (["video:", "  file: /etc/clip.webm"], 4, 9, "/etc/clip.webm"),
        (["video:", "  file: data:video/webm;base64,AA"], 4, 9, "data:video/webm;base64,AA"),
        (["video:", "  length: 600", "  uploaded: March"], 5, 13, "March"),
        (["video:", "  uploaded: 2026-02-30"], 4, 13, "2026-02-30"),
        (["moments: 0:18 Voice"], 3, 10, "0:18 Voice"),
        (["moments:", "  - voice enters"], 4, 5, "voice enters"),
        (["moments:", "  - 0:18"], 4, 5, "0:18"),
        (["moments:", "  - 0:75 Voice"], 4, 5, "0:75 Voice"),
        (["moments:", "  - time: soon", "    name: Voice"], 4, 11, "soon"),
        (["moments:", "  - time: 0:18"], 4, 5, "time: 0:18"),
        (["moments:", "  - name: Voice"], 4, 5, "name: Voice"),
        (["sources:", "  - Ada Brandt"], 4, 5, "Ada Brandt"),
        (["sources:", "  - where: here"], 4, 5, "where: here"),
        (["corrections:", "  - what: The key."], 4, 5, "what: The key."),
        (["corrections:", "  - date: 2026-05-04"], 4, 5, "date: 2026-05-04"),
        (["corrections:", "  - date: May", "    what: The key."], 4, 11, "May"),
        (["rights: mine"], 3, 9, "mine"),
        (["moved-from: javascript:x"], 3, 13, "javascript:x"),
        (["moved-from: [/a/, /../b/]"], 3, 19, "/../b/"),
    ],
)
def test_a_value_that_cannot_be_used_is_told_in_its_place(
    lines: list[str], line: int, column: int, marked: str
) -> None:
    fault = fault_of(*lines)

    assert fault.code == "front-value"
    assert place(fault) == (line, column, marked)


@pytest.mark.parametrize(
    ("lines", "place_of_name", "hint"),
    [
        (["sumary: One."], (3, 1, "sumary"), 'did you mean "summary"?'),
        (["moved_from: /a/"], (3, 1, "moved_from"), 'did you mean "moved-from"?'),
        (["song:", "  artits: Ada"], (4, 3, "artits"), 'did you mean "artist"?'),
        (["rights:", "  owner: Ada"], (4, 3, "owner"), "known are: holder, note"),
        (["menu: About"], (3, 1, "menu"), ""),
    ],
)
def test_an_unknown_field_is_told_with_what_may_be_meant(
    lines: list[str], place_of_name: tuple[int, int, str], hint: str
) -> None:
    fault = fault_of(*lines)

    assert fault.code == "front-field"
    assert place(fault) == place_of_name
    assert fault.hint == hint


def test_all_faults_are_told_in_one_go() -> None:
    _, faults = read(
        "titel: Low Tide", "status: maybe", "song:", "  year: x", "  key: y", "  colour: z"
    )

    assert [(fault.code, fault.span.line) for fault in faults] == [
        ("front-title", 1),
        ("front-field", 2),
        ("front-value", 3),
        ("front-value", 5),
        ("front-value", 6),
        ("front-field", 7),
    ]


def test_a_broken_line_does_not_hide_the_others() -> None:
    front, faults = read(
        "title: Low Tide", "summary: One: two", "status: maybe", "topics: [bass", "song:",
        "  artist: Ada",
    )  # fmt: skip

    assert [(fault.code, fault.span.line) for fault in faults] == [
        ("front-syntax", 3),
        ("front-value", 4),
        ("front-syntax", 5),
    ]
    assert front.song.artist == "Ada"


@pytest.mark.parametrize(
    ("lines", "marked"),
    [
        (["summary: One: two"], (3, 13, ": two")),
        (["summary One"], (3, 1, "summary One")),
        (['summary: "One'], (3, 10, '"One')),
        (["topics: [one, two"], (3, 9, "[one, two")),
        (["song:", "\tkey: G"], (4, 1, "\t")),
        (["song:", "  key: G", "   meter: 4/4"], (5, 9, ": 4/4")),
        (["summary: *one"], (3, 10, "*one")),
        (["summary: &one two"], (3, 10, "&one two")),
        (["summary: !!python/object:os.system two"], (3, 10, "!!python/object:os.system two")),
        (["summary: @one"], (3, 10, "@one")),
        (["- one"], (3, 1, "- one")),
    ],
)
def test_what_is_no_field_is_told_in_plain_words(
    lines: list[str], marked: tuple[int, int, str]
) -> None:
    fault = fault_of(*lines)

    assert fault.code == "front-syntax"
    assert place(fault) == marked


def test_references_are_not_followed() -> None:
    bomb = ["a: &a [x, x, x, x]", *(f"{b}: &{b} [*{a}, *{a}, *{a}]" for a, b in ("ab", "bc"))]
    _, faults = read("title: Low Tide", *bomb)

    assert {fault.code for fault in faults} == {"front-syntax", "front-field"}
    assert sum(fault.code == "front-syntax" for fault in faults) == 3 + 6


def test_a_field_written_twice_keeps_the_first() -> None:
    front, faults = read("title: Low Tide", "song:", "  key: G", "  key: A", "title: High Tide")

    assert front.title == "Low Tide"
    assert str(front.song.key) == "G major"
    assert [(fault.code, place(fault)) for fault in faults] == [
        ("front-double", (5, 3, "key")),
        ("front-double", (6, 1, "title")),
    ]
    assert [fault.related[0][0].line for fault in faults] == [4, 2]


@pytest.mark.parametrize("brackets", [7, 50_000])
def test_depth_is_bounded(brackets: int) -> None:
    front, faults = read("title: Low Tide", "summary: " + "[" * brackets + "]" * brackets)

    assert "front-syntax" in {fault.code for fault in faults}
    assert {fault.span.line for fault in faults} == {3}
    assert front.title == "Low Tide"


@pytest.mark.parametrize("title", ["title:", 'title: ""', "title: '  '"])
def test_an_empty_title_is_told(title: str) -> None:
    _, faults = read(title)

    assert [(fault.code, fault.span.line) for fault in faults] == [("front-title", 2)]


def test_a_title_of_the_wrong_kind_is_told_once() -> None:
    _, faults = read("title: [Low, Tide]")

    assert [fault.code for fault in faults] == ["front-value"]


def test_a_published_write_up_without_a_date_is_told() -> None:
    fault = fault_of("status: published")

    assert (fault.code, place(fault)) == ("front-undated", (3, 9, "published"))
    assert not fault.is_error


def test_an_update_before_publication_is_told() -> None:
    fault = fault_of("published: 2026-05-04", "updated: 2026-05-03")

    assert (fault.code, place(fault)) == ("front-order", (4, 10, "2026-05-03"))


@pytest.mark.parametrize("text", ["", "Text only.\n", "\n---\ntitle: x\n---\n", "----\n"])
def test_a_file_without_front_matter_is_told_at_its_start(text: str) -> None:
    article, faults = read_article(Source("a.md", text), ())

    assert [(fault.code, fault.span.line) for fault in faults] == [("front-missing", 1)]
    assert article.front == FrontMatter()


def test_front_matter_that_is_not_closed_ends_at_the_first_empty_line() -> None:
    text = "---\ntitle: Low Tide\nstatus: maybe\n\n## Verse\n"
    article, faults = read_article(Source("a.md", text), ())

    assert [(fault.code, fault.span.line) for fault in faults] == [
        ("front-open", 1),
        ("front-value", 3),
    ]
    assert article.front.title == "Low Tide"
    assert [heading.text for heading in article.headings] == ["Verse"]


def test_columns_count_code_points() -> None:
    fault = fault_of('song: {title: "e\u0301 𝄪", year: 12}')

    assert place(fault) == (3, 29, "12")


def test_a_line_separator_of_unicode_ends_no_line() -> None:
    fault = fault_of("summary: one\u2028two\u0085three", "status: maybe")

    assert place(fault) == (4, 9, "maybe")


def test_the_front_matter_is_kept_as_written() -> None:
    article, _ = read_article(Source("a.md", "---\ntitle:  Low Tide # a\n---\nText\n"), ())

    assert article.front_text == "title:  Low Tide # a"


def test_a_page_has_a_title_a_summary_and_a_name_in_the_menu() -> None:
    text = "---\ntitle: About me\nsummary: Who writes.\nmenu: About\nstatus: draft\n---\nText\n"
    page, faults = read_page(Source("a.md", text), ())

    assert page.front == FrontMatter("About me", "Who writes.", menu="About")
    assert [(fault.code, place(fault)) for fault in faults] == [("front-field", (5, 1, "status"))]
