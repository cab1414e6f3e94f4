"""A further build makes only what has changed, and what it makes is what a first one would."""

import os
import shutil
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from sitegen.kinds.kind import ChartKind
from sitegen.site import pressing
from sitegen.site.build import Report, build_site
from sitegen.site.cache import Cache
from sitegen.site.order import Order
from sitegen.site.standing import find_standing

WriteArticle = Callable[..., Path]
CHART = "```claps\nid: {id}\n\n{body}\n```\n"
GOOD = "Listen.\n\n" + CHART.format(id="beat", body="x x x")
BAD = "Listen.\n\n" + CHART.format(id="beat", body="x ? x")


@pytest.fixture
def order(content: Path, theme: Path, claps: ChartKind, tmp_path: Path) -> Order:
    cache = tmp_path / "cache"
    return Order(content, Path("published"), (claps,), str(theme), drafts=True, cache=cache)


@pytest.fixture
def pressed(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Return the slugs of the pages as they are made."""
    slugs: list[str] = []
    make_page = pressing.make_page

    def make(sheet: pressing.Sheet, *more: object) -> pressing.MadePage:
        slugs.append(sheet.file.slug)
        return make_page(sheet, *more)  # type: ignore[arg-type]

    monkeypatch.setattr(pressing, "make_page", make)
    return slugs


@pytest.fixture
def three(write_article: WriteArticle) -> None:
    for day, slug in enumerate(("one", "two", "three"), start=1):
        write_article(slug, GOOD, more=f"published: 2026-05-{day:02}\n")


def build(order: Order) -> Report:
    return build_site(order, lambda _doing, _done, _total: None)


def files(folder: Path | str = "published") -> dict[str, bytes]:
    found = (path for path in Path(folder).rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in found}


def times() -> dict[str, int]:
    found = (path for path in Path("published").rglob("*") if path.is_file())
    return {path.relative_to("published").as_posix(): path.stat().st_mtime_ns for path in found}


def fresh(order: Order) -> dict[str, bytes]:
    """Return what a build makes that knows of no other, in the same folder."""
    kept = Path("published").rename("kept")
    build(replace(order, cache=None))
    made = files()
    shutil.rmtree("published")
    kept.rename("published")
    return made


@pytest.mark.usefixtures("three")
def test_nothing_to_do_is_seen_and_told_as_before(order: Order) -> None:
    assert find_standing(order) is None
    report = build(order)

    standing = find_standing(order)

    assert standing is not None
    assert standing.summary == report.summary_without_time()
    assert (standing.said, standing.failed) == ([], False)


@pytest.mark.usefixtures("three")
def test_faults_are_told_again(order: Order, write_article: WriteArticle) -> None:
    write_article("four", BAD)
    build(order)

    standing = find_standing(order)

    assert standing is not None
    assert standing.failed
    (frame,) = standing.said
    assert "content/breakdowns/four/article.md" in frame


def _edit_article(order: Order) -> None:
    path = order.content / "breakdowns" / "one" / "article.md"
    path.write_text(path.read_text(encoding="utf-8") + "\nMore.\n", encoding="utf-8")


def _add_file(order: Order) -> None:
    (order.content / "breakdowns" / "one" / "stage.png").touch()


def _add_article(order: Order) -> None:
    shutil.copytree(order.content / "breakdowns" / "one", order.content / "breakdowns" / "new")


def _remove_article(order: Order) -> None:
    shutil.rmtree(order.content / "breakdowns" / "one")


def _rename_article(order: Order) -> None:
    (order.content / "breakdowns" / "one").rename(order.content / "breakdowns" / "uno")


def _edit_settings(order: Order) -> None:
    (order.content / "site.toml").write_text('title = "Side One"\n', encoding="utf-8")


def _edit_theme(order: Order) -> None:
    path = Path(order.theme or "") / "pages" / "article.html"
    path.write_text(path.read_text(encoding="utf-8") + "<hr>", encoding="utf-8")


def _edit_styles(order: Order) -> None:
    (Path(order.theme or "") / "styles" / "1.css").write_text("p {color: red}", encoding="utf-8")


def _add_page(order: Order) -> None:
    (order.content / "pages").mkdir()
    path = order.content / "pages" / "about.md"
    path.write_text("---\ntitle: About\nmenu: Us\n---\n\nWe.\n", encoding="utf-8")


EDITS = [
    _edit_article,
    _add_file,
    _add_article,
    _remove_article,
    _rename_article,
    _edit_settings,
    _edit_theme,
    _edit_styles,
    _add_page,
]


@pytest.mark.usefixtures("three")
@pytest.mark.parametrize("edit", EDITS)
def test_after_any_edit_the_site_is_what_a_first_build_makes(
    order: Order, edit: Callable[[Order], None]
) -> None:
    build(order)
    edit(order)

    assert find_standing(order) is None
    build(order)

    assert files() == fresh(order)
    assert find_standing(order) is not None


@pytest.mark.usefixtures("three")
def test_only_what_changed_is_made_again(order: Order, pressed: list[str]) -> None:
    build(order)
    pressed.clear()
    before = times()
    _edit_article(order)

    build(order)

    assert pressed == ["one"]
    changed = {name for name, time in times().items() if before.get(name) != time}
    assert changed == {"breakdowns/one/index.html"}


@pytest.mark.usefixtures("three")
def test_a_new_title_is_told_to_the_neighbours(
    order: Order, pressed: list[str], write_article: WriteArticle
) -> None:
    write_article("zero", GOOD, more="published: 2026-04-01\n")
    build(order)
    pressed.clear()

    write_article("one", GOOD, title="First", more="published: 2026-05-01\n")
    build(order)

    assert sorted(pressed) == ["one", "two", "zero"]
    assert files() == fresh(order)


@pytest.mark.usefixtures("three")
def test_related_write_ups_follow_without_the_page_being_made_again(
    order: Order, pressed: list[str], write_article: WriteArticle
) -> None:
    write_article("one", GOOD, more="published: 2026-05-01\ntopics: [pedal notes]\n")
    build(order)
    assert b"also on" not in files()["breakdowns/one/index.html"]
    before = times()
    pressed.clear()

    write_article("three", GOOD, more="published: 2026-05-03\ntopics: [pedal notes]\n")
    build(order)

    said = b'<a href="../../breakdowns/three/index.html">three: also on pedal notes</a>'
    assert said in files()["breakdowns/one/index.html"]
    assert "one" not in pressed
    changed = {name for name, time in times().items() if before.get(name) != time}
    assert "breakdowns/one/index.html" in changed
    assert "breakdowns/two/index.html" not in changed
    assert files() == fresh(order)


@pytest.mark.usefixtures("three")
def test_a_write_up_with_errors_is_related_to_what_its_page_shows(
    order: Order, write_article: WriteArticle
) -> None:
    head = "published: 2026-05-01\ntopics: [pedal notes]\n"
    write_article("one", GOOD, more=head)
    write_article("three", GOOD, more=head)
    build(order)
    before = files()

    write_article("one", BAD, more=head)
    build(order)

    assert files()["breakdowns/one/index.html"] == before["breakdowns/one/index.html"]
    assert files()["breakdowns/three/index.html"] == before["breakdowns/three/index.html"]


@pytest.mark.usefixtures("three")
def test_a_link_to_a_page_that_came_or_went_is_looked_at_again(
    order: Order, write_article: WriteArticle
) -> None:
    write_article("two", GOOD + "\n[There](../four/)\n", more="published: 2026-05-02\n")
    assert [found.code for found in build(order).diagnostics] == ["link-nowhere"]

    four = write_article("four", GOOD)
    assert build(order).diagnostics == ()
    shutil.rmtree(four.parent)

    assert [found.code for found in build(order).diagnostics] == ["link-nowhere"]


@pytest.mark.usefixtures("three")
@pytest.mark.parametrize("damage", ["other words", None])
def test_a_published_page_that_somebody_changed_is_made_again(
    order: Order, damage: str | None
) -> None:
    build(order)
    before = files()
    page = Path("published/breakdowns/one/index.html")
    page.unlink() if damage is None else page.write_text(damage, encoding="utf-8")

    assert find_standing(order) is None
    build(order)

    assert files() == before


@pytest.mark.usefixtures("three")
def test_a_lost_cache_costs_nothing_but_time(order: Order) -> None:
    build(order)
    before = files(), times()
    assert order.cache is not None
    shutil.rmtree(order.cache)

    assert find_standing(order) is None
    build(order)

    assert (files(), times()) == before


@pytest.mark.usefixtures("three")
def test_a_damaged_cache_costs_nothing_but_time(order: Order) -> None:
    build(order)
    before = files()
    assert order.cache is not None
    for path in order.cache.rglob("*"):
        if path.is_file():
            path.write_bytes(os.urandom(50))

    assert find_standing(order) is None
    build(order)

    assert files() == before


@pytest.mark.usefixtures("three")
@pytest.mark.parametrize("change", [{"drafts": False}, {"strict": True}, {"theme": "liner"}])
def test_another_order_is_another_build(order: Order, change: dict[str, object]) -> None:
    build(order)

    assert find_standing(replace(order, **change)) is None  # type: ignore[arg-type]


@pytest.mark.usefixtures("three")
def test_without_a_cache_nothing_is_kept(order: Order, tmp_path: Path) -> None:
    build(replace(order, cache=None))

    assert not (tmp_path / "cache").exists()
    assert find_standing(replace(order, cache=None)) is None


@pytest.mark.usefixtures("three")
def test_an_unchanged_chart_is_not_drawn_again(
    order: Order, monkeypatch: pytest.MonkeyPatch
) -> None:
    drawn: list[str] = []
    put = Cache.put

    def note(cache: Cache, key: str, value: object) -> None:
        drawn.append(key)
        put(cache, key, value)

    monkeypatch.setattr(Cache, "put", note)
    build(order)
    first = set(drawn)
    drawn.clear()
    _edit_article(order)
    _edit_theme(order)

    build(order)

    assert len(first) > 1
    assert len(drawn) == 1  # the records of the build, and no drawing


@pytest.mark.usefixtures("three")
def test_what_changes_during_a_build_is_looked_at_by_the_next(order: Order) -> None:
    def edit(doing: str, done: int, _total: int) -> None:
        if (doing, done) == ("reading", 1):
            _edit_article(order)

    build_site(order, edit)

    assert find_standing(order) is None
    build(order)
    assert files() == fresh(order)
