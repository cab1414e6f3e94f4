"""A build publishes what is good, keeps what was good, and changes nothing else."""

import os
import re
import shutil
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from sitegen.kinds.kind import ChartKind
from sitegen.site.build import Report, build_site
from sitegen.site.order import Order
from sitegen.site.refusal import RefusedError

WriteArticle = Callable[..., Path]
CHART = "```claps\nid: {id}\ntitle: {title}\n\n{body}\n```\n"
GOOD = "Listen.\n\n" + CHART.format(id="beat", title="The beat", body="x x x")
BAD = "Listen.\n\n" + CHART.format(id="beat", title="The beat", body="x ? x")
BREAKS = "Listen.\n\n" + CHART.format(id="beat", title="The beat", body="break drawing")


@pytest.fixture
def order(content: Path, theme: Path, claps: ChartKind) -> Order:
    return Order(content, Path("published"), (claps,), str(theme), drafts=True)


def build(order: Order) -> Report:
    return build_site(order, lambda _doing, _done, _total: None)


def page(name: str) -> str:
    return (Path("published") / name / "index.html").read_text(encoding="utf-8")


def files(folder: str = "published") -> dict[str, bytes]:
    found = (path for path in Path(folder).rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in found}


def dated(day: int) -> str:
    return f"published: 2026-05-{day:02}\n"


def test_makes_every_page(order: Order, write_article: WriteArticle) -> None:
    write_article("low-tide", GOOD, title="Low Tide")
    pages = order.content / "pages"
    pages.mkdir()
    (pages / "about.md").write_text("---\ntitle: About\nmenu: Us\n---\n\nWe.\n", encoding="utf-8")

    report = build(order)

    assert (report.pages, report.charts, report.diagnostics, report.bugs) == (3, 1, (), ())
    made = set(files())
    assert {"index.html", "404.html", "about/index.html", ".sitegen"} <= made
    assert "breakdowns/low-tide/index.html" in made
    assert '<figure id="chart-beat">Example 1: The beat' in page("breakdowns/low-tide")
    assert '<a href="breakdowns/low-tide/index.html">Low Tide (1)</a>' in page("")
    assert '<a class="menu" href="../../about/index.html">Us</a>' in page("breakdowns/low-tide")


def test_every_link_of_every_page_leads_to_a_file(
    order: Order, write_article: WriteArticle
) -> None:
    for day, slug in enumerate(("one", "two", "für-drei"), start=1):
        write_article(slug, GOOD, more=dated(day))

    build(order)

    checked = 0
    for path in Path("published").rglob("index.html"):
        for href in re.findall(r'href="([^"#]+)"', path.read_text(encoding="utf-8")):
            target = (path.parent / re.sub("%C3%BC", "ü", href)).resolve()
            assert target.is_file(), href
            checked += 1
    assert checked > 10


def test_two_builds_are_the_same_to_the_byte(order: Order, write_article: WriteArticle) -> None:
    for day, slug in enumerate(("one", "two"), start=1):
        write_article(slug, GOOD, more=dated(day))
    build(order)
    first = files()

    build(order)
    build(replace(order, out=Path("again")))

    assert files() == first
    assert files("again") == first


def test_several_processes_make_the_same_site(order: Order, write_article: WriteArticle) -> None:
    for slug in ("one", "two", "three"):
        write_article(slug, "Words only.\n")
    alone = replace(order, kinds=(), jobs=1)
    build(alone)

    build(replace(alone, jobs=2, out=Path("together")))

    assert files("together") == files()


def test_drafts_are_left_out_with_their_faults(order: Order, write_article: WriteArticle) -> None:
    write_article("sketch", BAD)
    write_article("done", GOOD, status="published", more=dated(1))

    report = build(replace(order, drafts=False))

    assert (report.drafts, report.diagnostics) == (1, ())
    assert "breakdowns/sketch/index.html" not in files()
    assert "1 draft left out" in report.summary()


def test_a_draft_that_is_built_says_so(order: Order, write_article: WriteArticle) -> None:
    write_article("sketch", GOOD)
    write_article("done", GOOD, status="published", more=dated(1))

    build(order)

    assert "DRAFT" in page("breakdowns/sketch")
    assert "DRAFT" not in page("breakdowns/done")


def test_an_error_keeps_the_last_good_page_and_stops_no_other(
    order: Order, write_article: WriteArticle
) -> None:
    write_article("low-tide", GOOD, title="Low Tide")
    write_article("still", GOOD)
    build(order)
    before = page("breakdowns/low-tide")
    write_article("low-tide", BAD, title="Low Tide, Again")
    write_article("still", GOOD + "\nMore words.\n")

    report = build(order)

    assert [found.code for found in report.diagnostics] == ["mark-sign"]
    assert report.kept == ("content/breakdowns/low-tide/article.md",)
    assert page("breakdowns/low-tide") == before
    assert "More words." in page("breakdowns/still")
    assert "Low Tide (1)" in page("")


def test_a_kept_page_is_kept_by_every_further_build(
    order: Order, write_article: WriteArticle
) -> None:
    write_article("low-tide", GOOD)
    build(order)
    before = files()
    write_article("low-tide", BAD)

    build(order)
    build(order)

    assert files() == before


def test_a_kept_page_keeps_the_styles_it_was_made_with(
    order: Order, write_article: WriteArticle, theme: Path
) -> None:
    write_article("low-tide", GOOD)
    build(order)
    (style,) = (name for name in files() if name.startswith("styles/"))
    (theme / "styles" / "1.css").write_text("p { color: red }\n", encoding="utf-8")
    write_article("low-tide", BAD)

    build(order)

    assert style in page("breakdowns/low-tide")
    assert style in files()
    write_article("low-tide", GOOD)
    build(order)
    assert style not in files()


def test_what_was_never_good_is_not_on_the_site(order: Order, write_article: WriteArticle) -> None:
    for day, (slug, words) in enumerate([("one", GOOD), ("two", BAD), ("three", GOOD)], start=1):
        write_article(slug, words, more=dated(day))

    report = build(order)

    assert report.missing == ("content/breakdowns/two/article.md",)
    assert "breakdowns/two/index.html" not in files()
    assert '<a rel="next" href="../../breakdowns/three/index.html">' in page("breakdowns/one")
    assert '<a rel="prev" href="../../breakdowns/one/index.html">' in page("breakdowns/three")


def test_a_failure_while_drawing_is_a_bug_and_no_page_links_to_it(
    order: Order, write_article: WriteArticle
) -> None:
    for day, (slug, words) in enumerate([("one", GOOD), ("two", BREAKS), ("three", GOOD)], 1):
        write_article(slug, words, more=dated(day))

    report = build(order)

    (bug,) = report.bugs
    assert "drawing the claps chart at content/breakdowns/two/article.md" in bug.doing
    assert "ZeroDivisionError" in bug.trace
    assert "breakdowns/two/index.html" not in files()
    assert not any(b"breakdowns/two/" in data for data in files().values())
    assert '<a rel="next" href="../../breakdowns/three/index.html">' in page("breakdowns/one")


@pytest.mark.parametrize("step", ["reading", "analysing", "drawing"])
def test_a_failure_keeps_the_last_good_page(
    order: Order, write_article: WriteArticle, step: str
) -> None:
    write_article("low-tide", GOOD)
    build(order)
    before = files()
    write_article("low-tide", BREAKS.replace("drawing", step))

    report = build(order)

    assert len(report.bugs) == 1
    assert files() == before


def test_a_write_up_that_is_gone_leaves_the_site(
    order: Order, write_article: WriteArticle
) -> None:
    path = write_article("low-tide", GOOD)
    write_article("still", GOOD)
    build(order)
    path.unlink()
    path.parent.rmdir()

    build(order)

    assert "breakdowns/low-tide/index.html" not in files()


def test_faulty_settings_publish_nothing(order: Order, write_article: WriteArticle) -> None:
    write_article("low-tide", GOOD)
    build(order)
    before = files()
    (order.content / "site.toml").write_text("title = Side Two", encoding="utf-8")
    write_article("low-tide", GOOD + "More.\n")

    report = build(order)

    assert [found.code for found in report.diagnostics] == ["settings-syntax"]
    assert "nothing was published" in report.summary()
    assert files() == before


def test_strict_turns_warnings_into_errors(order: Order, write_article: WriteArticle) -> None:
    write_article("low-tide", GOOD)
    (order.content / "breakdowns" / "stray.txt").touch()

    assert [found.is_error for found in build(order).diagnostics] == [False]
    assert [found.is_error for found in build(replace(order, strict=True)).diagnostics] == [True]


def test_pictures_are_published_beside_the_page(order: Order, write_article: WriteArticle) -> None:
    path = write_article("low-tide", "![The stage](pictures/my%20stage.svg)\n")
    (path.parent / "pictures").mkdir()
    (path.parent / "pictures" / "my stage.svg").write_text("<svg/>", encoding="utf-8")
    (path.parent / "notes.txt").write_text("private", encoding="utf-8")

    report = build(order)

    assert report.diagnostics == ()
    assert files()["breakdowns/low-tide/pictures/my stage.svg"] == b"<svg/>"
    assert not any("notes" in name for name in files())


def test_an_unknown_theme_is_refused_with_the_nearest_name(order: Order) -> None:
    with pytest.raises(RefusedError, match='did you mean "liner"'):
        build(replace(order, theme="linner"))


@pytest.mark.parametrize("out", ["content", ".", "content/breakdowns/new", "content/pages"])
def test_the_content_is_never_overwritten(
    order: Order, write_article: WriteArticle, out: str
) -> None:
    write_article("low-tide", GOOD)
    before = files("content")

    with pytest.raises(RefusedError):
        build(replace(order, out=Path(out)))

    assert files("content") == before


def test_an_empty_folder_makes_an_empty_site(order: Order) -> None:
    report = build(order)

    assert report.pages == 1
    assert "index.html" in files()


def test_progress_is_told_for_both_rounds(order: Order, write_article: WriteArticle) -> None:
    write_article("one", GOOD)
    write_article("two", GOOD)
    steps: list[tuple[str, int, int]] = []

    build_site(order, lambda *step: steps.append(step))

    assert steps == [
        ("reading", 1, 2),
        ("reading", 2, 2),
        ("drawing", 1, 2),
        ("drawing", 2, 2),
    ]


def test_the_summary_tells_pages_charts_faults_and_time() -> None:
    report = Report(pages=2, charts=1, seconds=1.26, out=Path("published"))

    assert report.summary() == "2 pages, 1 chart in published: no faults, 1.3 s"


def test_a_write_up_that_cannot_be_read_keeps_its_page(
    order: Order, write_article: WriteArticle
) -> None:
    path = write_article("low-tide", GOOD)
    build(order)
    before = files()
    path.unlink()
    os.mkfifo(path)

    report = build(order)

    assert [found.code for found in report.diagnostics] == ["content-unreadable"]
    assert report.kept == ("content/breakdowns/low-tide/article.md",)
    assert files() == before


def test_where_a_folder_cannot_be_read_nothing_is_published(
    order: Order, write_article: WriteArticle
) -> None:
    write_article("low-tide", GOOD)
    build(order)
    before = files()
    shutil.rmtree(order.content / "breakdowns")
    (order.content / "breakdowns").touch()

    report = build(order)

    assert [found.code for found in report.diagnostics] == ["content-unreadable"]
    assert report.out is None
    assert files() == before


def test_a_theme_that_cannot_be_read_is_refused(order: Order, theme: Path) -> None:
    os.mkfifo(theme / "styles" / "90-late.css")

    with pytest.raises(RefusedError, match=r"90-late\.css cannot be read"):
        build(order)


def test_what_cannot_be_kept_is_told(order: Order, write_article: WriteArticle) -> None:
    write_article("low-tide", GOOD)
    Path("cache").write_text("a letter", encoding="utf-8")

    report = build(replace(order, cache=Path("cache")))

    assert report.out is not None
    assert "nothing is kept for the next build: cache cannot be written" in report.summary()
