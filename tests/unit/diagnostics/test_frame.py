"""The caret frame and the record of a fault."""

from sitegen.diagnostics import as_record, did_you_mean, draw_frame, fault, ordered
from sitegen.source import Source, Span

SOURCE = Source("low-tide/article.md", "\n" * 40 + "chord | Ebsus2 | Gbmajj7 |\n")


def test_a_frame_shows_the_line_with_a_caret_under_the_fault() -> None:
    diagnostic = fault(
        "pitch",
        SOURCE,
        Span(41, 20, 41, 25),
        'no chord quality is written "majj7"',
        hint='did you mean "maj7"?',
    )
    assert draw_frame(diagnostic).splitlines() == [
        'low-tide/article.md:41:20: error[pitch]: no chord quality is written "majj7"',
        "   |",
        "41 | chord | Ebsus2 | Gbmajj7 |",
        "   |                    ^^^^^ here",
        '   hint: did you mean "maj7"?',
    ]


def test_a_frame_keeps_tabs_so_that_the_caret_stands_right() -> None:
    source = Source("a.md", "\tvoice | X")
    frame = draw_frame(fault("pitch", source, Span(1, 10, 1, 11), "no pitch"))
    assert frame.splitlines()[3].startswith("  | \t")


def test_a_frame_shows_related_places() -> None:
    source = Source("a.md", "first\nsecond")
    diagnostic = fault(
        "head-double",
        source,
        Span(2, 1, 2, 7),
        "twice",
        related=((Span(1, 1, 1, 6), "first here"),),
    )
    assert "1 | first\n  | ^^^^^ first here" in draw_frame(diagnostic)


def test_the_record_has_the_public_fields() -> None:
    record = as_record(fault("pitch", SOURCE, Span(41, 20, 41, 25), "no", hint="do"))
    assert record == {
        "code": "pitch",
        "severity": "error",
        "message": "no",
        "file": "low-tide/article.md",
        "line": 41,
        "column": 20,
        "end_line": 41,
        "end_column": 25,
        "hint": "do",
    }


def test_order_is_by_place_and_doubles_fall_out() -> None:
    late = fault("pitch", SOURCE, Span(9, 1, 9, 2), "b")
    early = fault("pitch", SOURCE, Span(3, 1, 3, 2), "a")
    assert ordered([late, early, late]) == (early, late)


def test_a_near_word_is_suggested_and_a_far_one_is_not() -> None:
    assert did_you_mean("chrod", ["chord", "count"]) == 'did you mean "chord"?'
    assert did_you_mean("xyzzy", [f"word{n}" for n in range(20)]) == ""
    assert did_you_mean("xyzzy", ["on", "off"]) == "known are: off, on"


def test_a_warning_is_an_error_when_strict() -> None:
    warning = fault("part-unused", SOURCE, Span(1, 1, 1, 2), "unused")
    assert not warning.is_error
    assert warning.strict().is_error


def test_of_a_long_line_a_frame_shows_what_stands_around_the_fault() -> None:
    source = Source("song.md", f"{'a' * 5000} X {'b' * 5000}")
    frame = draw_frame(fault("chord-root", source, source.span(5001, 5002), "X is no chord"))
    _, _, line, carets = frame.splitlines()
    assert len(line) < 220
    assert line[carets.index("^")] == "X"
    assert line.startswith("1 | …a")
    assert line.endswith("b…")
