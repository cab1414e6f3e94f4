"""Which chart stands for a write-up in the archive, and the file that shows it."""

from collections.abc import Callable
from pathlib import Path
from types import SimpleNamespace

import pytest

from sitegen.figures.incipit import INCIPIT
from sitegen.figures.progression import ProgressionDrawing
from sitegen.finding.facets_index import has_picture
from sitegen.kinds import KINDS
from sitegen.kinds.changes import CHANGES
from sitegen.kinds.form import FORM
from sitegen.kinds.kind import Drawing
from sitegen.kinds.notation import NOTATION
from sitegen.pages.views import ChartView
from sitegen.site.build import build_site
from sitegen.site.content import scan_content
from sitegen.site.incipits import incipit_parts, make_incipit
from sitegen.site.order import Order
from sitegen.site.study import study_file
from sitegen.site.survey import survey_of

WriteArticle = Callable[..., Path]
SHEET = (
    '<svg viewBox="-450 -100 9000 3000" stroke="currentColor" stroke-width="18">'
    '<g class="measure"><path d="M0 1000H8000"/></g></svg>'
)
BLOCKS = {kind.name: f"```{kind.name}\n{kind.example}```\n" for kind in (NOTATION, CHANGES, FORM)}


def view(piece: str, content: object, rights: str = "") -> ChartView:
    drawing = Drawing(piece, content, "", (), rights=rights)
    return ChartView(piece, f"chart-{piece}", piece, "", "", drawing)


PLAN = view("plan", SimpleNamespace(rows=()))
PROGRESSION = view("progression", ProgressionDrawing(()))
ENGRAVED = view("engraved", SimpleNamespace(wide=SHEET, narrow=""))


def test_notation_goes_before_progressions_and_plans() -> None:
    shown = make_incipit((PLAN, PROGRESSION, ENGRAVED))
    assert shown == make_incipit((ENGRAVED,))
    assert make_incipit((PLAN, PROGRESSION)) == make_incipit((PROGRESSION,))
    assert len({make_incipit((one,)) for one in (PLAN, PROGRESSION, ENGRAVED)}) == 3


def test_a_write_up_without_charts_has_no_picture() -> None:
    faulty = ChartView("f", "chart-f", "", "notation", "", None)
    assert make_incipit(()) == make_incipit((faulty,)) == b""


def test_all_that_a_picture_shows_is_told_of_it() -> None:
    # A picture is kept under this: what is left out here would be shown as it was before.
    other = view("engraved", SimpleNamespace(wide=SHEET, narrow=""), "The song belongs to A.")
    narrow = view("engraved", SimpleNamespace(wide=SHEET, narrow=SHEET.replace("8000", "70")))
    parts = [incipit_parts((one,)) for one in (PLAN, PROGRESSION, ENGRAVED, other, narrow)]
    assert len({repr(one) for one in (*parts, incipit_parts(()))}) == 6


@pytest.mark.parametrize("blocks", [(), *((name,) for name in BLOCKS), tuple(BLOCKS)])
def test_the_archive_knows_which_write_ups_have_one(
    content: Path, write_article: WriteArticle, tmp_path: Path, blocks: tuple[str, ...]
) -> None:
    write_article("one", "\n".join(BLOCKS[name] for name in blocks), status="published")
    (file,) = scan_content(content).articles
    survey = survey_of(study_file(file, KINDS), strict=False)
    assert survey.is_good, survey.diagnostics
    build_site(Order(content, tmp_path / "out", KINDS, jobs=1), lambda *_: None)
    written = tmp_path / "out/breakdowns/one" / INCIPIT
    assert written.is_file() == has_picture(survey.entry) == bool(blocks)


def test_a_file_of_that_name_beside_the_text_is_a_fault(
    content: Path, write_article: WriteArticle
) -> None:
    write_article("one", f"![a picture]({INCIPIT})\n")
    (content / "breakdowns/one" / INCIPIT).write_text("<svg xmlns='http://www.w3.org/2000/svg'/>")
    (file,) = scan_content(content).articles
    codes = {found.code for found in study_file(file, KINDS).diagnostics}
    assert "file-name-taken" in codes
