"""A worker that remembers charts says just what one says that reads everything anew."""

from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from unit.preview.conftest import Write
from unit.site.conftest import CLAPS

from sitegen.charts.defaults import SongDefaults
from sitegen.diagnostics import draw_frame
from sitegen.engraving.style import NOTATION_STYLE
from sitegen.kinds import KINDS
from sitegen.kinds.kind import ChartKind
from sitegen.pages.theme import load_theme
from sitegen.preview.jobs import PageJob, ThemeState, unpack
from sitegen.preview.making import Maker
from sitegen.preview.memory import Memory, Remembered, WarmCache
from sitegen.site.addresses import INDEX, site_view
from sitegen.site.content import ContentFile, scan_content
from sitegen.site.kept_drawings import KeptDrawings
from sitegen.site.pressing import Sheet, make_page
from sitegen.site.settings import Settings
from sitegen.site.study import Study, study_file
from sitegen.source import Passage, Source

DEMO = Path(__file__).parents[3] / "content"
LINER = DEMO.with_name("themes") / "liner"
ARTICLES = scan_content(DEMO).articles


def remembered() -> tuple[ChartKind, ...]:
    return tuple(Remembered(kind).kind for kind in KINDS)


def told(study: Study) -> object:
    charts = [
        (one.named.id, one.named.name, one.analysis and (one.analysis.record, one.analysis.facts))
        for one in study.charts
    ]
    frames = [draw_frame(found) for found in study.diagnostics]
    citations = [(span, one.text) for span, one in study.citations.items()]
    return frames, charts, citations, study.bugs


def edits(text: str) -> list[str]:
    """Return a write-up as it is saved again and again: prose, lines, faults in charts."""
    body = text.index("\n---\n", 4) + 5
    return [
        text,
        f"{text[:body]}\nA paragraph more.\n\nAnd one more.\n{text[body:]}",
        text.replace("```\n", "```\n\nBetween the charts.\n"),
        text.replace("| C", "| Xx"),
        text.replace("title:", "titel:"),
        text.replace("bars:", "barrs:").replace("| G", "| Gmajj7"),
        f"{text[:body]}\n> A quote.\n{text[body:].replace('[', '[[')}",
        text,
    ]


@pytest.mark.parametrize("article", ARTICLES, ids=lambda file: file.slug)
def test_a_remembering_study_finds_the_same(
    article: ContentFile, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    path = tmp_path / "article.md"
    file = replace(article, path=path, root=None)
    warm, cold_frames = remembered(), Counter[int]()
    for text in edits(article.path.read_text(encoding="utf-8")):
        path.write_text(text, encoding="utf-8")
        cold = study_file(file, KINDS)

        assert told(study_file(file, warm)) == told(cold)
        cold_frames[len(cold.diagnostics)] += 1

    assert len(cold_frames) > 2, "the edits brought no faults to compare"


def test_a_preview_is_the_page_without_its_card(tmp_path: Path) -> None:
    file = ARTICLES[0]
    sheet = Sheet(file, site_view(Settings(title="Side Two"), file.address, {}))
    (made,) = Maker(KINDS, tmp_path).do(PageJob(sheet, ThemeState(LINER, 1)))
    page = make_page(sheet, study_file(file, KINDS), load_theme(LINER, NOTATION_STYLE))

    shown = unpack(made.packed or b"")

    (card,) = page.files.keys() - shown.keys()
    assert card.endswith(".png")
    assert {**page.files, INDEX: b""} == {**shown, INDEX: b"", card: page.files[card]}


def counted(done: Counter[str]) -> ChartKind:
    """Return the kind of claps that writes down how often it was read, studied and drawn."""

    def counting(what: str, step: Callable[..., Any]) -> Callable[..., Any]:
        def count(*given: object) -> object:
            done[what] += 1
            return step(*given)

        return count

    return replace(
        CLAPS,
        read=counting("read", CLAPS.read),
        analyse=counting("studied", CLAPS.analyse),
        draw=counting("drawn", CLAPS.draw),
    )


def test_prose_costs_no_chart_anything(write: Write, content: Path) -> None:
    done = Counter[str]()
    kinds = (Remembered(counted(done)).kind,)
    kept = KeptDrawings(WarmCache(None), "now")
    two = "```claps\nid: one\nx x\n```\n\n```claps\nid: two\nx\n```\n"
    for words in (two, f"More.\n\n{two}", two.replace("x x\n", "x x x\n")):
        write("low-tide", words)
        (file,) = scan_content(content).articles
        study = study_file(file, kinds)
        for chart in study.charts:
            assert chart.analysis is not None
            kept.draw(chart, chart.analysis, SongDefaults())

    # Two charts at first, nothing for the prose, the one that changed at last.
    assert done == {"read": 3, "studied": 3, "drawn": 3}


def test_one_block_at_two_places_has_its_fault_at_both(write: Write, content: Path) -> None:
    write("low-tide", "```claps\n? x\n```\n\n```claps\n? x\n```\n")
    (file,) = scan_content(content).articles
    kinds = (Remembered(CLAPS).kind,)

    lines = [found.span.line for found in study_file(file, kinds).diagnostics]

    assert lines == [8, 12]


def test_a_block_alone_is_read_as_in_its_file() -> None:
    kind = Remembered(CLAPS).kind
    passage = Passage.of("? x")
    shifted = replace(passage, source=Source("a.md", "? x"))

    reading = kind.read(shifted, SongDefaults())

    assert [found.source.path for found in reading.diagnostics] == ["a.md"]


def test_the_oldest_is_forgotten() -> None:
    memory = Memory[int](2)
    for number in (1, 2):
        memory.put(number, number)
    memory.get(1)
    memory.put(3, 3)

    assert [memory.get(number) for number in (1, 2, 3)] == [1, None, 3]


def test_a_warm_cache_keeps_without_a_folder_and_with_one(tmp_path: Path) -> None:
    alone, first = WarmCache(None), WarmCache(tmp_path)
    for cache in (alone, first):
        cache.put("ab12", frozenset({1}))

    assert alone.get("ab12") == first.get("ab12") == frozenset({1})
    assert WarmCache(tmp_path).get("ab12") == frozenset({1})
    assert WarmCache(None).get("ab12") is None
