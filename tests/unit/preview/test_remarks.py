"""What is said of a page: frames as in a terminal, a theme's faults by their line, the rest."""

from pathlib import Path

from sitegen.diagnostics import draw_frame, fault
from sitegen.preview.remarks import (
    MOST_SHOWN,
    Remark,
    UnfitThemeError,
    as_state,
    of_bugs,
    of_faults,
)
from sitegen.site.bug import Bug, attempt
from sitegen.source import Source


def test_a_fault_is_told_by_its_frame() -> None:
    source = Source("a.md", "x ? x")
    found = fault("mark-sign", source, source.span(2, 3), "a clap is written x", hint="mend it")

    assert of_faults([found]) == (Remark("error", draw_frame(found)),)


def test_a_fault_of_a_theme_is_told_by_its_line(tmp_path: Path) -> None:
    (tmp_path / "a.html").write_text("one\n{{ two }}\n", encoding="utf-8")
    trace = (
        f"  File \"{tmp_path}/a.html\", line 2, in top\n    {{{{ two }}}}\nE: 'two' is undefined"
    )

    (remark,) = of_bugs([Bug("making a page", trace)], tmp_path)

    assert remark.frame == (
        f"{tmp_path.as_posix()}/a.html:2: error: 'two' is undefined\n  |\n2 | {{{{ two }}}}"
    ).replace("{{{{", "{{").replace("}}}}", "}}")


def test_a_failure_of_ours_says_so(tmp_path: Path) -> None:
    bugs: list[Bug] = []
    attempt(bugs, "counting", lambda: 1 // 0)

    (remark,) = of_bugs(bugs, tmp_path)

    assert remark.weight == "error"
    assert "sitegen failed while counting" in remark.frame
    assert "not of yours" in remark.frame


def test_errors_come_first_and_not_all_of_many() -> None:
    remarks = [Remark("note", "n"), *[Remark("error", str(n)) for n in range(MOST_SHOWN + 3)]]

    state = as_state("now", [*remarks, Remark("warning", "w"), Remark("warning", "v")])

    assert state["page"] == "now"
    assert state["faults"] == [str(n) for n in range(MOST_SHOWN)]
    assert state["more"] == 3
    assert state["quiet"] == ["n", "w", "v"]
    assert state["quietly"] == "2 warnings, 1 note"


def test_a_file_of_a_theme_that_cannot_be_read_is_told_as_such(tmp_path: Path) -> None:
    bugs: list[Bug] = []

    def load() -> None:
        raise UnfitThemeError("pieces/chart.html cannot be read: permission denied")

    attempt(bugs, "loading the theme", load)
    (remark,) = of_bugs(bugs, tmp_path)

    assert remark.frame == "error: pieces/chart.html cannot be read: permission denied"
