"""An old address where something stands already is told with its place."""

from collections.abc import Callable
from pathlib import Path

import pytest

from sitegen.kinds.kind import ChartKind
from sitegen.site.build import build_site
from sitegen.site.inspection import inspect
from sitegen.site.order import Order

WriteArticle = Callable[..., Path]


@pytest.fixture
def page(content: Path) -> None:
    (content / "pages").mkdir()
    (content / "pages" / "about.md").write_text(
        "---\ntitle: About\n---\n\nWe.\n", encoding="utf-8"
    )


@pytest.mark.usefixtures("page")
@pytest.mark.parametrize(
    ("old", "why"),
    [
        ("/about/", "another page stands there"),
        ("/breakdowns/two/", "another page stands there"),
        ("/breakdowns/one/", "it is the write-up's own"),
        ("/styles/x.html", "the site keeps something else there"),
        ("https://old.example/", "the site keeps something else there"),
    ],
)
def test_a_taken_address_is_told(
    content: Path, write_article: WriteArticle, claps: ChartKind, old: str, why: str
) -> None:
    write_article("two", "Two.\n", status="draft")
    path = write_article("one", "One.\n", status="draft", more=f"moved-from:\n  - {old}\n")
    for paths in ([content], [path]):
        (fault,) = inspect(paths, (claps,)).diagnostics
        assert (fault.code, fault.message.endswith(why)) == ("moved-from-taken", True)
        line = path.read_text(encoding="utf-8").splitlines()[fault.span.line - 1]
        assert line[fault.span.column - 1 : fault.span.end_column - 1] == old


def test_an_address_that_two_have_leads_to_the_first(
    content: Path, write_article: WriteArticle, claps: ChartKind, theme: Path
) -> None:
    for slug in ("one", "two"):
        more = "moved-from: [/old/]\npublished: 2026-05-01\n"
        write_article(slug, "Words.\n", status="published", more=more)
    order = Order(content, Path("published"), (claps,), str(theme))
    report = build_site(order, lambda _doing, _done, _total: None)
    assert [fault.code for fault in report.diagnostics] == ["moved-from-taken"]
    assert "breakdowns/one/index.html" in Path("published/old/index.html").read_text("utf-8")
