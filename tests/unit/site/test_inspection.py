"""A check tells all faults of what it is pointed at, and how much it looked at."""

import json
from collections.abc import Callable
from pathlib import Path

from sitegen.kinds.kind import ChartKind
from sitegen.site.inspection import inspect

WriteArticle = Callable[..., Path]
GOOD = "```claps\nid: a\n\nx x\n```\n"
BAD = "```claps\nid: a\n\nx ?\n```\n"


def test_a_whole_folder(content: Path, write_article: WriteArticle, claps: ChartKind) -> None:
    write_article("one", GOOD)
    write_article("two", BAD)
    (content / "site.toml").write_text('title = "x"\nauthro = "y"\n', encoding="utf-8")
    (content / "breakdowns" / "stray.md").touch()

    found = inspect([content], (claps,))

    assert [(one.source.path, one.code) for one in found.diagnostics] == [
        ("content/breakdowns/stray.md", "content-stray"),
        ("content/breakdowns/two/article.md", "mark-sign"),
        ("content/site.toml", "settings-field"),
    ]
    assert found.summary() == "2 write-ups, 2 charts: 2 errors, 1 warning"
    assert [record["code"] for record in json.loads(found.as_json())] == [
        one.code for one in found.diagnostics
    ]


def test_one_file_tells_nothing_of_others(write_article: WriteArticle, claps: ChartKind) -> None:
    path = write_article("one", GOOD)
    write_article("two", BAD)

    found = inspect([path], (claps,))

    assert found.diagnostics == ()
    assert found.summary() == "1 write-up, 1 chart: no faults"


def test_a_page_is_checked_as_a_page(content: Path, claps: ChartKind) -> None:
    (content / "pages").mkdir()
    path = content / "pages" / "about.md"
    path.write_text("---\ntitle: About\nstatus: draft\n---\n\nWe.\n", encoding="utf-8")

    (fault,) = inspect([path], (claps,)).diagnostics

    assert (fault.code, fault.span.line) == ("front-field", 3)


def test_strict_makes_errors_of_warnings(content: Path, claps: ChartKind) -> None:
    (content / "breakdowns").mkdir()
    (content / "breakdowns" / "stray.md").touch()

    assert not inspect([content], (claps,)).diagnostics[0].is_error
    assert inspect([content], (claps,), strict=True).diagnostics[0].is_error
