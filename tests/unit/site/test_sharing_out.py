"""A long write-up is drawn by several processes, and is the same as if one had drawn it."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from sitegen.kinds import KINDS
from sitegen.kinds.kind import Analysis, ChartKind, Drawing, Surroundings
from sitegen.pages.views import SiteView
from sitegen.site.build import build_site
from sitegen.site.content import ContentFile
from sitegen.site.drawing import draw
from sitegen.site.order import Order
from sitegen.site.pressing import Press, Sheet
from sitegen.site.sharing_out import USUAL, Part, draw_part, share_out
from sitegen.site.study import study_file

WriteArticle = Callable[..., Path]
SITE = SiteView("Side Two", "", "", "en", "../../", (), "sitegen", "")
CHART = "```claps\nid: beat-{n}\n\n{claps}\n```\n\n"


def sheet(name: str) -> Sheet:
    return Sheet(ContentFile(name, Path(f"breakdowns/{name}/article.md")), SITE)


@pytest.mark.parametrize(
    ("sizes", "jobs", "shared"),
    [
        ({"long": 10 * USUAL}, 4, {"long": 4}),
        ({"long": 3 * USUAL}, 8, {"long": 3}),
        ({"long": 10 * USUAL}, 1, {}),
        ({"usual": USUAL}, 4, {}),
        ({"long": 10 * USUAL, "usual": USUAL}, 2, {"long": 2}),
        ({"one": 4 * USUAL, "two": 4 * USUAL}, 2, {}),
        ({"one": 4 * USUAL, "two": 4 * USUAL}, 4, {"one": 4, "two": 4}),
        ({}, 4, {}),
    ],
)
def test_a_page_is_shared_out_where_it_outweighs_a_share(
    sizes: dict[str, int], jobs: int, shared: dict[str, int]
) -> None:
    parts = share_out({sheet(name): size for name, size in sizes.items()}, jobs)

    assert parts == tuple(Part(sheet(s), n, of) for s, of in shared.items() for n in range(of))


def test_the_parts_together_draw_all_charts(
    write_article: WriteArticle, claps: ChartKind, tmp_path: Path
) -> None:
    charts = (CHART.format(n=n, claps=" ".join("x" * (n + 1))) for n in range(7))
    path = write_article("long", "Listen.\n\n" + "".join(charts))
    file = ContentFile("long", path)
    press = Press(tmp_path, tmp_path, tmp_path, ("", ""), (claps,), cache=tmp_path / "kept")
    for first in range(3):
        draw_part(Part(Sheet(file, SITE), first, 3), press)
    broken = replace(claps, draw=_fail)
    drawn = _draw(file, replace(press, kinds=(broken,)))

    assert drawn == _draw(file, replace(press, cache=None))


def _draw(file: ContentFile, press: Press) -> list[object]:
    study, pieces = study_file(file, press.kinds), _Pieces()
    drawn = draw(study, pieces, bugs := [], press.kept)  # type: ignore[arg-type, var-annotated]
    assert not bugs
    assert drawn is not None
    return [view.drawing for view in drawn.charts]


def _fail(_: Analysis, __: Surroundings) -> Drawing:
    message = "it was not drawn before"
    raise AssertionError(message)


class _Pieces:
    def render_chart(self, _: object) -> str:
        return ""


def test_what_is_faulty_is_not_drawn(
    write_article: WriteArticle, claps: ChartKind, tmp_path: Path
) -> None:
    path = write_article("long", CHART.format(n=1, claps="x ?") + CHART.format(n=2, claps="x x"))
    kept = tmp_path / "kept"
    press = Press(tmp_path, tmp_path, tmp_path, ("", ""), (claps,), cache=kept)

    draw_part(Part(Sheet(ContentFile("long", path), SITE), 0, 1), press)

    assert not kept.exists()


def test_a_long_write_up_is_the_same_from_two_processes(
    content: Path, write_article: WriteArticle, tmp_path: Path
) -> None:
    bars = ("| Em | C | G | D |", "| Am | F | C | G |", "| Dm | G7 | C |")
    charts = (f"```changes\nid: part-{n}\n{bars[n % 3]}\n```\n\n" for n in range(30))
    words = "Play it slowly, and listen to the bass. " * 24 + "\n\n"
    path = write_article("long", "".join(words + chart for chart in charts))
    assert path.stat().st_size > 2 * USUAL
    sites = []
    for jobs in (1, 2):
        out, cache = tmp_path / f"published-{jobs}", tmp_path / f"cache-{jobs}"
        order = Order(content, out, KINDS, jobs=jobs, drafts=True, cache=cache)
        doings: set[str] = set()
        report = build_site(order, lambda doing, *_, doings=doings: doings.add(doing))
        assert not report.bugs
        assert ("drawing long write-ups" in doings) == (jobs == 2)
        found = (path for path in out.rglob("*") if path.is_file() and "words" not in path.parts)
        sites.append({path.relative_to(out): path.read_bytes() for path in found})

    assert sites[0] == sites[1]
